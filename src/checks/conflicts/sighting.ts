import type { CONFLICTS_RULES } from '../../findings/catalogue/conflicts.js';
import type { WitnessStep } from '../../findings/finding.js';
import type { Binding } from '../../gestures/bindings.js';
import type { TvStandard } from '../../hardware/clocks.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { Mode, SeatsRow } from '../../language/model.js';
import type { TimedCell } from './cells.js';

/** The rules that sightings are of; the two on a gesture’s fit are found in `gesture-fit.ts`. */
export type ConflictRule = Exclude<keyof typeof CONFLICTS_RULES, 'wrong-gesture' | 'impossible-gesture'>;

/** A rule that holds for two bindings (or one) in one seats row, on some consoles, on one standard. */
export interface Sighting {
  readonly rule: ConflictRule;
  /** The mode that the finding is about. */
  readonly mode: Mode;
  readonly seats: SeatsRow;
  readonly profiles: readonly ConsoleProfile[];
  readonly standard: TvStandard;
  /** As the finding’s actions are ordered; one binding for the rules on a single row. */
  readonly bindings: readonly [Binding, ...Binding[]];
  /** Every binding of the mode there. */
  readonly among: readonly Binding[];
  /** Reads of the shortest sequence that shows it; 0 where there is none. */
  readonly length: number;
  /** Works the sequence out; null where the rule has none. */
  readonly witness: (() => readonly WitnessStep[]) | null;
  /** What the rule’s message asks for besides what all of them do. */
  readonly extra?: Readonly<Record<string, string | number>>;
}

/** A sighting in a cell; a rule that shows no sequence leaves the rest as it is. */
export function sightingIn(
  { cell, standard }: TimedCell,
  rule: ConflictRule,
  bindings: Sighting['bindings'],
  more: Partial<Sighting> = {},
): Sighting {
  const { mode, seats, profiles, bindings: among } = cell;
  return { rule, mode, seats, profiles, standard, bindings, among, length: 0, witness: null, ...more };
}

/** Sightings of one rule on the same rows: they make one finding. */
export type SightingGroup = readonly [Sighting, ...Sighting[]];

/** @returns groups in the order in which their first sighting was made */
export function groupSightings(sightings: readonly Sighting[]): readonly SightingGroup[] {
  const groups = new Map<string, [Sighting, ...Sighting[]]>();
  const rows = new Map<object, number>();
  const rowNumber = (binding: Binding): number => {
    const row = writtenRow(binding);
    const number = rows.get(row) ?? rows.size;
    rows.set(row, number);
    return number;
  };
  for (const sighting of sightings) {
    const numbers = sighting.bindings.map(rowNumber).sort((a, b) => a - b);
    const key = `${sighting.rule} ${numbers.join(' ')}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [sighting]);
    else group.push(sighting);
  }
  return [...groups.values()];
}

/** The row of the scheme that makes a binding: of its mode’s table or of `## Fallbacks`. */
export function writtenRow({ origin }: Binding): object {
  return origin.kind === 'row' ? origin.row : origin.fallback;
}

/** The sighting whose sequence is shown: a shortest one on the first standard it was seen on. */
export function clearest(group: SightingGroup): Sighting {
  const [first] = group;
  return group
    .filter(({ standard }) => standard === first.standard)
    .reduce((best, sighting) => (sighting.length < best.length ? sighting : best), first);
}

/** Different actions, and neither row says that it is meant to go `Along with` the other. */
export function areUnrelated(x: Binding, y: Binding): boolean {
  if (x.action === null || y.action === null) return x.actionName !== y.actionName;
  return x.action !== y.action && !x.alongWith.includes(y.action) && !y.alongWith.includes(x.action);
}

/** True where two bindings share a line. */
export function sharesLine(x: Binding, y: Binding): boolean {
  return x.parts.some(({ id }) => y.parts.some(part => part.id === id));
}
