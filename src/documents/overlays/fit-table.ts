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

/**
 * The rows at the largest size at which they fit one piece; where none does, at 7 pt on as many pieces as they
 * need. The head row stands on each piece. A cell that is higher than a piece alone is cut short.
 */
export function fitTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  room: TableRoom,
  largestPt = 9,
): FittedTable {
  for (let sizePt = largestPt; sizePt > SMALLEST_PT; sizePt -= STEP_PT) {
    const all = [setRow(head, room, sizePt, true), ...rows.map(row => setRow(row, room, sizePt, false))];
    if (heightOf(all) <= room.height) return { sizePt, pieces: [all] };
  }
  const first = setRow(head, room, SMALLEST_PT, true);
  const pieces: FittedRow[][] = [[first]];
  for (const row of rows) {
    const set = cutRow(setRow(row, room, SMALLEST_PT, false), room.height - first.height);
    const current = pieces.at(-1) ?? [];
    if (current.length > 1 && heightOf([...current, set]) > room.height) pieces.push([first, set]);
    else current.push(set);
  }
  return { sizePt: SMALLEST_PT, pieces };
}

const heightOf = (rows: readonly FittedRow[]): number => rows.reduce((sum, { height }) => sum + height, 0);

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
  return { cells, height: rowHeight(cells, sizePt) };
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
  return { cells, height: rowHeight(cells, SMALLEST_PT) };
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
