import type { Table, TableRow } from 'mdast';
import type { Place } from '../findings/place.js';
import { ROWS, withinAmount } from './amounts.js';
import { type Columns, readColumns, unnamedColumn } from './columns.js';
import { type Block, placeOfBlock } from './document.js';
import { isFactList } from './facts.js';
import { badPlace, badValue, type Spot } from './faults.js';
import { headingOf, reportGarbled, reportNoTable } from './garbled.js';
import { invisibleIn, withoutInvisible } from './invisible.js';
import { LAYOUTS } from './layout.js';
import type { Section } from './sections.js';
import { cellWords, headerPlace, rowPlace } from './table-places.js';
import { isSilent, type Words } from './words.js';

/** The table of a section, its columns told apart. */
export interface SectionTable {
  readonly rows: readonly Row[];
  /** Columns of the scheme's own (settings, switches), in order. */
  readonly extra: readonly string[];
}

/** A row: the words of each column, by the column's name as the language (or the scheme) writes it. */
export interface Row {
  /** Only columns that say something. */
  readonly cells: ReadonlyMap<string, Words>;
  /** The columns that the table has. */
  readonly columns: ReadonlySet<string>;
  /** The table has a column that is not known: what seems to be missing may stand there. */
  readonly isUnclear: boolean;
  /** From the row's first word to its last. */
  readonly at: Place;
}

const NO_TABLE: SectionTable = { rows: [], extra: [] };

/** Reads a section's table; `extra` names the columns it may have besides the language's own. */
export function readTable(section: Section, spot: Spot, extra: readonly string[] = []): SectionTable {
  const table = findTable(section, spot);
  return table === null ? NO_TABLE : readRows(table, section, spot, extra);
}

export interface TableBlock extends Block {
  readonly node: Table;
}

/** The table of a section; null (and a finding) where it has none. */
export function findTable(section: Section, spot: Spot): TableBlock | null {
  const tables = section.blocks.filter(({ node }) => node.type === 'table');
  const [first, ...others] = tables;
  for (const block of others) strayTable(block, section, spot);
  const garbled = reportGarbled(section, spot);
  if (LAYOUTS[section.kind].holds === 'table') reportFacts(section, spot);
  if (first === undefined || first.node.type !== 'table') {
    if (!garbled) reportNoTable(section, spot);
    return null;
  }
  return { node: first.node, part: first.part };
}

/** A list of facts under a heading that has none. */
function reportFacts(section: Section, spot: Spot): void {
  for (const block of section.blocks) {
    if (block.node.type !== 'list' || !isFactList(block.node, [])) continue;
    badPlace(
      spot,
      placeOfBlock(block),
      headingOf(section),
      'a list of facts stands here, where only a table is read',
      ['Put what it says into the table; if it is a remark for readers, write it as a paragraph.'],
    );
  }
}

function strayTable(block: Block, section: Section, spot: Spot): void {
  badPlace(
    spot,
    firstWords(block),
    headingOf(section),
    'a second table stands under this heading, where only the first is read',
    ['Put its rows into the first table, or put it under the heading it belongs to.'],
  );
}

function firstWords(block: Block): Place {
  return block.node.type === 'table' ? headerPlace(block.node, block) : placeOfBlock(block);
}

/** Reads a table that has been found; `extra` as above. */
export function readRows(
  block: TableBlock,
  section: Section,
  spot: Spot,
  extra: readonly string[] = [],
): SectionTable {
  const [header, ...body] = block.node.children;
  if (header === undefined) return NO_TABLE;
  const headings = header.children.map(cell => cellWords(cell, block));
  const columns = readColumns(headings, section, spot, extra, placeOfBlock(block));
  const rows: Row[] = [];
  for (const line of body) {
    const row = readRow(line, block, columns, section, spot);
    if (row !== null) rows.push(row);
  }
  if (rows.length === 0)
    badPlace(spot, rowPlace(headings, placeOfBlock(block)), headingOf(section), 'its table has no rows', [
      'Write a row for each thing, or take the whole section out.',
    ]);
  const amount = { most: ROWS[section.kind], what: 'rows', where: headingOf(section), wayOut: FEWER_ROWS };
  return {
    rows: withinAmount(rows, amount, spot, ({ at }) => at),
    extra: extra.filter(name => columns.columns.has(name)),
  };
}

/** How a cell says nothing. */
export const LEAVE_EMPTY = 'Leave the cell empty, or write `—`.';

const FEWER_ROWS = 'Take rows out, or split the game into several schemes.';

function readRow(
  line: TableRow,
  block: Block,
  { names, columns, isUnclear, unnamed, free }: Columns,
  section: Section,
  spot: Spot,
): Row | null {
  if (reportDashes(line, block, spot)) return null;
  const cells = new Map<string, Words>();
  const all: Words[] = [];
  for (const [index, cell] of line.children.entries()) {
    if (cell.children.length === 0) continue;
    const words = cellWords(cell, block);
    if (words.text === '') continue;
    all.push(words);
    const name = names[index];
    if (name === undefined) extraCell(words, spot, names.length);
    else if (isSilent(words)) continue;
    else if ((isDash(words.text) && !isLabel(words.text, name)) || withoutInvisible(words.text).trim() === '')
      wrongNothing(words, name ?? 'A cell', spot);
    else if (name !== null) cells.set(name, words);
    else if (unnamed.delete(index)) unnamedColumn(words, free, section, spot);
  }
  if (all.length === 0) return null;
  return { cells, columns, isUnclear, at: rowPlace(all, placeOfBlock(block)) };
}

/** Nothing said, by another dash than the language has. */
const isDash = (text: string): boolean => /^(?:[-–−‐‑―]+|—{2,})$/.test(text);

/** A key can be labelled with a minus. */
const isLabel = (text: string, column: string | null): boolean => text === '-' && column === 'Short';

/** A dash that the language has not, or only what can't be seen. */
function wrongNothing(words: Words, column: string, spot: Spot): void {
  const invisible = invisibleIn(words.text);
  const problem =
    invisible === null ? `“${words.text}” says nothing` : `nothing but ${invisible} stands here`;
  badValue(spot, words, column, problem, [LEAVE_EMPTY]);
}

/** A second row of dashes, as under the headings. */
function reportDashes(line: TableRow, block: Block, spot: Spot): boolean {
  const [first] = line.children[0]?.children ?? [];
  if (first?.type !== 'text' || !/^:?-/.test(first.value)) return false;
  const cells = line.children.map(cell => cellWords(cell, block)).filter(({ text }) => text !== '');
  if (cells.length < 2 || !cells.every(({ text }) => /^:?-+:?$/.test(text))) return false;
  const at = rowPlace(cells, placeOfBlock(block));
  badPlace(spot, at, 'Row', 'a row of dashes stands among the rows', ['Take the row out.']);
  return true;
}

function extraCell(words: Words, spot: Spot, count: number): void {
  badPlace(spot, words, 'Row', `this cell stands outside the table, which has ${count} columns`, [
    'Take a `|` out of the row (write `\\|` for one that is part of the words), or add a column to the heading row.',
  ]);
}

/** The words of a cell that must say something; null (and a finding) where it does not. */
export function needCell(
  row: Row,
  column: string,
  spot: Spot,
  wayOut: string,
  at: Place = row.at,
): Words | null {
  const words = row.cells.get(column);
  if (words !== undefined) return words;
  if (row.columns.has(column)) badValue(spot, at, column, 'nothing is said here', [wayOut]);
  return null;
}
