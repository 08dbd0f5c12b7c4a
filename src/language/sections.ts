import type { Heading } from 'mdast';
import type { Report } from '../findings/report.js';
import { type Block, type Document, isComment, placeOfBlock } from './document.js';
import { badPlace, createSpot } from './faults.js';
import { headingText, LAYOUTS, SECTION_KINDS, type SectionKind } from './layout.js';
import { nearest, normal, tidy } from './spelling.js';
import { placeOf, readWords, sliceWords, type Words } from './words.js';

/** A level-2 heading of the language and what stands under it. */
export interface Section {
  readonly kind: SectionKind;
  /** Its heading. */
  readonly origin: Block;
  /** The heading's words. */
  readonly heading: Words;
  /** The words after the colon of `Mode: NAME` and `Manual: TITLE`; the heading's own elsewhere. */
  readonly title: Words;
  readonly blocks: readonly Block[];
}

export interface Sections {
  /** The level-1 heading. */
  readonly title: Words | null;
  /** What stands between the title and the first section. */
  readonly opening: readonly Block[];
  readonly sections: readonly Section[];
}

/** Where blocks are put: a section being filled, or one that is passed over because its heading is wrong. */
interface Open {
  readonly kind: SectionKind | 'opening' | 'before the title' | 'passed over';
  readonly blocks: Block[];
}

export function readSections(document: Document, report: Report): Sections {
  const opening: Open = { kind: 'opening', blocks: [] };
  const before: Open = { kind: 'before the title', blocks: [] };
  const sections: Section[] = [];
  let title: Words | null = null;
  let open = before;
  for (const block of document.blocks) {
    const { node } = block;
    if (node.type === 'heading' && node.depth === 1 && title === null && sections.length === 0) {
      title = headingWords(node, block);
      open = opening;
    } else if (node.type === 'heading' && node.depth <= 2) {
      const section = node.depth === 2 ? readHeading(headingWords(node, block), block) : null;
      if (section === null) unknownHeading(node, block, report);
      else sections.push(section);
      open = section ?? { kind: 'passed over', blocks: [] };
    } else if (node.type === 'heading' && !holdsProse(open)) unknownHeading(node, block, report);
    else open.blocks.push(block);
  }
  reportStray(before.blocks, report);
  return { title, opening: opening.blocks, sections };
}

const holdsProse = ({ kind }: Open): boolean =>
  kind === 'opening' || kind === 'manual' || kind === 'passed over';

function headingWords(node: Heading, { part }: Block): Words {
  return readWords(node, part, false);
}

function readHeading(heading: Words, origin: Block): (Section & { readonly blocks: Block[] }) | null {
  const colon = heading.text.indexOf(':');
  const word = normal(colon < 0 ? heading.text : heading.text.slice(0, colon));
  const kind = SECTION_KINDS.find(candidate => normal(LAYOUTS[candidate].heading) === word);
  if (kind === undefined || (LAYOUTS[kind].title === 'name') !== colon >= 0) return null;
  return { kind, origin, heading, title: colon < 0 ? heading : sliceWords(heading, colon + 1), blocks: [] };
}

function unknownHeading(node: Heading, block: Block, report: Report): void {
  const words = headingWords(node, block);
  const text = tidy(words.text);
  const meant = nearHeading(text);
  const prose =
    node.depth < 3
      ? `If it is prose for the manual, write \`## Manual: ${text === '' ? 'TITLE' : text}\`.`
      : 'If it is prose, write it as a paragraph, or put it under a `## Manual: TITLE` heading.';
  report(
    'unknown-heading',
    placeOf(words),
    {
      heading: `${'#'.repeat(node.depth)} ${text}`.trim(),
      hint: meant === null ? '' : ` Did you mean \`${meant}\`?`,
    },
    { waysOut: [...(meant === null ? [] : [`Write \`${meant}\`.`]), prose] },
  );
}

/** The heading that was probably meant: its word misspelt, its colon forgotten, or at another level. */
function nearHeading(text: string): string | null {
  const [, word = '', rest = ''] = /^([^:]*):?(.*)$/s.exec(text) ?? [];
  const headings = SECTION_KINDS.map(kind => LAYOUTS[kind].heading);
  const first = /^\S+/.exec(word)?.[0] ?? '';
  for (const [meant, title] of [
    [nearest(word, headings), rest],
    [nearest(first, headings), `${word.slice(first.length)}${rest}`],
  ] as const) {
    const kind = SECTION_KINDS.find(candidate => LAYOUTS[candidate].heading === meant);
    if (kind === undefined) continue;
    if (LAYOUTS[kind].title === 'none') return headingText(kind);
    return title.trim() === '' ? headingText(kind) : `## ${LAYOUTS[kind].heading}: ${title.trim()}`;
  }
  return null;
}

/** Words that stand where nothing reads them. */
function reportStray(blocks: readonly Block[], report: Report): void {
  const [block] = blocks.filter(({ node }) => !isComment(node));
  if (block === undefined) return;
  badPlace(
    createSpot(report, ''),
    placeOfBlock(block),
    'Before the title',
    'nothing may stand before the level-1 heading with the game’s title',
    ['Move it below the heading `# TITLE`.'],
  );
}
