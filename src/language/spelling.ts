import { distance } from 'fastest-levenshtein';
import { withoutJoiners } from './invisible.js';

/** The form in which words are compared: without regard to case, repeated spaces and the kind of apostrophe. */
export function normal(text: string): string {
  if (PLAIN.test(text)) return text.toLowerCase();
  return text.normalize('NFC').replace(/\s+/g, ' ').trim().replaceAll('’', "'").toLowerCase();
}

/** ASCII with single spaces: only its case can matter. */
const PLAIN = /^[!-~]+(?: [!-~]+)*$/;

/** Spaces made single; otherwise as written. */
export function tidy(text: string): string {
  return PLAIN.test(text) ? text : text.replace(/\s+/g, ' ').trim();
}

/** Letters of any script, digits, spaces, `-`, `'` and `.`; at least one letter or digit. Joiners are looked at elsewhere. */
const NAME = /^[\p{L}\p{M}\p{N}\s\-'’.]*[\p{L}\p{N}][\p{L}\p{M}\p{N}\s\-'’.]*$/u;

export function isName(text: string): boolean {
  return NAME.test(withoutJoiners(text));
}

/** Longest text that is looked through for what was meant, in UTF-16 code units: some patterns try each place with each. */
export const LONGEST_LOOKED_THROUGH = 400;

/** Longest word for which a near one is sought, in UTF-16 code units. */
const LONGEST_MEANT = 60;

/** Letters that may differ: one in a short word, a third in a long one; none in a single letter or in a number. */
function mostDifferent(candidate: string): number {
  const { length } = candidate;
  if (length < 2 || /^\d+$/.test(candidate)) return 0;
  return length <= 5 ? 1 : Math.max(2, Math.floor(length / 3));
}

/** Letters that are wrong, too many or missing; two that have changed places count as one. */
function slips(one: string, other: string): number {
  const difference = distance(one, other);
  if (difference !== 2 || one.length !== other.length) return difference;
  const at = one.split('').findIndex((letter, index) => letter !== other[index]);
  const isSwap =
    one[at] === other[at + 1] && one[at + 1] === other[at] && one.slice(at + 2) === other.slice(at + 2);
  return isSwap ? 1 : difference;
}

/** The candidate that was probably meant, if one is near; of several as near, the only one with the same first letter. */
export function nearest(text: string, candidates: Iterable<string>): string | null {
  const wanted = normal(text);
  if (wanted === '' || wanted.length > LONGEST_MEANT) return null;
  const best = new Map<string, string>();
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const difference = slips(wanted, normal(candidate));
    if (difference > least || difference > mostDifferent(candidate)) continue;
    if (difference < least) best.clear();
    least = difference;
    if (!best.has(normal(candidate))) best.set(normal(candidate), candidate);
  }
  if (best.size > 1) for (const name of best.keys()) if (name[0] !== wanted[0]) best.delete(name);
  const [meant = null] = best.values();
  return best.size === 1 ? meant : null;
}

/**
 * The names that a text joins otherwise than it should (by `and`, a sign, or a space only), joined as they should be;
 * null where it names something else too.
 *
 * @param find the name as it is written where it is defined
 */
export function rejoined(
  text: string,
  find: (name: string) => string | undefined,
  separator: string,
): string | null {
  if (text.length > LONGEST_LOOKED_THROUGH) return null;
  for (const between of JOINTS) {
    const names = text.split(between).map(part => find(part));
    if (names.length > 1 && !names.includes(undefined)) return names.join(separator);
  }
  return null;
}

const JOINTS: readonly RegExp[] = [/\s*[,;/&+|]\s*(?:(?:and|or)\s+)?|\s+(?:and|or)\s+/i, /\s+/];

/** Finds a name among some. */
export function findIn(names: readonly string[]): (name: string) => string | undefined {
  const known = new Map(names.map(name => [normal(name), name]));
  return name => known.get(normal(name));
}

/** “a”, “b” or “c”; the rest only counted where there are many. */
export function listWords(words: readonly string[], last: 'and' | 'or' = 'or'): string {
  const shown = words.slice(0, MOST_LISTED).map(word => `“${word}”`);
  if (words.length > MOST_LISTED) return `${shown.join(', ')} ${last} ${words.length - MOST_LISTED} more`;
  if (shown.length < 2) return shown.join('');
  return `${shown.slice(0, -1).join(', ')} ${last} ${shown.at(-1)}`;
}

const MOST_LISTED = 12;
