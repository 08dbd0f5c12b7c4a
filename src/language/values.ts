import { badValue, duplicateName, type Spot } from './faults.js';
import { readPlainName } from './naming.js';
import { listWords, nearest, normal, tidy } from './spelling.js';
import { placeOf, splitWords, type Words } from './words.js';

/** Most values of one setting: what one byte can count. */
const MOST_VALUES = 256;

/** Words that say in `Then` what becomes of a setting, so they can't be values. */
const STEPS = ['next', 'previous'];

export interface ReadValues {
  readonly values: readonly string[];
  /** False where some could not be read. */
  readonly complete: boolean;
}

/** A list (`gentle, strong`) or a range (`1 to 8`). */
export function readValues(words: Words, spot: Spot): ReadValues {
  const [, from = '', to = ''] = /^(\d+)\s+to\s+(\d+)$/i.exec(words.text) ?? [];
  if (from !== '') return readRange(words, from, to, spot);
  const values: string[] = [];
  const places = new Map<string, Words>();
  let complete = true;
  for (const part of splitWords(words, /[,;]/g)) {
    if (part.text === '') {
      badValue(spot, words, 'Values', `a value is missing in “${tidy(words.text)}”`, [
        'Take the extra comma out.',
      ]);
      complete = false;
      continue;
    }
    const value = readPlainName(part, 'Values', spot);
    checkMeaning(part, value, spot);
    const first = places.get(normal(value));
    if (first !== undefined) duplicateName(spot, part, 'values', placeOf(first));
    else values.push(value);
    places.set(normal(value), first ?? part);
  }
  if (values.length > MOST_VALUES) tooMany(words, values.length, spot);
  return { values, complete };
}

function checkMeaning(part: Words, value: string, spot: Spot): void {
  if (STEPS.includes(normal(value)))
    badValue(spot, part, 'Values', `“${value}” steps a setting in \`Then\`, so it can’t be a value`, [
      'Choose another word for the value.',
    ]);
  else if (/^\d+ to \d+$/i.test(value))
    badValue(spot, part, 'Values', `the range “${value}” stands in a list`, [
      'Write either one range (`1 to 8`) or a list of all values.',
    ]);
}

function readRange(words: Words, from: string, to: string, spot: Spot): ReadValues {
  const first = Number(from);
  const last = Number(to);
  if (last < first) {
    badValue(spot, words, 'Values', `the range “${tidy(words.text)}” runs backwards`, [
      `Write “${to} to ${from}”.`,
    ]);
    return { values: [], complete: false };
  }
  if (last - first >= MOST_VALUES) {
    tooMany(words, last - first + 1, spot);
    return { values: [], complete: false };
  }
  return {
    values: Array.from({ length: last - first + 1 }, (_, index) => String(first + index)),
    complete: true,
  };
}

function tooMany(words: Words, count: number, spot: Spot): void {
  badValue(
    spot,
    words,
    'Values',
    `there are ${count} values, more than the ${MOST_VALUES} that one byte can count`,
    ['Split the setting in two, or give it fewer values.'],
  );
}

/** The value, as the setting lists it, that the text names. */
export function findValue(values: readonly string[], text: string): string | undefined {
  const wanted = normal(text);
  return values.find(value => normal(value) === wanted);
}

export function noSuchValue(
  name: string,
  values: readonly string[],
  words: Words,
  column: string,
  spot: Spot,
): void {
  const meant = nearest(words.text, values);
  badValue(spot, words, column, `“${tidy(words.text)}” is not a value of “${name}”`, [
    meant === null ? `Write one of its values: ${listWords(values)}.` : `Write “${meant}”.`,
    `Add it to the values of “${name}”.`,
  ]);
}
