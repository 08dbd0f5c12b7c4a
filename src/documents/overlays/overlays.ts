import type { Element } from 'hast';
import type { Scheme, SheetPaper } from '../../language/model.js';
import type { DocumentInput, PrintableDocument } from '../document.js';
import { breakLines } from '../figures/text-block.js';
import { viewConsole } from '../manual/console.js';
import { speechFor } from '../manual/view.js';
import { h } from '../page/elements.js';
import { papers } from '../page/paper.js';
import { writePage } from '../page/shell.js';
import { readStyles } from '../page/templates.js';
import type { Speech } from '../wording/gestures.js';
import { cardPieces } from './card-piece.js';
import { viewCards } from './card-view.js';
import { keyPieces } from './key-piece.js';
import { viewKeyOverlays } from './key-view.js';
import { type Area, type PlacedPiece, packPieces } from './pack.js';
import type { Piece } from './piece.js';
import { drawSheet, EDGE, RULER } from './sheet.js';
import { distinctSigns, type Sign, signLine } from './signs.js';
import { sizesOf } from './sizes.js';
import { stripPieces } from './strip-piece.js';
import { viewStrips } from './strip-view.js';

/** Free for the printer at the sides, the heading above, ruler and notes below; mm. */
const FRAME = { side: 5, top: 17, foot: 32 } as const;

/**
 * What the signs mean, to the right of the ruler: from the left edge and to the right one, mm; lines for which the
 * foot has room, and the height of one more, mm.
 */
const LEGEND = {
  x: RULER.x + RULER.length + 8,
  right: 12,
  fromFoot: 22,
  lines: 3,
  pitch: 3.5,
  sizePt: 7.5,
} as const;

/** The overlay sheets: every piece at true size, several on a sheet. */
export function createOverlays(input: DocumentInput): PrintableDocument {
  const { scheme, templates } = input;
  const speech = speechFor(input);
  const { phrases } = speech;
  const { widthMm: width, heightMm: height } = papers[scheme.game.sheetPaper];
  const bleed = sizesOf(scheme).Bleed;
  const sheets = laySheets(scheme, speech);
  const name = phrases.say('overlays name');
  const title = phrases.say('name and value', { name: scheme.title.value, value: name });
  return {
    name: 'overlays',
    html: writePage({
      title,
      language: phrases.language,
      kind: 'overlays',
      styles: [
        readStyles(templates, ['base', 'drawings', 'overlays']),
        `@page{size:${width}mm ${height}mm;margin:0}`,
        `.sheet-signs{left:${LEGEND.x}mm;right:${LEGEND.right}mm;bottom:${LEGEND.fromFoot}mm;font-size:${LEGEND.sizePt}pt;line-height:${LEGEND.pitch}mm}`,
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

/** The pieces of a scheme with their places, sheet by sheet. */
export function laySheets(scheme: Scheme, speech: Speech): readonly (readonly PlacedPiece[])[] {
  const pieces = listPieces(scheme, speech);
  const { sheetPaper } = scheme.game;
  const lines = signsOn(pieces).flatMap(sign =>
    breakLines(signLine(sign), papers[sheetPaper].widthMm - LEGEND.x - LEGEND.right, {
      sizePt: LEGEND.sizePt,
    }),
  );
  const more = Math.max(0, lines.length - LEGEND.lines) * LEGEND.pitch;
  return packPieces(pieces, sheetArea(sheetPaper, more), sizesOf(scheme).Bleed);
}

const signsOn = (pieces: readonly Piece[]): readonly Sign[] =>
  distinctSigns(pieces.flatMap(({ signs }) => signs));

/** Where pieces may stand on a sheet, mm. */
function sheetArea(paper: SheetPaper, moreFoot = 0): Area {
  const { widthMm, heightMm } = papers[paper];
  return {
    x: FRAME.side,
    y: FRAME.top,
    width: widthMm - 2 * FRAME.side,
    height: heightMm - FRAME.top - FRAME.foot - moreFoot,
  };
}

/** Every piece of a scheme: key overlays, panel strips, controller cards. */
export function listPieces(scheme: Scheme, speech: Speech): readonly Piece[] {
  const { calls } = viewConsole(scheme, speech);
  return [
    ...keyPieces(viewKeyOverlays(scheme), scheme, speech),
    ...viewStrips(scheme, calls, speech).flatMap(view => stripPieces(view, scheme, speech)),
    ...viewCards(scheme, speech).flatMap(view => cardPieces(view, scheme, speech)),
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
  const signs = signsOn(pieces.map(({ piece }) => piece));
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
    ...(signs.length === 0
      ? []
      : [h('ul', { class: 'sheet-signs' }, ...signs.map(sign => h('li', signLine(sign))))]),
    h('div', { class: 'sheet-foot' }, [
      h('p', { class: 'ruler-note' }, h('strong', phrases.say('sheet ruler'))),
      h('p', notes.join(' ')),
    ]),
  ]);
}
