import type { List, Paragraph, RootContent } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { type Block, placeOfBlock } from './document.js';
import { badPlace, type Spot } from './faults.js';
import { LAYOUTS } from './layout.js';
import type { Section } from './sections.js';
import { tidy } from './spelling.js';

export const headingOf = (section: Section): string => `\`## ${tidy(section.heading.text)}\``;

/** A paragraph that was meant as a table, or a table inside a list or a quote. */
export function reportGarbled(section: Section, spot: Spot): boolean {
  let hasTable = false;
  let found = false;
  for (const block of section.blocks) {
    hasTable ||= block.node.type === 'table';
    if (!isGarbled(block.node)) continue;
    found = true;
    const isCutOff = hasTable && block.node.type === 'paragraph';
    badPlace(
      spot,
      placeOfBlock(block),
      headingOf(section),
      isCutOff
        ? 'these rows are cut off from the table above, so they are not read'
        : 'this looks like a table, but Markdown does not read it as the table of this section',
      [isCutOff ? CLOSE_UP : FORM_A_TABLE],
    );
  }
  return found;
}

const CLOSE_UP = 'Take out the blank line (or the words) between the table and these rows.';
const FORM_A_TABLE =
  'Give the table a heading row and a row of dashes (`| --- | --- |`) with as many cells, and leave a blank line before it.';

function isGarbled(node: RootContent): boolean {
  if (node.type === 'paragraph') return looksLikeTable(node);
  if (node.type === 'blockquote') return node.children.some(child => child.type === 'table');
  return node.type === 'list' && hasTable(node);
}

export const looksLikeTable = (node: Paragraph): boolean => hasTableLine(textOf(node));

const hasTableLine = (text: string): boolean => /^\s*\|.*\|\s*$/m.test(text);

/** Also where a table follows the list without a blank line: then it is read as words of the last item. */
const hasTable = (list: List): boolean =>
  list.children.some(item =>
    item.children.some(
      child => child.type === 'table' || (child.type === 'paragraph' && looksLikeTable(child)),
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
    return /^\s*<!--/.test(node.value) && hasTableLine(node.value)
      ? { what: 'a comment', wayOut: 'Take the marks of the comment (`<!--` and `-->`) out.' }
      : null;
  if (node.type !== 'code' || !hasTableLine(node.value)) return null;
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
