import type { Report } from '../../findings/report.js';
import type { Action, Scheme } from '../../language/model.js';

/** Characters, as people count them. */
const LONGEST = 10;

/** What is wrong with a short label on a printed key it stands on, in words that follow “the label”; null if it fits. */
export type KeyFit = (action: Action, short: string) => KeyMisfit | null;

export interface KeyMisfit {
  /** `is 3.2 mm wider than key 5 of the Garden overlay`. */
  readonly problem: string;
  /** What would fit: `8 characters or fewer`. */
  readonly limit: string;
}

/** `short-too-long`. */
export function checkShorts(scheme: Scheme, report: Report, keyFit?: KeyFit): void {
  for (const action of scheme.actions) {
    if (action.short === null) continue;
    const { value: short, at } = action.short;
    const misfit = tooLong(short) ?? keyFit?.(action, short) ?? null;
    if (misfit === null) continue;
    report(
      'short-too-long',
      at,
      { short, problem: misfit.problem },
      {
        actions: [action.name],
        waysOut: [`Write a shorter label: ${misfit.limit}.`],
      },
    );
  }
}

function tooLong(short: string): KeyMisfit | null {
  if (short.length <= LONGEST) return null;
  const characters = [...new Intl.Segmenter().segment(short)].length;
  if (characters <= LONGEST) return null;
  return { problem: `has ${characters} characters`, limit: `${LONGEST} characters at most` };
}
