import type { Scheme } from '../../language/model.js';
import { drawController } from '../figures/controller-art.js';
import { circle, group, line, type Point, STROKE } from '../figures/drawing.js';
import { textWidth } from '../figures/text-block.js';
import type { Speech } from '../wording/gestures.js';
import type { CardView } from './card-view.js';
import { drawTable, type FittedRow, type FittedTable, fitTable, type TableTexts } from './fit-table.js';
import type { Piece } from './piece.js';
import type { Sign } from './signs.js';
import { sizesOf } from './sizes.js';
import { partWords } from './strip-piece.js';

const MARGIN = 4;
/** The hole in the upper right corner, to tie the card to the controller's cable; mm. */
const HOLE = { fromEdge: 5, radius: 2 } as const;

/**
 * The cards for a controller: what each control does, in as few words as can be; with its drawing if there is room.
 * An own controller has none: nobody but its maker knows what it looks like.
 */
export function cardPieces(view: CardView, scheme: Scheme, speech: Speech): readonly Piece[] {
  const { phrases } = speech;
  const sizes = sizesOf(scheme);
  const { 'Card width': width, 'Card height': height } = sizes;
  const rows = view.rows.map(({ label, words }) => [label, words]);
  const shown = rows.length === 0 ? [[phrases.say('unused'), '']] : rows;
  const signs = view.signs.map(({ mark, meaning }) => [mark, meaning]);
  const head = (number: number, count: number) => [
    view.caption,
    [scheme.title.value, ...partWords(number, count, speech)].join(' · '),
  ];
  const layout = layOut(view, { head, again: [], rows: shown, foot: signs }, { width, height });
  return layout.table.pieces.map(set => {
    const { table, used } = withUsedSigns(set, view.signs);
    return {
      kind: 'card' as const,
      width,
      height,
      radius: Math.min(sizes['Corner radius'], width / 2, height / 2),
      nodes: [
        ...drawTable(table, layout.table.sizePt, { x: MARGIN, y: MARGIN - 1 }, layout.columns),
        ...(layout.hasArt ? [drawArt(view, width, height)] : []),
        ...hole({ x: width - HOLE.fromEdge, y: HOLE.fromEdge }),
      ],
      text: `${phrases.say('card text', { controller: view.caption })}. ${view.text}`,
      under: [],
      isFromMemory: false,
      folds: [],
      signs: used,
    };
  });
}

/** The table of one of the cards, whose last rows explain all signs, without those that do not stand on it. */
function withUsedSigns(set: readonly FittedRow[], signs: readonly Sign[]) {
  const body = set.slice(0, set.length - signs.length);
  const words = body.flatMap(({ cells }) => cells.flatMap(({ lines }) => lines)).join(' ');
  const used = signs.filter(({ mark }) => words.includes(mark));
  const foot = set.slice(body.length).filter((_, index) => signs[index] && used.includes(signs[index]));
  return { table: [...body, ...foot], used };
}

interface CardLayout {
  readonly table: FittedTable;
  readonly columns: readonly number[];
  readonly hasArt: boolean;
}

/** The drawing takes the right third where the words still fit one card beside it. */
function layOut(
  { controller }: CardView,
  texts: TableTexts,
  { width, height }: { readonly width: number; readonly height: number },
): CardLayout {
  const controls = Math.max(
    ...[texts.head(1, 1), ...texts.rows, ...texts.foot].map(([control = '']) =>
      textWidth(control, { sizePt: 8, bold: true }),
    ),
  );
  const columnsIn = (inner: number) => {
    const first = Math.min(Math.max(controls + 3, inner * 0.25), inner * 0.42);
    return [first, inner - first];
  };
  const room = { height: height - 2 * MARGIN + 2 };
  const beside = columnsIn(width * 0.66 - MARGIN);
  const withArt = fitTable(texts, { ...room, columns: beside });
  if (!controller.own && withArt.pieces.length === 1 && withArt.sizePt >= 7.5)
    return { table: withArt, columns: beside, hasArt: true };
  const alone = columnsIn(width - 2 * MARGIN - 5);
  return { table: fitTable(texts, { ...room, columns: alone }), columns: alone, hasArt: false };
}

function drawArt({ controller }: CardView, width: number, height: number) {
  const art = drawController(controller);
  const space = { x: width * 0.66 + 1.5, width: width * 0.34 - MARGIN - 1.5, top: 10, bottom: height - 3 };
  const scale = Math.min(space.width / art.width, (space.bottom - space.top) / art.height, 0.8);
  return group(
    drawController(controller, scale).nodes,
    {
      x: space.x + (space.width - art.width * scale) / 2,
      y: space.top + (space.bottom - space.top - art.height * scale) / 2,
    },
    scale,
  );
}

/** Where to punch: a circle with a cross through its centre. */
function hole(centre: Point) {
  const reach = HOLE.radius + 1;
  const hair = { width: STROKE.hair };
  return [
    circle(centre, HOLE.radius, hair),
    line({ x: centre.x - reach, y: centre.y }, { x: centre.x + reach, y: centre.y }, hair),
    line({ x: centre.x, y: centre.y - reach }, { x: centre.x, y: centre.y + reach }, hair),
  ];
}
