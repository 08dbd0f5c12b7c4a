import type { SwitchName } from '../hardware/switches.js';
import { badValue, type Spot } from './faults.js';
import type { Gesture, NamedTime } from './model.js';
import type { Names } from './names.js';
import { findPosition, noSuchPosition, POSITIONS } from './positions.js';
import { LONGEST_LOOKED_THROUGH, listWords, nearest, normal, tidy } from './spelling.js';
import { readTime } from './times.js';
import { sliceWords, type Words } from './words.js';

type TimedKind = Extract<Gesture, { readonly time: unknown }>['kind'];
type PositionKind = Extract<Gesture, { readonly position: unknown }>['kind'];
type BareKind = Exclude<Gesture['kind'], TimedKind | PositionKind>;

/** A gesture as it is written: the words before its time or position, if it has one. */
type Form =
  | { readonly words: string; readonly takes: 'nothing'; readonly kind: BareKind }
  | { readonly words: string; readonly takes: 'T'; readonly kind: TimedKind }
  | { readonly words: string; readonly takes: 'P'; readonly kind: PositionKind };

/** Of two forms that begin alike, the longer stands first. */
const FORMS: readonly Form[] = [
  { words: 'press', takes: 'nothing', kind: 'press' },
  { words: 'release', takes: 'nothing', kind: 'release' },
  { words: 'held', takes: 'nothing', kind: 'held' },
  { words: 'hold', takes: 'T', kind: 'hold' },
  { words: 'tap under', takes: 'T', kind: 'tap' },
  { words: 'double tap within', takes: 'T', kind: 'double tap' },
  { words: 'repeat every', takes: 'T', kind: 'repeat' },
  { words: 'at', takes: 'P', kind: 'at' },
  { words: 'flip to', takes: 'P', kind: 'flip to' },
  { words: 'flip', takes: 'nothing', kind: 'flip' },
  { words: 'turn', takes: 'nothing', kind: 'turn' },
];

const written = ({ words, takes }: Form): string => (takes === 'nothing' ? words : `${words} ${takes}`);

const WRITTEN = FORMS.map(written);

/** First words of gestures: where a short form (`left button hold 1 s`) goes over to its gesture. */
export const FIRST_WORDS: ReadonlySet<string> = new Set(FORMS.map(form => form.words.replace(/ .*/, '')));

/**
 * The gesture that the words say; null (and a finding) where they say none.
 *
 * @param panel the two-position switch it is about, if it is about one
 */
export function readGesture(
  words: Words,
  times: Names<NamedTime>,
  column: string,
  spot: Spot,
  panel: SwitchName | null = null,
): Gesture | null {
  const text = normal(words.text);
  const form = FORMS.find(candidate => begins(text, candidate.words));
  if (form === undefined || (form.takes === 'nothing' && text !== form.words)) {
    unreadable(words, column, spot);
    return null;
  }
  if (form.takes === 'nothing') return { kind: form.kind };
  const rest = sliceWords(words, lengthOf(words.text, form.words));
  if (rest.text === '') {
    badValue(spot, words, column, `“${tidy(words.text)}” does not say ${SLOTS[form.takes]}`, [
      `Write “${written(form)}”, for example ${EXAMPLES[form.takes](form.words)}.`,
    ]);
    return null;
  }
  if (form.takes === 'T') {
    const time = readTime(rest, times, column, spot);
    return time === null ? null : { kind: form.kind, time };
  }
  return readPosition(form, rest, column, spot, panel);
}

function readPosition(
  { kind }: Extract<Form, { readonly takes: 'P' }>,
  rest: Words,
  column: string,
  spot: Spot,
  panel: SwitchName | null,
): Gesture | null {
  const position = findPosition(rest.text);
  if (position !== undefined) return { kind, position };
  if (panel !== null) noSuchPosition(spot, rest, column, panel);
  else
    badValue(spot, rest, column, `“${tidy(rest.text)}” is not a position of a switch`, [
      `Write ${listWords(POSITIONS)}.`,
    ]);
  return null;
}

const SLOTS = { T: 'how long', P: 'which position' } as const;
const EXAMPLES = {
  T: (words: string) => `“${words} 0.5 s”`,
  P: (words: string) => `“${words} A”`,
} as const;

const begins = (text: string, words: string): boolean => text === words || text.startsWith(`${words} `);

/** The length, in the text as written, of a form's words at its beginning. */
function lengthOf(text: string, words: string): number {
  const pattern = new RegExp(`^${words.replaceAll(' ', '\\s+')}`, 'i');
  return pattern.exec(text)?.[0].length ?? words.length;
}

/** A time or a position at the end of a gesture. */
const SLOT = /\s((?:\d*\.?\d+\s*(?:ms|s|frames?))|A|B|COLOR|B-W)$/i;

/** The form that the words before its time or position come near to. */
function nearForm(text: string, slot: RegExpExecArray | null): string | null {
  const lead = slot === null ? text : text.slice(0, slot.index);
  const form = FORMS.find(
    ({ words }) =>
      words ===
      nearest(
        lead,
        FORMS.map(({ words }) => words),
      ),
  );
  if (form === undefined || (form.takes === 'nothing') !== (slot === null)) {
    const first = nearest(text, FIRST_WORDS);
    const begun = FORMS.find(({ words }) => first !== null && begins(words, first));
    return begun === undefined ? nearest(text, WRITTEN) : written(begun);
  }
  return filled(form, slot?.[1]);
}

/** As it is written, with the time or the position that stands there already. */
function filled(form: Form, said: string | undefined): string {
  const fits = said !== undefined && /\d/.test(said) === (form.takes === 'T');
  return fits && form.takes !== 'nothing' ? `${form.words} ${said}` : written(form);
}

function unreadable(words: Words, column: string, spot: Spot): void {
  const text = tidy(words.text);
  const first = normal(text).replace(/ .*/, '');
  const form = FORMS.find(({ words: form }) => form.replace(/ .*/, '') === first);
  const slot = text.length > LONGEST_LOOKED_THROUGH ? null : SLOT.exec(text);
  const meant = form === undefined ? nearForm(text, slot) : filled(form, slot?.[1]);
  badValue(spot, words, column, `“${text}” is not a gesture`, [
    meant === null ? `Write one of ${listWords(WRITTEN)}; T is a time, P a position.` : `Write “${meant}”.`,
  ]);
}
