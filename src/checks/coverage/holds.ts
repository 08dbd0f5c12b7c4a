import type { COVERAGE_RULES } from '../../findings/catalogue/coverage.js';
import type { FindingDetails } from '../../findings/finding.js';
import type { Report } from '../../findings/report.js';
import type { Mode, Scheme, Setting } from '../../language/model.js';
import type { Situation } from './situations.js';
import { whereText } from './where-text.js';

/** A rule that holds for something in some situations. Holds with one key become one finding. */
export interface Hold {
  readonly rule: keyof typeof COVERAGE_RULES;
  /** What it concerns: mode, action or setting, player, value; one for each finding. */
  readonly key: string;
  readonly situations: readonly Situation[];
  /** What it makes of a cell, with the reason as a short clause; null where it leaves the verdict alone. */
  readonly spoils: Spoil | null;
  /** What the player does without, where that is what the rule says. */
  readonly lost?: Loss;
  /** Reports the finding; asked of the first hold of a key only. */
  readonly tell: (report: Report, where: Where) => void;
}

export type Loss =
  | { readonly kind: 'action'; readonly name: string }
  | { readonly kind: 'value'; readonly setting: Setting; readonly value: string };

export interface Spoil {
  readonly verdict: 'broken' | 'altered';
  /** Null where every mode of the situation is concerned. */
  readonly mode: Mode | null;
  readonly clause: string;
}

/** The situations of one finding. */
export interface Where {
  readonly situations: readonly Situation[];
  /** `on no-difficulty in Solo`. */
  readonly text: string;
  readonly details: Required<Pick<FindingDetails, 'consoles' | 'seats' | 'standards' | 'where'>>;
}

/** Things that are equal for one finding, as a key. */
export const keyOf = (...parts: readonly (string | undefined)[]): string => parts.join('\n');

/**
 * One finding for each key, with all the situations it holds in.
 *
 * @param isAsked whether the question is about a situation at all
 */
export function reportHolds(
  holds: readonly Hold[],
  scheme: Scheme,
  isAsked: (situation: Situation) => boolean,
  report: Report,
): void {
  const groups = new Map<string, Hold[]>();
  for (const hold of holds) {
    const key = keyOf(hold.rule, hold.key);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [hold]);
    else group.push(hold);
  }
  const inOrder = createOrder(scheme);
  for (const group of groups.values()) {
    const situations = inOrder(group.flatMap(hold => hold.situations).filter(isAsked));
    if (situations.length > 0) group[0]?.tell(report, whereOf(situations, scheme));
  }
}

/** Puts situations in the scheme's order, each once. */
function createOrder(scheme: Scheme): (situations: readonly Situation[]) => readonly Situation[] {
  const rank = ({ console, seats, standard }: Situation): number =>
    (scheme.consoles.indexOf(console) * scheme.seats.length + scheme.seats.indexOf(seats)) *
      scheme.standards.length +
    scheme.standards.indexOf(standard);
  return situations => {
    const ranked = new Map(situations.map(situation => [rank(situation), situation]));
    return [...ranked].sort(([a], [b]) => a - b).map(([, situation]) => situation);
  };
}

function whereOf(situations: readonly Situation[], scheme: Scheme): Where {
  const where = situations.map(
    ({ console, seats, standard }) => [console.name, seats.name, standard.name] as const,
  );
  const details = {
    consoles: [...new Set(where.map(([console]) => console))],
    seats: scheme.seats.map(({ name }) => name).filter(name => where.some(([, seats]) => seats === name)),
    standards: scheme.standards
      .map(({ name }) => name)
      .filter(name => where.some(([, , standard]) => standard === name)),
    where,
  };
  return { situations, text: whereText(situations, scheme), details };
}
