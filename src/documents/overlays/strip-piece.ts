import type { Scheme } from '../../language/model.js';
import { shorten, textWidth } from '../figures/text-block.js';
import type { Speech } from '../wording/gestures.js';
import { panelWords } from '../wording/machine.js';
import { SMALLEST_PT } from './fit-label.js';
import { drawTable, type FittedTable, fitTable, heightOf } from './fit-table.js';
import type { Piece } from './piece.js';
import { isFromMemory, sizesOf } from './sizes.js';
import type { StripColumn, StripView } from './strip-view.js';

const MARGIN = 2;
/** Of the empty column that is folded, mm. */
const FOLD_WIDTH = 5;
/** A longer title is cut short: it must not take the room of what the switches do; mm. */
const TITLE_WIDTH = 56;
/** To the right of the text of a column, mm. */
const GAP = 2;

/**
 * The strips for a panel: a column for each switch in use that it has, a row for each mode in which one does
 * something. What is at the back of the console stands to the right of a fold. Where the modes don't fit one piece,
 * each piece tells again what the positions mean.
 */
export function stripPieces(view: StripView, scheme: Scheme, speech: Speech): readonly Piece[] {
  const { phrases } = speech;
  const { front, rear } = view;
  const hasFold = front.length > 0 && rear.length > 0;
  // The fold runs through a column of its own, which stays empty.
  const shown = hasFold ? [...front, null, ...rear] : [...front, ...rear];
  const sizes = sizesOf(scheme);
  const { 'Strip width': width, 'Strip height': height } = sizes;
  const panel = view.consoles.map(({ name }) => panelWords(name, phrases)).join(', ');
  const texts = stripTexts(shown, scheme, speech);
  const { columns, table } = layOut(texts, shown, { width, height });
  const { sizePt, pieces } = table;
  const fold = MARGIN + sum(columns.slice(0, 1 + front.length)) + FOLD_WIDTH / 2 - 0.8;
  const rows = [...texts.settings, ...texts.modes];
  return pieces.map((set, index) => ({
    kind: 'strip' as const,
    width,
    height,
    radius: Math.min(sizes['Corner radius'], height / 2),
    nodes: drawTable(set, sizePt, { x: MARGIN + 1, y: MARGIN - 0.2 }, columns),
    text: phrases.say('strip text', {
      panel,
      switches: rows.map(row => row.filter(Boolean).join(', ')).join('; '),
    }),
    under: [[panel, ...partWords(index + 1, pieces.length, speech)].join(' · ')],
    isFromMemory: isFromMemory(scheme, 'strip'),
    folds: hasFold ? [fold] : [],
    signs: [],
  }));
}

/** `1 of 2`; none where there is but one. */
export function partWords(number: number, count: number, { phrases }: Speech): readonly string[] {
  return count === 1 ? [] : [phrases.say('piece count', { number, count })];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

type Row = readonly string[];

interface StripTexts {
  head(number: number, count: number): Row;
  /** What positions mean, in every mode: one row, or none. */
  readonly settings: readonly Row[];
  readonly modes: readonly Row[];
}

function stripTexts(shown: readonly (StripColumn | null)[], scheme: Scheme, speech: Speech): StripTexts {
  const isSaid = ([, ...cells]: Row) => cells.some(cell => cell !== '');
  return {
    head: (number, count) => [
      [
        shorten(scheme.title.value, TITLE_WIDTH, { sizePt: SMALLEST_PT, bold: true }),
        ...partWords(number, count, speech),
      ].join(' · '),
      ...shown.map(column => column?.label ?? ''),
    ],
    settings: [['', ...shown.map(column => column?.setting ?? '')]].filter(isSaid),
    modes: scheme.modes
      .map(({ name }, index) => [name, ...shown.map(column => column?.modes[index] ?? '')])
      .filter(isSaid),
  };
}

interface StripLayout {
  readonly columns: readonly number[];
  readonly table: FittedTable;
}

/** Of several ways to share out the width one that cuts no words, with the fewest pieces; then one that repeats the settings, in the largest type. */
function layOut(
  { head, settings, modes }: StripTexts,
  shown: readonly (StripColumn | null)[],
  size: { readonly width: number; readonly height: number },
): StripLayout {
  const texts = [head(1, 1), ...settings, ...modes];
  const height = size.height - 2 * MARGIN + 0.8;
  const overflow = ({ pieces }: FittedTable) => Math.max(0, ...pieces.map(rows => heightOf(rows) - height));
  const cuts = ({ pieces }: FittedTable) => pieces.flat().filter(({ isCut }) => isCut).length;
  const layouts = [1, 2, 3].flatMap(lines => {
    const columns = columnsFor(texts, shown, size.width, lines);
    const room = { columns, height };
    return [
      { columns, isOnce: false, table: fitTable({ head, again: settings, rows: modes, foot: [] }, room) },
      {
        columns,
        isOnce: true,
        table: fitTable({ head, again: [], rows: [...settings, ...modes], foot: [] }, room),
      },
    ];
  });
  const [best] = layouts.toSorted(
    (a, b) =>
      overflow(a.table) - overflow(b.table) ||
      cuts(a.table) - cuts(b.table) ||
      a.table.pieces.length - b.table.pieces.length ||
      Number(a.isOnce) - Number(b.isOnce) ||
      b.table.sizePt - a.table.sizePt,
  );
  if (best === undefined) throw new RangeError('there is no way to lay out a strip');
  return best;
}

/** Columns as wide as their texts on so many lines; what is left is shared out in proportion, what lacks is taken from the widest. */
function columnsFor(
  table: readonly Row[],
  shown: readonly (StripColumn | null)[],
  width: number,
  lines: number,
): readonly number[] {
  const isFold = (index: number) => index > 0 && shown[index - 1] === null;
  const folds = FOLD_WIDTH * shown.filter(column => column === null).length;
  const inner = width - 2 * MARGIN - 2 - folds;
  const wanted = Array.from({ length: shown.length + 1 }, (_, index) =>
    isFold(index)
      ? 0
      : widthOn(
          lines,
          table.map(row => row[index] ?? ''),
        ) + GAP,
  );
  const most = widestShare(wanted, inner);
  const cut = wanted.map(own => Math.min(own, most));
  const scale = Math.max(1, inner / sum(cut));
  return cut.map((own, index) => (isFold(index) ? FOLD_WIDTH : own * scale));
}

/** The width at which columns must end for all to fit, mm. */
function widestShare(wanted: readonly number[], inner: number): number {
  let left = inner;
  const narrowFirst = wanted.toSorted((a, b) => a - b);
  for (const [index, own] of narrowFirst.entries()) {
    const share = left / (narrowFirst.length - index);
    if (own > share) return share;
    left -= own;
  }
  return Number.POSITIVE_INFINITY;
}

/** About the width at which each text takes at most so many lines at the smallest size, mm. */
function widthOn(lines: number, texts: readonly string[]): number {
  const wide = (text: string) => textWidth(text, { sizePt: SMALLEST_PT, bold: true });
  const words = texts.flatMap(text => text.split(' ')).map(wide);
  const broken = texts.map(text => wide(text) / lines + (lines > 1 ? 3 : 0));
  return Math.max(10, ...words, ...broken.filter((_, index) => lines === 1 || texts[index]?.includes(' ')));
}
