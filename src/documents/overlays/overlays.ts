import type { Element } from 'hast';
import type { Scheme, SheetPaper } from '../../language/model.js';
import type { DocumentInput, PrintableDocument } from '../document.js';
import { viewConsole } from '../manual/console.js';
import { viewControllers } from '../manual/controllers.js';
import { speechFor } from '../manual/view.js';
import { h } from '../page/elements.js';
import { papers } from '../page/paper.js';
import { writePage } from '../page/shell.js';
import { readStyles } from '../page/templates.js';
import type { Speech } from '../wording/gestures.js';
import { cardPieces } from './card-piece.js';
import { keyPiece } from './key-piece.js';
import { viewKeyOverlays } from './key-view.js';
import { type Area, type PlacedPiece, packPieces } from './pack.js';
import type { Piece } from './piece.js';
import { drawSheet, EDGE, RULER } from './sheet.js';
import { sizesOf } from './sizes.js';
import { stripConsoles, stripPieces } from './strip-piece.js';

/** Free for the printer at the sides, the heading above, ruler and notes below; mm. */
const FRAME = { side: 5, top: 17, foot: 32 } as const;

/** The overlay sheets: every piece at true size, several on a sheet. */
export function createOverlays(input: DocumentInput): PrintableDocument {
  const { scheme, templates } = input;
  const speech = speechFor(input);
  const { phrases } = speech;
  const { widthMm: width, heightMm: height } = papers[scheme.game.sheetPaper];
  const bleed = sizesOf(scheme).Bleed;
  const sheets = packPieces(listPieces(scheme, speech), sheetArea(scheme.game.sheetPaper), bleed);
  const name = phrases.say('overlays name');
  const title = `${scheme.title.value}: ${name}`;
  return {
    name: 'overlays',
    html: writePage({
      title,
      language: phrases.language,
      kind: 'overlays',
      styles: [
        readStyles(templates, ['base', 'drawings', 'overlays']),
        `@page{size:${width}mm ${height}mm;margin:0}`,
        `.sheet{width:${width - EDGE}mm;height:${height - EDGE}mm}.sheet-foot{left:${RULER.x}mm;width:${width - 2 * RULER.x}mm}`,
      ],
      body: [
        h('main', [
          ...sheets.map((pieces, index) =>
            sheetTree(
              pieces,
              { title, number: index + 1, count: sheets.length, width, height, bleed },
              speech,
            ),
          ),
        ]),
      ],
    }),
    title,
    subject: name,
    language: phrases.language,
  };
}

/** Where pieces may stand on a sheet, mm. */
export function sheetArea(paper: SheetPaper): Area {
  const { widthMm, heightMm } = papers[paper];
  return {
    x: FRAME.side,
    y: FRAME.top,
    width: widthMm - 2 * FRAME.side,
    height: heightMm - FRAME.top - FRAME.foot,
  };
}

/** Every piece of a scheme: key overlays, panel strips, controller cards. */
export function listPieces(scheme: Scheme, speech: Speech): readonly Piece[] {
  const { calls } = viewConsole(scheme, speech);
  return [
    ...viewKeyOverlays(scheme).map(overlay => keyPiece(overlay, scheme, speech)),
    ...stripConsoles(scheme.consoles, calls).flatMap(profile => stripPieces(profile, calls, scheme, speech)),
    ...viewControllers(scheme, speech).flatMap(view => cardPieces(view, scheme, speech)),
  ];
}

interface SheetFacts {
  readonly title: string;
  readonly number: number;
  readonly count: number;
  readonly width: number;
  readonly height: number;
  readonly bleed: number;
}

function sheetTree(pieces: readonly PlacedPiece[], facts: SheetFacts, { phrases }: Speech): Element {
  const { title, number, count, width, height, bleed } = facts;
  const counted = { number, count };
  const texts = [...new Set(pieces.map(({ piece }) => piece.text))];
  const notes = [
    ...(pieces.some(({ piece }) => piece.isFromMemory) ? [phrases.say('sheet measure')] : []),
    phrases.say('sheet cut'),
    phrases.say('sheet marks'),
  ];
  return h('section', { class: 'sheet' }, [
    drawSheet(
      pieces,
      { width, height },
      bleed,
      `${phrases.say('sheet text', counted)}. ${texts.join('. ')}.`,
    ),
    h('div', { class: 'sheet-head' }, [
      h(number === 1 ? 'h1' : 'h2', title),
      h('p', phrases.say('sheet count', counted)),
    ]),
    h('div', { class: 'sheet-foot' }, [
      h('p', { class: 'ruler-note' }, h('strong', phrases.say('sheet ruler'))),
      h('p', notes.join(' ')),
    ]),
  ]);
}
