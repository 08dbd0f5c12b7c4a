import type { Table, TableCell, TableRow } from 'mdast';
import type { Place } from '../findings/place.js';
import { ROWS, withinAmount } from './amounts.js';
import { type Block, placeOfBlock } from './document.js';
import { isFactList } from './facts.js';
import { badPlace, badValue, duplicateName, type Spot } from './faults.js';
import { headingOf, reportGarbled, reportNoTable } from './garbled.js';
import { invisibleIn, withoutInvisible } from './invisible.js';
import { LAYOUTS } from './layout.js';
import type { Section } from './sections.js';
import { listWords, nearest, normal, tidy } from './spelling.js';
import { isSilent, placeFromTo, placeOf, readWords, type Words } from './words.js';

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

/** Of the words of its heading row. */
export function headerPlace({ children: [header] }: Table, block: Block): Place {
  const place = placeOfBlock(block);
  return header === undefined
    ? place
    : rowPlace(
        header.children.map(cell => cellWords(cell, block)),
        place,
      );
}

export function cellWords(cell: TableCell, { part }: Block): Words {
  return readWords(cell, part, true);
}

function rowPlace(cells: readonly Words[], otherwise: Place): Place {
  const said = cells.filter(words => words.text !== '');
  const [first] = said;
  const last = said.at(-1);
  if (first === undefined || last === undefined) return otherwise;
  return placeFromTo(first, last);
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
  const names = readColumns(headings, section, spot, extra);
  const columns = new Set(names.filter(name => name !== null));
  reportMissing(headings, columns, section, spot, placeOfBlock(block));
  const free = knownColumns(section, extra).filter(name => !columns.has(name));
  const shape = { names, columns, unnamed: unnamedColumns(headings), free };
  const rows: Row[] = [];
  for (const line of body) {
    const row = readRow(line, block, shape, section, spot);
    if (row !== null) rows.push(row);
  }
  if (rows.length === 0)
    badPlace(spot, rowPlace(headings, placeOfBlock(block)), headingOf(section), 'its table has no rows', [
      'Write a row for each thing, or take the whole section out.',
    ]);
  const amount = { most: ROWS[section.kind], what: 'rows', where: headingOf(section), wayOut: FEWER_ROWS };
  return {
    rows: withinAmount(rows, amount, spot, ({ at }) => at),
    extra: extra.filter(name => columns.has(name)),
  };
}

/** How a cell says nothing. */
export const LEAVE_EMPTY = 'Leave the cell empty, or write `—`.';

const FEWER_ROWS = 'Take rows out, or split the game into several schemes.';

const knownColumns = (section: Section, extra: readonly string[]): readonly string[] => [
  ...LAYOUTS[section.kind].columns.map(({ name }) => name),
  ...extra,
];

/** The column of each heading; null for one that is not known. */
function readColumns(
  headings: readonly Words[],
  section: Section,
  spot: Spot,
  extra: readonly string[],
): readonly (string | null)[] {
  const known = knownColumns(section, extra);
  const seen = new Map<string, Words>();
  return headings.map(words => {
    const name = known.find(candidate => normal(candidate) === normal(words.text));
    if (name === undefined) {
      if (words.text !== '') unknownColumn(words, known, section, spot);
      return null;
    }
    const first = seen.get(name);
    if (first !== undefined) {
      duplicateName(spot, words, 'columns', placeOf(first), [
        'Put the cells of the two into one column, and take the other out.',
      ]);
      return null;
    }
    seen.set(name, words);
    return name;
  });
}

function unknownColumn(words: Words, known: readonly string[], section: Section, spot: Spot): void {
  const column = tidy(words.text);
  const invisible = invisibleIn(column);
  const meant = nearest(withoutInvisible(column), known);
  const hint =
    invisible !== null
      ? ` In it stands ${invisible}, which nobody can see.`
      : meant === null
        ? ''
        : ` Did you mean “${meant}”?`;
  const waysOut = [
    meant === null ? `Use a column of this table: ${listWords(known)}.` : `Write “${meant}”.`,
    'Take the column out; remarks can stand in a paragraph.',
  ];
  spot.report(
    'unknown-column',
    placeOf(words),
    { column, section: headingOf(section), hint },
    { ...spot.details, waysOut },
  );
}

function reportMissing(
  headings: readonly Words[],
  columns: ReadonlySet<string>,
  section: Section,
  spot: Spot,
  otherwise: Place,
): void {
  for (const { name, needed } of LAYOUTS[section.kind].columns) {
    if (!needed || columns.has(name)) continue;
    const at = rowPlace(headings, otherwise);
    spot.report('missing-column', at, { column: name, section: headingOf(section) }, spot.details);
  }
}

/** The columns of a table, told apart. */
interface Shape {
  /** Of each column; null for one that is not known. */
  readonly names: readonly (string | null)[];
  readonly columns: ReadonlySet<string>;
  /** Indices of columns without a heading, as long as no cell of theirs says anything. */
  readonly unnamed: Set<number>;
  /** Columns that the table may have too. */
  readonly free: readonly string[];
}

const unnamedColumns = (headings: readonly Words[]): Set<number> =>
  new Set(headings.flatMap(({ text }, index) => (text === '' ? [index] : [])));

function readRow(
  line: TableRow,
  block: Block,
  { names, columns, unnamed, free }: Shape,
  section: Section,
  spot: Spot,
): Row | null {
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
    else if (isDash(words.text)) wrongDash(words, name ?? 'A cell', spot);
    else if (name !== null) cells.set(name, words);
    else if (unnamed.delete(index)) unnamedColumn(words, free, section, spot);
  }
  if (all.length === 0) return null;
  return { cells, columns, at: rowPlace(all, placeOfBlock(block)) };
}

/** One finding a column: at its first cell that says something. */
function unnamedColumn(words: Words, free: readonly string[], section: Section, spot: Spot): void {
  const write = `Write a heading over it${free.length === 0 ? '' : `: ${listWords(free)}`}.`;
  spot.report(
    'unknown-column',
    placeOf(words),
    {
      column: '',
      section: headingOf(section),
      hint: ` “${tidy(words.text)}” stands in a column without a heading.`,
    },
    { ...spot.details, waysOut: [write, 'Take the column out; remarks can stand in a paragraph.'] },
  );
}

/** Nothing said, by another dash than the language has. */
const isDash = (text: string): boolean => /^(?:[-–−‐‑―]+|—{2,})$/.test(text);

function wrongDash(words: Words, column: string, spot: Spot): void {
  badValue(spot, words, column, `“${words.text}” says nothing`, [LEAVE_EMPTY]);
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
