import type { List, Paragraph, RootContent, Table, TableCell, TableRow } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import type { Place } from '../findings/place.js';
import { ROWS, withinAmount } from './amounts.js';
import { type Block, placeOfBlock } from './document.js';
import { isFactList } from './facts.js';
import { badPlace, badValue, duplicateName, type Spot } from './faults.js';
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
    if (!garbled) missingTable(section, spot);
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

function missingTable(section: Section, spot: Spot): void {
  const columns = LAYOUTS[section.kind].columns.map(({ name }) => name).join(' · ');
  badPlace(spot, section.heading, headingOf(section), 'its table is missing', [
    `Write a table with the columns ${columns} under the heading.`,
  ]);
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

/** A paragraph that was meant as a table, or a table inside a list or a quote. */
function reportGarbled(section: Section, spot: Spot): boolean {
  let found = false;
  for (const block of section.blocks) {
    if (!isGarbled(block.node)) continue;
    found = true;
    badPlace(
      spot,
      placeOfBlock(block),
      headingOf(section),
      'this looks like a table, but Markdown does not read it as the table of this section',
      [
        'Give the table a heading row and a row of dashes (`| --- | --- |`) with as many cells, and leave a blank line before it.',
      ],
    );
  }
  return found;
}

function isGarbled(node: RootContent): boolean {
  if (node.type === 'paragraph') return looksLikeTable(node);
  if (node.type === 'blockquote') return node.children.some(child => child.type === 'table');
  return node.type === 'list' && hasTable(node);
}

export const looksLikeTable = (node: Paragraph): boolean => /^\s*\|.*\|\s*$/m.test(textOf(node));

/** Also where a table follows the list without a blank line: then it is read as words of the last item. */
const hasTable = (list: List): boolean =>
  list.children.some(item =>
    item.children.some(
      child => child.type === 'table' || (child.type === 'paragraph' && looksLikeTable(child)),
    ),
  );

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
  const rows: Row[] = [];
  for (const line of body) {
    const row = readRow(line, block, names, columns, spot);
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

const FEWER_ROWS = 'Take rows out, or split the game into several schemes.';

const headingOf = (section: Section): string => `\`## ${tidy(section.heading.text)}\``;

/** The column of each heading; null for one that is not known. */
function readColumns(
  headings: readonly Words[],
  section: Section,
  spot: Spot,
  extra: readonly string[],
): readonly (string | null)[] {
  const known = [...LAYOUTS[section.kind].columns.map(({ name }) => name), ...extra];
  const seen = new Map<string, Words>();
  return headings.map(words => {
    const name = known.find(candidate => normal(candidate) === normal(words.text));
    if (name === undefined) {
      if (words.text !== '') unknownColumn(words, known, section, spot);
      return null;
    }
    const first = seen.get(name);
    if (first !== undefined) {
      duplicateName(spot, words, 'columns', placeOf(first));
      return null;
    }
    seen.set(name, words);
    return name;
  });
}

function unknownColumn(words: Words, known: readonly string[], section: Section, spot: Spot): void {
  const column = tidy(words.text);
  const meant = nearest(column, known);
  const hint = meant === null ? '' : ` Did you mean “${meant}”?`;
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

function readRow(
  line: TableRow,
  block: Block,
  names: readonly (string | null)[],
  columns: ReadonlySet<string>,
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
    else if (name !== null && !isSilent(words)) cells.set(name, words);
  }
  if (all.length === 0) return null;
  return { cells, columns, at: rowPlace(all, placeOfBlock(block)) };
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
