import { ptToMm } from '../figures/drawing.js';
import { breakLines } from '../figures/text-block.js';
import type { QuickLine, QuickMode } from './quick.js';

/** The one-page reference as it is set: columns of modes, all at one size. */
export interface QuickLayout {
  readonly sizePt: number;
  readonly columns: readonly (readonly QuickMode[])[];
  /** Width of a column, mm. */
  readonly columnWidth: number;
  /** False where even the smallest type had to leave something out. */
  readonly isComplete: boolean;
}

/** Shared with the style sheet: `quick-*` in manual.css must say the same. */
export const QUICK = {
  largestPt: 9.5,
  smallestPt: 7,
  stepPt: 0.25,
  lineHeight: 1.25,
  /** Share of a column that names the control. */
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

/**
 * The largest size, in steps of a quarter point, at which every mode fits the page in two, three or one columns.
 * Where none does: the smallest, play modes first, and what does not fit is left out.
 *
 * @param area mm
 */
export function layOutQuick(modes: readonly QuickMode[], area: Area): QuickLayout {
  for (let sizePt = QUICK.largestPt; sizePt >= QUICK.smallestPt; sizePt -= QUICK.stepPt) {
    for (const count of columnCounts(area.width, modes.length)) {
      const columnWidth = widthOf(count, area.width);
      const filled = fill(modes, count, columnWidth, area.height, sizePt);
      if (filled.left > 0) continue;
      const columns = balance(modes, count, columnWidth, area.height, sizePt);
      return { sizePt, columns, columnWidth, isComplete: true };
    }
  }
  const count = Math.max(...columnCounts(area.width, modes.length));
  const columnWidth = widthOf(count, area.width);
  const firstPlay = modes.toSorted((a, b) => Number(b.isPlay) - Number(a.isPlay));
  const { columns } = fill(firstPlay, count, columnWidth, area.height, QUICK.smallestPt);
  return { sizePt: QUICK.smallestPt, columns, columnWidth, isComplete: false };
}

const widthOf = (count: number, width: number): number => (width - QUICK.columnGap * (count - 1)) / count;

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
  columnWidth: number,
  height: number,
  sizePt: number,
): Filled['columns'] {
  let low = 0;
  let high = height;
  while (high - low > 0.5) {
    const middle = (low + high) / 2;
    if (fill(modes, count, columnWidth, middle, sizePt).left === 0) high = middle;
    else low = middle;
  }
  return fill(modes, count, columnWidth, high, sizePt).columns;
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
  columnWidth: number,
  height: number,
  sizePt: number,
): Filled {
  const columns: QuickMode[][] = Array.from({ length: count }, () => []);
  let at = 0;
  let used = 0;
  let left = 0;
  for (const mode of modes) {
    const heights = mode.lines.map(line => rowHeight(line, columnWidth, sizePt));
    const whole = captionHeight(mode, columnWidth, sizePt) + sum(heights) + QUICK.modeGap;
    if (used > 0 && used + whole > height && whole <= height) {
      at += 1;
      used = 0;
    }
    let rest = mode.lines;
    let restHeights = heights;
    while (rest.length > 0 && at < count) {
      const room = height - used - captionHeight(mode, columnWidth, sizePt);
      const fitting = countFitting(restHeights, room);
      if (fitting > 0) columns[at]?.push({ ...mode, lines: rest.slice(0, fitting) });
      used += captionHeight(mode, columnWidth, sizePt) + sum(restHeights.slice(0, fitting)) + QUICK.modeGap;
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

function rowHeight({ control, action }: QuickLine, width: number, sizePt: number): number {
  // A hair narrower than the cell, so that the browser never needs a line more.
  const cell = (share: number) => width * share - QUICK.cellPad - 0.3;
  const lines = Math.max(
    breakLines(control, cell(QUICK.controlShare), { sizePt, bold: true }).length,
    breakLines(action, cell(1 - QUICK.controlShare), { sizePt }).length,
  );
  return ptToMm(lines * sizePt * QUICK.lineHeight) + 2 * QUICK.rowPad + 0.25;
}

function captionHeight({ name }: QuickMode, width: number, sizePt: number): number {
  const size = sizePt * QUICK.captionScale;
  const lines = breakLines(name, width - 0.5, { sizePt: size, bold: true }).length;
  return ptToMm(lines * size * QUICK.lineHeight) + 1.4;
}
