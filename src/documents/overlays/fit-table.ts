import type { Element } from 'hast';
import { label, line, type Point, ptToMm, STROKE } from '../figures/drawing.js';
import { breakLines } from '../figures/text-block.js';
import { SMALLEST_PT } from './fit-label.js';

/** A table set on one or more pieces of the same size. */
export interface FittedTable {
  readonly sizePt: number;
  /** The rows of each piece. */
  readonly pieces: readonly (readonly FittedRow[])[];
}

export interface FittedRow {
  readonly cells: readonly FittedCell[];
  /** mm */
  readonly height: number;
  /** Words are missing: it was higher than a piece. */
  readonly isCut: boolean;
}

interface FittedCell {
  readonly lines: readonly string[];
  readonly bold: boolean;
}

export interface TableRoom {
  /** Of each column, mm. */
  readonly columns: readonly number[];
  /** mm */
  readonly height: number;
}

const LEADING = 1.18;
/** Above and below the text of a row, mm. */
const PAD = 0.42;
/** To the right of a cell's text, mm. */
const CELL_GAP = 1.6;
const STEP_PT = 0.25;

/** What is to be set. */
export interface TableTexts {
  /** The head of a piece, by its number from 1 and how many there are. */
  head(number: number, count: number): readonly string[];
  /** Rows that stand on each piece, below the head. */
  readonly again: readonly (readonly string[])[];
  readonly rows: readonly (readonly string[])[];
  /** Rows that stand on each piece, below all others. */
  readonly foot: readonly (readonly string[])[];
}

/**
 * The rows on as few pieces as they need at 7 pt, shared out so that none is much fuller than another, at the
 * largest size at which they fit so many. A row that is higher than a piece alone is cut short.
 */
export function fitTable(texts: TableTexts, room: TableRoom, largestPt = 9): FittedTable {
  // The numbers of the pieces may make their heads higher, so that there must be more of them.
  let count = 1;
  let set = splitRows(texts, room, SMALLEST_PT, count);
  while (set.length > count) {
    count = set.length;
    set = splitRows(texts, room, SMALLEST_PT, count);
  }
  for (let sizePt = largestPt; sizePt > SMALLEST_PT; sizePt -= STEP_PT) {
    const larger = splitRows(texts, room, sizePt, count);
    const fits = larger.every(piece => heightOf(piece) <= room.height);
    if (larger.length <= count && fits) return { sizePt, pieces: larger };
  }
  return { sizePt: SMALLEST_PT, pieces: set };
}

/** @param count of the pieces, as their heads tell it */
function splitRows(
  { head, again, rows, foot }: TableTexts,
  room: TableRoom,
  sizePt: number,
  count: number,
): readonly (readonly FittedRow[])[] {
  const tops = (number: number) => [
    setRow(head(number, count), room, sizePt, true),
    ...again.map(row => setRow(row, room, sizePt, false)),
  ];
  const below = foot.map(row => setRow(row, room, sizePt, false));
  const left = room.height - heightOf([...tops(count), ...below]);
  const set = rows.map(row => {
    const whole = setRow(row, room, sizePt, false);
    return sizePt > SMALLEST_PT ? whole : cutRow(whole, left);
  });
  return shareOut(set, left).map((own, index) => [...tops(index + 1), ...own, ...below]);
}

/** As few groups as can be, in order, the highest of them as low as can be. */
function shareOut(rows: readonly FittedRow[], height: number): readonly (readonly FittedRow[])[] {
  const fewest = fill(rows, height).length;
  let [low, high] = [Math.min(height, Math.max(0, ...rows.map(row => row.height))), height];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (fill(rows, middle).length <= fewest) high = middle;
    else low = middle;
  }
  return fill(rows, high);
}

/** Enough to find a height to less than a hair. */
const HALVINGS = 16;

/** Group after group, each as full as it can be. */
function fill(rows: readonly FittedRow[], height: number): readonly (readonly FittedRow[])[] {
  const groups: FittedRow[][] = [[]];
  for (const row of rows) {
    const current = groups.at(-1) ?? [];
    if (current.length > 0 && heightOf([...current, row]) > height + 1e-9) groups.push([row]);
    else current.push(row);
  }
  return groups;
}

/** mm */
export const heightOf = (rows: readonly FittedRow[]): number =>
  rows.reduce((sum, { height }) => sum + height, 0);

function setRow(
  texts: readonly string[],
  { columns }: TableRoom,
  sizePt: number,
  isHead: boolean,
): FittedRow {
  const cells = texts.map((text, index) => {
    const bold = isHead || index === 0;
    return { bold, lines: breakLines(text, (columns[index] ?? 10) - CELL_GAP, { sizePt, bold }) };
  });
  return { cells, height: rowHeight(cells, sizePt), isCut: false };
}

const rowHeight = (cells: readonly FittedCell[], sizePt: number): number =>
  ptToMm(Math.max(...cells.map(({ lines }) => lines.length)) * sizePt * LEADING) + 2 * PAD;

function cutRow(row: FittedRow, height: number): FittedRow {
  if (row.height <= height) return row;
  const most = Math.max(1, Math.floor((height - 2 * PAD) / ptToMm(SMALLEST_PT * LEADING)));
  const cells = row.cells.map(({ lines, bold }) => ({
    bold,
    lines:
      lines.length <= most
        ? lines
        : [...lines.slice(0, most - 1), `${(lines[most - 1] ?? '').replace(/.{2}$/, '')}…`],
  }));
  return { cells, height: rowHeight(cells, SMALLEST_PT), isCut: true };
}

/** Draws the rows of one piece; a line under each but the last. */
export function drawTable(
  rows: readonly FittedRow[],
  sizePt: number,
  at: Point,
  columns: readonly number[],
): readonly Element[] {
  const width = columns.reduce((sum, column) => sum + column, 0);
  const nodes: Element[] = [];
  let y = at.y;
  rows.forEach(({ cells, height }, index) => {
    let x = at.x;
    cells.forEach(({ lines, bold }, column) => {
      lines.forEach((text, number) => {
        const baseline = y + PAD + ptToMm(sizePt * (LEADING * number + 0.92));
        if (text !== '') nodes.push(label(text, { x, y: baseline }, { sizePt, bold }));
      });
      x += columns[column] ?? 0;
    });
    y += height;
    const stroke = { width: index === 0 ? STROKE.detail : STROKE.hair };
    if (index < rows.length - 1) nodes.push(line({ x: at.x, y }, { x: at.x + width, y }, stroke));
  });
  return nodes;
}
