import type { Heading, Paragraph, Text } from 'mdast';
import type { Report } from '../findings/report.js';
import { type Block, type Document, isComment, placeOfBlock } from './document.js';
import { badPlace, createSpot } from './faults.js';
import { LAYOUTS, SECTION_KINDS, type SectionKind } from './layout.js';
import { normal, tidy } from './spelling.js';
import { type Before, bare, type OtherHeading, saysSection, unknownHeading } from './unknown-heading.js';
import { readWords, sliceWords, type Words } from './words.js';

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
  const there = headingsOf(document);
  let title: Words | null = null;
  let open: Open = before;
  for (const block of document.blocks) {
    const { node } = block;
    if (node.type === 'heading' && node.depth === 1 && title === null && sections.length === 0) {
      title = headingWords(node, block);
      open = opening;
    } else if (node.type === 'heading' && node.depth <= 2) {
      const section = node.depth === 2 ? readHeading(headingWords(node, block), block) : null;
      if (section === null)
        unknownHeading(headingOf(node, block), { title, first: sections[0], there }, report);
      else sections.push(section);
      open = section ?? PASSED_OVER;
    } else open = readContent(block, open, { title, first: sections[0], there }, report);
  }
  reportStray(before.blocks, report);
  return { title, opening: opening.blocks, sections };
}

const PASSED_OVER: Open = { kind: 'passed over', blocks: [] };

const holdsProse = ({ kind }: Open): boolean =>
  kind === 'opening' || kind === 'manual' || kind === 'passed over';

/** Puts content where it belongs; returns where the next goes. */
function readContent(block: Block, open: Open, before: Before, report: Report): Open {
  const heading = strayHeading(block, open, before.there);
  if (heading === null) {
    if (open !== PASSED_OVER) open.blocks.push(block);
    return open;
  }
  unknownHeading(heading, before, report);
  return isStraySection(heading, open) ? PASSED_OVER : open;
}

function headingOf(node: Heading, block: Block): OtherHeading {
  const words = headingWords(node, block);
  return { words, shown: `${'#'.repeat(node.depth)} ${tidy(words.text)}`.trim(), depth: node.depth };
}

/** A heading of level 3 or deeper that is no prose, or a line that was meant as a heading. */
function strayHeading(block: Block, open: Open, there: ReadonlySet<string>): OtherHeading | null {
  const { node } = block;
  if (node.type === 'paragraph') return open.kind === 'manual' ? null : gluedHeading(node, block, there);
  if (node.type !== 'heading') return null;
  const heading = headingOf(node, block);
  return !holdsProse(open) || isStraySection(heading, open) ? heading : null;
}

/**
 * `##Settings`: Markdown takes it for a paragraph, as no space follows the marks. It is prose where the section is
 * there already, and where a tag (`#settings`) may be meant.
 */
function gluedHeading(node: Paragraph, block: Block, there: ReadonlySet<string>): OtherHeading | null {
  const [first] = node.children;
  if (first?.type !== 'text' || !/^\s*#/.test(first.value) || isEscaped(first, block)) return null;
  const words = readWords(node, block.part, false);
  const [line = '', marks = ''] = /^(#{1,6})[^#\n][^\n]*/.exec(words.text) ?? [];
  const said = tidy(line.slice(marks.length));
  if (!saysSection(said) || (marks.length === 1 && !/^\p{Lu}/u.test(said))) return null;
  const section = readHeading(sliceWords(words, marks.length, line.length), block);
  if (section !== null && there.has(keyOf(section))) return null;
  return { words: sliceWords(words, 0, line.length), shown: tidy(line), depth: marks.length };
}

/** `\##` shows the marks. */
function isEscaped({ position }: Text, { part }: Block): boolean {
  return part.source.text[part.base + (position?.start.offset ?? 0)] === '\\';
}

/** The sections that the whole document has. */
function headingsOf({ blocks }: Document): ReadonlySet<string> {
  const sections = blocks.map(block =>
    block.node.type === 'heading' && block.node.depth === 2
      ? readHeading(headingWords(block.node, block), block)
      : null,
  );
  return new Set(sections.filter(section => section !== null).map(keyOf));
}

const keyOf = ({ kind, title }: Pick<Section, 'kind' | 'title'>): string => `${kind}: ${normal(title.text)}`;

/**
 * A heading of another level with the words of a section, where it must have been meant as one: outside sections,
 * or where the section above has its table already.
 */
function isStraySection({ words }: OtherHeading, { kind, blocks }: Open): boolean {
  if (kind === 'manual' || kind === 'before the title') return false;
  const isFull =
    kind === 'opening' || kind === 'passed over' || blocks.some(({ node }) => node.type === 'table');
  return isFull && saysSection(bare(words.text));
}

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
