import type { List, Paragraph, RootContent, Table } from 'mdast';
import { bareText } from './bare-text.js';
import { type Block, placeOfBlock } from './document.js';
import { badPlace, type Spot } from './faults.js';
import { LAYOUTS } from './layout.js';
import type { Section } from './sections.js';
import { tidy } from './spelling.js';

export const headingOf = (section: Section): string => `\`## ${tidy(section.heading.text)}\``;

/** A paragraph that was meant as a table or as rows of one, or a table inside a list or a quote. */
export function reportGarbled(section: Section, spot: Spot): boolean {
  const hasOwn = section.blocks.some(({ node }) => node.type === 'table');
  let table: Table | null = null;
  let found = false;
  for (const [index, block] of section.blocks.entries()) {
    const { node } = block;
    if (node.type === 'table') table ??= node;
    const isCutOff = node.type === 'paragraph' && table !== null && isCutOffFrom(table, node, section, index);
    if (!isCutOff && !isGarbled(node, hasOwn)) continue;
    found = true;
    const isBelow = table !== null && node.type === 'paragraph';
    badPlace(
      spot,
      placeOfBlock(block),
      headingOf(section),
      isBelow
        ? 'these rows are cut off from the table above, so they are not read'
        : 'this looks like a table, but Markdown does not read it as the table of this section',
      [isBelow ? CLOSE_UP : FORM_A_TABLE],
    );
  }
  return found;
}

/** A single row directly below the table, or one with as many cells as the table has. */
function isCutOffFrom(table: Table, node: Paragraph, { blocks }: Section, index: number): boolean {
  const text = bareText(node).trim();
  if (!TABLE_LINE.test(text) || text.includes('\n')) return false;
  const cells = text.split('|').length - 2;
  return blocks[index - 1]?.node === table || cells === table.children[0]?.children.length;
}

const CLOSE_UP = 'Take out the blank line (or the words) between the table and these rows.';
const FORM_A_TABLE =
  'Give the table a heading row and a row of dashes (`| --- | --- |`) with as many cells, and leave a blank line before it.';

/** @param hasOwn the section has its table: another in a quote or a list is for the readers */
function isGarbled(node: RootContent, hasOwn: boolean): boolean {
  if (node.type === 'paragraph') return looksLikeTable(node);
  if (node.type === 'blockquote') return !hasOwn && node.children.some(child => child.type === 'table');
  return node.type === 'list' && hasTable(node, hasOwn);
}

export const looksLikeTable = (node: Paragraph): boolean => hasTableLines(bareText(node));

const TABLE_LINE = /^\s*\|.*\|\s*$/;

/** Two lines between pipes, one below the other: a single one may be a formula. */
const hasTableLines = (text: string): boolean =>
  text
    .split('\n')
    .map(line => TABLE_LINE.test(line))
    .some((isLine, index, lines) => isLine && lines[index + 1] === true);

/** Also where a table follows the list without a blank line: then it is read as words of the last item. */
const hasTable = (list: List, hasOwn: boolean): boolean =>
  list.children.some(item =>
    item.children.some(
      child => (child.type === 'table' && !hasOwn) || (child.type === 'paragraph' && looksLikeTable(child)),
    ),
  );

/** The section has no table, or only one where Markdown sees none. */
export function reportNoTable(section: Section, spot: Spot): void {
  for (const block of section.blocks) {
    const cover = coverOf(block);
    if (cover === null) continue;
    badPlace(
      spot,
      placeOfBlock(block),
      headingOf(section),
      `its table is missing: the one that stands here is inside ${cover.what}`,
      [cover.wayOut],
    );
    return;
  }
  const columns = LAYOUTS[section.kind].columns.map(({ name }) => name).join(' · ');
  badPlace(spot, section.heading, headingOf(section), 'its table is missing', [
    `Write a table with the columns ${columns} under the heading.`,
  ]);
}

interface Cover {
  /** Goes after “inside”. */
  readonly what: string;
  readonly wayOut: string;
}

/** What keeps a table from being read; null where the block holds none. */
function coverOf({ node, part }: Block): Cover | null {
  if (node.type === 'html')
    return /^\s*<!--/.test(node.value) && hasTableLines(node.value)
      ? { what: 'a comment', wayOut: 'Take the marks of the comment (`<!--` and `-->`) out.' }
      : null;
  if (node.type !== 'code' || !hasTableLines(node.value)) return null;
  const first = part.source.text.charAt(part.base + (node.position?.start.offset ?? 0));
  return '`~'.includes(first)
    ? {
        what: 'code',
        wayOut: `Take out the lines of ${first === '~' ? 'tildes' : 'ticks'} above and below it.`,
      }
    : {
        what: 'code, as its lines are indented',
        wayOut: 'Take out the spaces at the beginning of its lines.',
      };
}
