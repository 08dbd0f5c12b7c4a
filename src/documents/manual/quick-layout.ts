import { ptToMm } from '../figures/drawing.js';
import { breakLines, type Setting, textWidth } from '../figures/text-block.js';
import type { QuickLine, QuickMode } from './quick.js';

/** The one-page reference as it is set: columns of modes, all at one size. */
export interface QuickLayout {
  readonly sizePt: number;
  readonly columns: readonly (readonly QuickMode[])[];
  readonly column: Column;
  /** False where even the smallest type had to leave something out. */
  readonly isComplete: boolean;
}

/** Shared with the style sheet: `quick-*` in manual.css must say the same. */
export const QUICK = {
  largestPt: 9.5,
  smallestPt: 7,
  stepPt: 0.25,
  lineHeight: 1.25,
  /** Share of a column that names the control, where no long word needs more or leaves less. */
  controlShare: 0.46,
  /** Between columns, mm. */
  columnGap: 5,
  /** Above and below a row's text, mm. */
  rowPad: 0.55,
  cellPad: 1.5,
  /** Under a mode's table, mm. */
  modeGap: 3.2,
  captionScale: 1.1,
} as const;

interface Area {
  readonly width: number;
  readonly height: number;
}

/** A column of modes; both in mm. */
export interface Column {
  readonly width: number;
  /** The part of it that names the control. */
  readonly controlWidth: number;
}

/**
 * The largest size, in steps of a quarter point, at which every mode fits the page in two, three, four or one
 * columns and no word is cut; where none does, the largest at which every mode fits. Where not even that can be
 * done: the smallest, play modes first, and what does not fit is left out.
 *
 * @param area mm
 */
export function layOutQuick(modes: readonly QuickMode[], area: Area): QuickLayout {
  return (
    layOutAll(modes, area, wholeWordColumn) ??
    layOutAll(modes, area, (_, width) => usualColumn(width)) ??
    layOutPart(modes, area)
  );
}

/** Null where no size and number of columns will do. */
function layOutAll(
  modes: readonly QuickMode[],
  area: Area,
  columnFor: (modes: readonly QuickMode[], width: number, sizePt: number) => Column | null,
): QuickLayout | null {
  for (let sizePt = QUICK.largestPt; sizePt >= QUICK.smallestPt; sizePt -= QUICK.stepPt) {
    for (const count of columnCounts(area.width, modes.length)) {
      const column = columnFor(modes, widthOf(count, area.width), sizePt);
      if (column === null || fill(modes, count, column, area.height, sizePt).left > 0) continue;
      const columns = balance(modes, count, column, area.height, sizePt);
      return { sizePt, columns, column, isComplete: true };
    }
  }
  return null;
}

function layOutPart(modes: readonly QuickMode[], area: Area): QuickLayout {
  const count = Math.max(...columnCounts(area.width, modes.length));
  const column = usualColumn(widthOf(count, area.width));
  const firstPlay = modes.toSorted((a, b) => Number(b.isPlay) - Number(a.isPlay));
  const { columns } = fill(firstPlay, count, column, area.height, QUICK.smallestPt);
  return { sizePt: QUICK.smallestPt, columns, column, isComplete: false };
}

const widthOf = (count: number, width: number): number => (width - QUICK.columnGap * (count - 1)) / count;

const usualColumn = (width: number): Column => ({ width, controlWidth: width * QUICK.controlShare });

/** Divided so that the longest word on either side has room; null where both together have none. */
function wholeWordColumn(modes: readonly QuickMode[], width: number, sizePt: number): Column | null {
  const lines = modes.flatMap(mode => mode.lines);
  const bold = { sizePt, bold: true } as const;
  const forControl =
    longestWord(
      lines.map(({ control }) => control),
      bold,
    ) + CELL_LOSS;
  const forAction =
    longestWord(
      lines.map(({ action }) => action),
      { sizePt },
    ) + CELL_LOSS;
  const caption = { ...bold, sizePt: sizePt * QUICK.captionScale };
  const forCaption =
    longestWord(
      modes.map(({ name }) => name),
      caption,
    ) + CAPTION_LOSS;
  if (forControl + forAction > width || forCaption > width) return null;
  const controlWidth = Math.min(Math.max(usualColumn(width).controlWidth, forControl), width - forAction);
  return { width, controlWidth };
}

const longestWord = (texts: readonly string[], setting: Setting): number =>
  Math.max(0, ...texts.flatMap(text => text.split(/\s+/)).map(word => textWidth(word, setting)));

/** Columns narrower than 35 mm would break every second word. */
function columnCounts(width: number, modes: number): readonly number[] {
  const narrowest = 35;
  const wanted = modes === 1 ? [1, 2, 3, 4] : [2, 3, 4, 1];
  return wanted.filter(count => widthOf(count, width) >= narrowest);
}

/** The columns at the least height, to half a millimetre, that still holds everything: all about equally long. */
function balance(
  modes: readonly QuickMode[],
  count: number,
  column: Column,
  height: number,
  sizePt: number,
): Filled['columns'] {
  let low = 0;
  let high = height;
  while (high - low > 0.5) {
    const middle = (low + high) / 2;
    if (fill(modes, count, column, middle, sizePt).left === 0) high = middle;
    else low = middle;
  }
  return fill(modes, count, column, high, sizePt).columns;
}

interface Filled {
  readonly columns: readonly (readonly QuickMode[])[];
  /** Lines that found no place. */
  readonly left: number;
}

/** Column by column. A mode is kept whole where a column can hold it; a larger one goes on in the next. */
function fill(
  modes: readonly QuickMode[],
  count: number,
  column: Column,
  height: number,
  sizePt: number,
): Filled {
  const columns: QuickMode[][] = Array.from({ length: count }, () => []);
  let at = 0;
  let used = 0;
  let left = 0;
  for (const mode of modes) {
    const heights = mode.lines.map(line => rowHeight(line, column, sizePt));
    const whole = captionHeight(mode, column, sizePt) + sum(heights) + QUICK.modeGap;
    if (used > 0 && used + whole > height && whole <= height) {
      at += 1;
      used = 0;
    }
    let rest = mode.lines;
    let restHeights = heights;
    while (rest.length > 0 && at < count) {
      const room = height - used - captionHeight(mode, column, sizePt);
      const fitting = countFitting(restHeights, room);
      if (fitting > 0) columns[at]?.push({ ...mode, lines: rest.slice(0, fitting) });
      used += captionHeight(mode, column, sizePt) + sum(restHeights.slice(0, fitting)) + QUICK.modeGap;
      rest = rest.slice(fitting);
      restHeights = restHeights.slice(fitting);
      if (rest.length === 0) break;
      at += 1;
      used = 0;
    }
    left += rest.length;
  }
  return { columns: columns.filter(column => column.length > 0), left };
}

function countFitting(heights: readonly number[], room: number): number {
  let used = 0;
  let count = 0;
  for (const height of heights) {
    used += height;
    if (used > room) break;
    count += 1;
  }
  return count;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Of a cell and of a caption, mm: a hair more than its padding, so that the browser never needs a line more. */
const CELL_LOSS = QUICK.cellPad + 0.3;
const CAPTION_LOSS = 0.5;

function rowHeight({ control, action }: QuickLine, { width, controlWidth }: Column, sizePt: number): number {
  const lines = Math.max(
    breakLines(control, controlWidth - CELL_LOSS, { sizePt, bold: true }).length,
    breakLines(action, width - controlWidth - CELL_LOSS, { sizePt }).length,
  );
  return ptToMm(lines * sizePt * QUICK.lineHeight) + 2 * QUICK.rowPad + 0.25;
}

function captionHeight({ name }: QuickMode, { width }: Column, sizePt: number): number {
  const size = sizePt * QUICK.captionScale;
  const lines = breakLines(name, width - CAPTION_LOSS, { sizePt: size, bold: true }).length;
  return ptToMm(lines * size * QUICK.lineHeight) + 1.4;
}
