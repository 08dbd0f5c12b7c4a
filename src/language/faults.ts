import { type FindingDetails, relatedTo } from '../findings/finding.js';
import type { Place } from '../findings/place.js';
import type { Report } from '../findings/report.js';
import { invisibleIn } from './invisible.js';
import { listWords, nearest, tidy } from './spelling.js';
import { placeOf, type Words } from './words.js';

/** Whose cells are being read: how a message names it, and what a finding there concerns. */
export interface Spot {
  readonly report: Report;
  /** Goes after a column's name: ` of “Steer” in “Harbour”`. */
  readonly of: string;
  readonly details: FindingDetails;
}

export function createSpot(report: Report, of: string, details: FindingDetails = {}): Spot {
  return { report, of, details };
}

/** @param column the column, item or key that holds the words */
export function badValue(
  spot: Spot,
  at: Words | Place,
  column: string,
  problem: string,
  waysOut: readonly string[],
): void {
  badPlace(spot, at, `“${column}”${spot.of}`, problem, waysOut);
}

/** @param where what is at fault, for something that stands in no column: a heading, a row */
export function badPlace(
  spot: Spot,
  at: Words | Place,
  where: string,
  problem: string,
  waysOut: readonly string[],
): void {
  const invisible = 'run' in at ? invisibleIn(at.text) : null;
  if (invisible === null || problem.includes(invisible)) {
    spot.report('bad-value', toPlace(at), { where, problem }, { ...spot.details, waysOut });
    return;
  }
  const seen = `${problem} (in it stands ${invisible}, which nobody can see)`;
  spot.report('bad-value', toPlace(at), { where, problem: seen }, { ...spot.details, waysOut: [WRITE_ANEW] });
}

/** A word that is none of a fixed list. */
export function notOneOf(
  spot: Spot,
  words: Words,
  column: string,
  choices: readonly string[],
  suggested: string | null = null,
): void {
  const meant = invisibleIn(words.text) === null ? (suggested ?? nearest(words.text, choices)) : null;
  const problem = `“${tidy(words.text)}” is not one of ${listWords(choices)}`;
  badValue(spot, words, column, meant === null ? problem : `${problem} (did you mean “${meant}”?)`, [
    meant === null ? `Write ${listWords(choices)}.` : `Write “${meant}”.`,
  ]);
}

/** An invisible character is easily pasted, and can't be seen to be taken out. */
export const WRITE_ANEW = 'Take the word out, and type it anew.';

/**
 * @param kind goes after “There is no”: `mode`
 * @param suggested what was probably meant, where that is known better than by the letters
 */
export function unknownName(
  spot: Spot,
  words: Words,
  kind: string,
  candidates: readonly string[],
  define: string,
  suggested: string | null = null,
): void {
  const name = tidy(words.text);
  const invisible = invisibleIn(name);
  if (invisible !== null) {
    const hint = ` In it stands ${invisible}, which nobody can see.`;
    const waysOut = [WRITE_ANEW];
    spot.report('unknown-name', placeOf(words), { name, kind, hint }, { ...spot.details, waysOut });
    return;
  }
  const meant = suggested ?? nearest(name, candidates);
  const hint = meant === null ? '' : ` Did you mean “${meant}”?`;
  const choose = candidates.length === 0 ? [] : [`Use a name that is there: ${listWords(candidates)}.`];
  spot.report(
    'unknown-name',
    placeOf(words),
    { name, kind, hint },
    { ...spot.details, waysOut: [...(meant === null ? choose : [`Write “${meant}”.`]), define] },
  );
}

/** @param waysOut where another name is no help */
export function duplicateName(
  spot: Spot,
  words: Words,
  kind: string,
  first: Place | null,
  waysOut: readonly string[] = [],
): void {
  const name = tidy(words.text);
  const related = first === null ? {} : { related: [relatedTo(first, `The first “${name}” is here.`)] };
  const ways = waysOut.length === 0 ? {} : { waysOut };
  spot.report('duplicate-name', placeOf(words), { name, kind }, { ...spot.details, ...related, ...ways });
}

export function toPlace(at: Words | Place): Place {
  return 'run' in at ? placeOf(at) : at;
}
