import type { Fraction } from '../hardware/clocks.js';
import { badValue, type Spot } from './faults.js';
import type { NamedTime, Time } from './model.js';
import { type Names, resolveName } from './names.js';
import { LONGEST_LOOKED_THROUGH, nearest, tidy } from './spelling.js';
import { placeOf, type Words } from './words.js';

const LITERAL = /^(\d{1,9}(?:\.\d{1,9})?|\.\d{1,9})\s*(ms|s|frames?)$/i;

/** Longest time, in seconds or frames: no game waits an hour, and no count of reads overflows. */
const LONGEST: Readonly<Record<Time['unit'], number>> = { seconds: 3600, frames: 216_000 };

const WAYS_OUT = ['Write a number and a unit, as in “2 s”, “400 ms” or “40 frames”.'];

/** A time as written, or a name of `## Timing`; null (and a finding) where it is neither. */
export function readTime(words: Words, names: Names<NamedTime>, column: string, spot: Spot): Time | null {
  const named = names.find(words.text);
  if (named !== undefined) return { ...named.time, name: named.name, at: placeOf(words) };
  if (!looksLikeTime(words.text) && isNameOfTime(words.text, names)) {
    resolveName(words, names, spot, 'Name the time in `## Timing`, or write it out: “0.5 s”, “40 frames”.');
    return null;
  }
  return readLiteral(words, column, spot);
}

/** The name of a time may begin with a digit, where a time that is wrong may too. */
function isNameOfTime(text: string, names: Names<NamedTime>): boolean {
  if (/^\p{L}/u.test(text)) return meantTime(tidy(text)) === null;
  return names.isUnclear(text) || nearest(text, names.list()) !== null;
}

export function readLiteral(words: Words, column: string, spot: Spot): Time | null {
  const text = tidy(words.text);
  const [, digits = '', unit = ''] = LITERAL.exec(text) ?? [];
  const bad = (problem: string): null => {
    const meant = meantTime(text);
    badValue(spot, words, column, problem, meant === null ? WAYS_OUT : [`Write “${meant}”.`]);
    return null;
  };
  if (digits === '') return bad(`“${text}” is not a time`);
  const frames = /^f/i.test(unit);
  if (frames && digits.includes('.')) return bad(`“${text}” is not a whole number of frames`);
  const amount = scaled(fractionOf(digits), /^ms$/i.test(unit) ? 1000n : 1n);
  const kind = frames ? 'frames' : 'seconds';
  if (amount.numerator === 0n) return bad(`“${text}” is no time at all`);
  if (amount.numerator > BigInt(LONGEST[kind]) * amount.denominator)
    return bad(`“${text}” is longer than ${LONGEST[kind]} ${kind}`);
  return { unit: kind, amount, text, name: null, at: placeOf(words) };
}

/** The time that a text says or means, as it must be written; null where it says none. */
export function timeIn(text: string, names: Names<NamedTime>): string | null {
  if (LITERAL.test(tidy(text))) return tidy(text);
  return meantTime(tidy(text)) ?? names.find(text)?.name ?? null;
}

/** A time with another word for its unit, a comma in its number, or a word before it; null where it is none. */
function meantTime(text: string): string | null {
  if (text.length > LONGEST_LOOKED_THROUGH) return null;
  const [, digits = '', unit = ''] =
    /^(?:down )?(?:for |of |about |at least )?(\d*[.,]?\d+)\s*([a-z]+)\.?$/i.exec(text) ?? [];
  const known = UNITS.find(([words]) => words.test(unit))?.[1];
  const time = known === undefined ? '' : `${digits.replace(',', '.')} ${known}`;
  return time !== text && LITERAL.test(time) ? time : null;
}

const UNITS: readonly (readonly [words: RegExp, unit: string])[] = [
  [/^(?:s|secs?|seconds?|sek|sekunden?|secondes?)$/i, 's'],
  [/^(?:ms|msecs?|millis|milliseconds?)$/i, 'ms'],
  [/^(?:f|fr|frames?)$/i, 'frames'],
];

/** `0.5` is 5/10. */
function fractionOf(digits: string): Fraction {
  const [whole = '', decimals = ''] = digits.split('.');
  return { numerator: BigInt(whole + decimals), denominator: 10n ** BigInt(decimals.length) };
}

const scaled = ({ numerator, denominator }: Fraction, by: bigint): Fraction => ({
  numerator,
  denominator: denominator * by,
});

/** Written as a time is, or nearly so: such words can't be the name of one. */
export function looksLikeTime(text: string): boolean {
  if (LITERAL.test(tidy(text)) || !/\p{L}/u.test(text)) return true;
  return !/^\p{L}/u.test(text) && meantTime(tidy(text)) !== null;
}
