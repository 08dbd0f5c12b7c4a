import { badValue, duplicateName, type Spot } from './faults.js';
import { readPlainName } from './naming.js';
import { LONGEST_LOOKED_THROUGH, listWords, nearest, normal, tidy } from './spelling.js';
import { symbolPart } from './symbol.js';
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
  const meant = meantAsRange(words.text);
  if (meant !== null) {
    badValue(
      spot,
      words,
      'Values',
      `“${tidy(words.text)}” is neither a list with commas nor a range of numbers with “to”`,
      [`Write “${meant}”.`],
    );
    return { values: [], complete: false };
  }
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

/**
 * What was probably meant by a range that is written another way (`1-4`, `1..4`, `a to d`) or by numbers without
 * commas; null where the words can be one value.
 */
function meantAsRange(text: string): string | null {
  if (text.length > LONGEST_LOOKED_THROUGH) return null;
  const [, from, to] = RANGES.map(range => range.exec(text)).find(match => match !== null) ?? [];
  if (from !== undefined && to !== undefined) {
    if (/\d/.test(from)) return Number(from) < Number(to) ? `${from} to ${to}` : null;
    return lettersBetween(from, to)?.join(', ') ?? null;
  }
  const steps = numbersBetween(text);
  if (steps !== null) return (isClash(steps) ? steps.map(inWords) : steps).join(', ');
  const joined = /[/|]|\s(?:or|and)\s/i.test(text) ? text.split(/\s*[,;/|]\s*|\s+(?:or|and)\s+/i) : [];
  if (joined.length > 1 && joined.length <= MOST_VALUES && !joined.includes('')) return joined.join(', ');
  const numbers = /^\d{1,9}(?:\s+\d{1,9}){1,31}$/.test(text) ? text.split(/\s+/) : [];
  return numbers.length === 0 ? null : (rangeOf(numbers) ?? numbers.join(', '));
}

const RANGES: readonly RegExp[] = [
  /^(\d{1,9})\s*(?:to|-|–|—|−|\.\.+|…|until|through|thru)\s*(\d{1,9})$/i,
  /^([a-z])\s*(?:\s+to\s+|-|–|—|−|\.\.+|…)\s*([a-z])$/i,
];

/** `1 to 7 by 2`, `-2 to 2`: ranges that only a list can say; null where it is none, or a long one. */
function numbersBetween(text: string): readonly number[] | null {
  const [, from, to, by = '1'] =
    /^(-?\d{1,4})\s*to\s*(-?\d{1,4})(?:\s*(?:by|step|steps of|in steps of)\s*(\d{1,3}))?$/i.exec(text) ?? [];
  const step = Number(by);
  const count = Math.floor((Number(to) - Number(from)) / step) + 1;
  if (from === undefined || step === 0 || count < 2 || count > LONGEST_LIST) return null;
  return Array.from({ length: count }, (_, index) => Number(from) + index * step);
}

/** A programmer’s symbols tell no `-2` from `2`. */
const isClash = (steps: readonly number[]): boolean =>
  new Set(steps.map(step => symbolPart(`${step}`))).size < steps.length;

const inWords = (step: number): string => (step < 0 ? `minus ${-step}` : `${step}`);

/** Most values that are proposed as a list. */
const LONGEST_LIST = 32;

/** `a`, `b`, `c`, `d`; null where they do not run upwards. */
function lettersBetween(from: string, to: string): readonly string[] | null {
  const first = from.charCodeAt(0);
  const count = to.charCodeAt(0) - first + 1;
  if (count < 2 || count > 26) return null;
  return Array.from({ length: count }, (_, index) => String.fromCharCode(first + index));
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
  const choose = chooseValue(values);
  badValue(spot, words, column, `“${tidy(words.text)}” is not a value of “${name}”`, [
    meant === null ? choose : `Write “${meant}”.`,
    `Add it to the values of “${name}”.`,
  ]);
}

/** The way out that lists the values. */
export function chooseValue(values: readonly string[]): string {
  const range = rangeOf(values);
  return range === null ? `Write one of its values: ${listWords(values)}.` : `Write a number from ${range}.`;
}

/** `1 to 8`, where the values are numbers in a row. */
export function rangeOf(values: readonly string[]): string | null {
  const [first = '', ...others] = values;
  const isRow =
    /^\d+$/.test(first) && others.every((value, index) => value === `${Number(first) + index + 1}`);
  return isRow && others.length > 1 ? `${first} to ${others.at(-1)}` : null;
}
