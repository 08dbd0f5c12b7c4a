import type { Place } from '../findings/place.js';
import { duplicateName, type Spot } from './faults.js';
import { headingOf } from './garbled.js';
import { invisibleIn, withoutInvisible } from './invisible.js';
import { LAYOUTS } from './layout.js';
import type { Section } from './sections.js';
import { listWords, nearest, normal, tidy } from './spelling.js';
import { rowPlace } from './table-places.js';
import { placeOf, type Words } from './words.js';

/** The columns of a table, told apart. */
export interface Columns {
  /** Of each column, misspelt ones too; null for one that is not known. */
  readonly names: readonly (string | null)[];
  readonly columns: ReadonlySet<string>;
  /** True where a heading names a column that is not known. */
  readonly isUnclear: boolean;
  /** Indices of columns without a heading, as long as no cell of theirs says anything. */
  readonly unnamed: Set<number>;
  /** Columns that the table may have too. */
  readonly free: readonly string[];
}

/**
 * Tells the columns of a table apart by its headings.
 *
 * @param extra columns of the scheme's own
 * @param table where the table stands
 */
export function readColumns(
  headings: readonly Words[],
  section: Section,
  spot: Spot,
  extra: readonly string[],
  table: Place,
): Columns {
  const names = namesOf(headings, section, spot, extra);
  const columns = new Set(names.filter(name => name !== null));
  reportMissing(headings, columns, section, spot, table);
  const unnamed = headings.flatMap(({ text }, index) => (text === '' ? [index] : []));
  const free = knownColumns(section, extra).filter(name => !columns.has(name));
  const isUnclear = headings.some(({ text }, index) => text !== '' && names[index] === null);
  return { names, columns, isUnclear, unnamed: new Set(unnamed), free };
}

const knownColumns = (section: Section, extra: readonly string[]): readonly string[] => [
  ...LAYOUTS[section.kind].columns.map(({ name }) => name),
  ...extra,
];

/** The column of each heading, or the one that it was probably meant as; null for one that is not known. */
function namesOf(
  headings: readonly Words[],
  section: Section,
  spot: Spot,
  extra: readonly string[],
): readonly (string | null)[] {
  const known = knownColumns(section, extra);
  const find = ({ text }: Words): string | undefined =>
    known.find(candidate => normal(candidate) === normal(text));
  const absent = new Set(known);
  for (const words of headings) absent.delete(find(words) ?? '');
  const seen = new Map<string, Words>();
  return headings.map(words => {
    const name = find(words);
    if (name === undefined) {
      const meant = words.text === '' ? null : meantColumn(words.text, absent);
      if (words.text !== '') unknownColumn(words, meant, known, section, spot);
      absent.delete(meant ?? '');
      return meant;
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

/** A column that the table has not yet. */
function meantColumn(text: string, absent: ReadonlySet<string>): string | null {
  const column = withoutInvisible(tidy(text));
  const called = ALSO_CALLED.get(normal(column)) ?? '';
  return absent.has(called) ? called : nearest(column, absent);
}

/** Other words for columns. */
const ALSO_CALLED: ReadonlyMap<string, string> = new Map([
  ['player', 'Who'],
  ['what', 'Action'],
  ['input', 'Control'],
  ['how', 'Gesture'],
  ['condition', 'When'],
  ['effect', 'Then'],
  ['position', 'Position or use'],
  ['use', 'Position or use'],
]);

function unknownColumn(
  words: Words,
  meant: string | null,
  known: readonly string[],
  section: Section,
  spot: Spot,
): void {
  const column = tidy(words.text);
  const invisible = invisibleIn(column);
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

/** One finding a column: at its first cell that says something. */
export function unnamedColumn(words: Words, free: readonly string[], section: Section, spot: Spot): void {
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
