import type { Report } from '../findings/report.js';
import type { Block } from './document.js';
import { invisibleIn, withoutInvisible } from './invisible.js';
import { headingText, LAYOUTS, SECTION_KINDS } from './layout.js';
import { nearest, normal, tidy } from './spelling.js';
import { placeOf, type Words } from './words.js';

/** A heading that is none of the language. */
export interface OtherHeading {
  readonly words: Words;
  /** As it is written. */
  readonly shown: string;
  readonly depth: number;
}

/** Without marks that stand before it. */
export const bare = (text: string): string => tidy(text.replace(/^#+/, ''));

/** `Settings`, `Mode: Yard`: a word that is only near is no reason to doubt prose. */
export function saysSection(text: string): boolean {
  const [, word = '', rest = ''] = /^(.*?)(\s*[:=–—].*|\s-\s.*)?$/s.exec(text) ?? [];
  return SECTION_KINDS.some(kind => {
    const { heading, title } = LAYOUTS[kind];
    return normal(word) === normal(heading) && (title === 'name' || rest === '');
  });
}

/** What has been read before a heading. */
export interface Before {
  readonly title: Words | null;
  /** The first section. */
  readonly first: { readonly origin: Block } | undefined;
  /** The sections of the whole document. */
  readonly there: ReadonlySet<string>;
}

export function unknownHeading({ words, shown, depth }: OtherHeading, before: Before, report: Report): void {
  const text = bare(words.text);
  const invisible = invisibleIn(text);
  const meant = nearHeading(withoutInvisible(text).replace('：', ':'), before.there);
  const isTitle = depth === 1 && meant === null;
  const near = meant === null ? '' : ` Did you mean \`${meant}\`?`;
  report(
    'unknown-heading',
    placeOf(words),
    {
      heading: shown,
      hint: invisible === null ? near : ` In it stands ${invisible}, which nobody can see.`,
    },
    {
      waysOut: [
        ...(meant === null ? [] : [`Write \`${meant}\`.`]),
        ...(meant === null && saysSection(text) ? [SECTION_IS_THERE] : []),
        ...(isTitle ? titleWays(words, before) : []),
        ...(isTitle && before.title === null ? [] : [proseWay(text, depth)]),
      ],
    },
  );
}

const SECTION_IS_THERE = 'Put what stands under it into the section of that name, which is there already.';

const proseWay = (text: string, depth: number): string =>
  depth < 3
    ? `If it is prose for the manual, write \`## Manual: ${text === '' ? 'TITLE' : text}\`.`
    : 'If it is prose, write it as a paragraph, or put it under a `## Manual: TITLE` heading.';

/** A second title, or one that comes too late: often because of the order in which the files are read. */
function titleWays({ run }: Words, { title, first }: Before): readonly string[] {
  const own = run.part.source.path;
  const other = title?.run.part.source.path ?? first?.origin.part.source.path ?? own;
  const order = `the files are read in name order, ${quotedName(other)} before ${quotedName(own)}`;
  if (title !== null)
    return [
      other === own
        ? `Take it out: the game’s title is “${tidy(title.text)}” already.`
        : `Take it out: the game’s title is “${tidy(title.text)}” already (${order}).`,
    ];
  return [
    other === own
      ? 'Move the title to the top of the file, above the first section.'
      : `Name the files so that the one with the title is read first: ${order}.`,
  ];
}

const quotedName = (path: string): string => `“${path.replace(/^.*[\\/]/, '')}”`;

/** The heading that was probably meant: its word misspelt, its colon forgotten, or at another level; never one that is there. */
function nearHeading(text: string, there: ReadonlySet<string>): string | null {
  const [, word = '', rest = ''] = /^([^:]*):?(.*)$/s.exec(text) ?? [];
  const headings = SECTION_KINDS.map(kind => LAYOUTS[kind].heading).filter(
    heading => !there.has(`${normal(heading)}: ${normal(heading)}`),
  );
  const first = /^\S+/.exec(word)?.[0] ?? '';
  for (const [meant, title] of [
    [nearest(word, headings), rest],
    [nearest(first, headings), `${word.slice(first.length)}${rest}`],
  ] as const) {
    const kind = SECTION_KINDS.find(candidate => LAYOUTS[candidate].heading === meant);
    if (kind === undefined) continue;
    if (LAYOUTS[kind].title === 'none') return headingText(kind);
    const name = title.replace(/^[\s:=–—-]+/, '').trim();
    return name === '' ? headingText(kind) : `## ${LAYOUTS[kind].heading}: ${name}`;
  }
  return null;
}
