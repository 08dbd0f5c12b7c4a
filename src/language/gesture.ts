import type { SwitchName } from '../hardware/switches.js';
import { badValue, type Spot } from './faults.js';
import { begins, FORMS, type Form, WRITTEN, written } from './gesture-forms.js';
import { meantGesture } from './meant-gesture.js';
import type { Gesture, NamedTime } from './model.js';
import type { Names } from './names.js';
import { findPosition, noSuchPosition, POSITIONS } from './positions.js';
import { listWords, normal, tidy } from './spelling.js';
import { readTime } from './times.js';
import { sliceWords, type Words } from './words.js';

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
    unreadable(words, times, column, spot);
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

/** The length, in the text as written, of a form's words at its beginning. */
function lengthOf(text: string, words: string): number {
  const pattern = new RegExp(`^${words.replaceAll(' ', '\\s+')}`, 'i');
  return pattern.exec(text)?.[0].length ?? words.length;
}

function unreadable(words: Words, times: Names<NamedTime>, column: string, spot: Spot): void {
  const meant = meantGesture(words.text, times);
  badValue(spot, words, column, `“${tidy(words.text)}” is not a gesture`, [
    meant === null ? `Write one of ${listWords(WRITTEN)}; T is a time, P a position.` : `Write “${meant}”.`,
  ]);
}
