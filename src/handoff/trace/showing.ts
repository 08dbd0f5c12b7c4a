import type { Finding } from '../../findings/finding.js';
import type { Binding } from '../../gestures/bindings.js';
import { createPlay, enterPlay, type Play, type PlayState, stepPlay } from '../../gestures/play.js';
import {
  isTwoPosition,
  type Position,
  SWITCHES,
  type TwoPositionSwitchName,
} from '../../hardware/switches.js';
import type { Condition, Mode, Scheme } from '../../language/model.js';
import { levelsOfSteps } from '../vectors/accepted.js';
import { findSituation, inputOf, type Levels } from '../vectors/situation.js';

/** What is told of a finding that has a witness. */
export type WitnessedFinding = Pick<
  Finding,
  'rule' | 'severity' | 'message' | 'mode' | 'seats' | 'consoles' | 'actions' | 'witness'
>;

/** Where a witness can be seen, and what is read there. */
export interface Showing {
  readonly play: Play;
  /** At rest, before the first read. */
  readonly state: PlayState;
  readonly reads: readonly Levels[];
}

/**
 * A play in which the witness of a finding does what the finding says, up to the first read that changes something: a
 * witness does not simulate what comes then. Null where the finding has no witness, or one that needs more than one
 * mode’s beginning.
 */
export function findShowing(scheme: Scheme, finding: WitnessedFinding): Showing | null {
  const { witness, mode: named } = finding;
  const standard = scheme.standards.find(({ name }) => name === witness?.standard);
  if (witness === undefined || standard === undefined) return null;
  const modes = [
    ...scheme.modes.filter(({ name }) => name === named),
    ...scheme.modes.filter(({ name }) => name !== named),
  ];
  for (const profile of scheme.consoles.filter(({ name }) => finding.consoles?.includes(name) ?? true)) {
    for (const seats of scheme.seats.filter(({ name }) => finding.seats?.includes(name) ?? true)) {
      const play = createPlay({ scheme, seats, profile, standard });
      for (const mode of modes) {
        const found = play.engines.has(mode) ? showIn(play, mode, finding) : null;
        if (found !== null) return found;
      }
    }
  }
  return null;
}

function showIn(play: Play, mode: Mode, { actions = [], witness }: WitnessedFinding): Showing | null {
  const steps = witness?.steps ?? [];
  const bindings = play.engines.get(mode)?.bindings ?? [];
  const named = bindings.filter(({ actionName }) => actions.includes(actionName));
  for (const conditions of [...ownConditions(named), ...everyValue(bindings)]) {
    const situation = findSituation(play, mode, conditions);
    if (situation === null) continue;
    const state = enterPlay(play, mode, situation.values, positionsOf(play, situation.before));
    const reads = levelsOfSteps(play, steps, state.levels);
    if (reads !== null && doesShow(play, state, reads, steps)) return { play, state, reads };
  }
  return null;
}

/** What the settings may have to be: for all of the rows together, for two of them, for each, for none. */
function ownConditions(bindings: readonly Binding[]): readonly (readonly Condition[])[] {
  const each = [...new Set(bindings.map(({ conditions }) => conditions))];
  const pairs = each.flatMap(one => each.map(other => [...one, ...other]));
  return [each.flat(), ...pairs, ...each, []];
}

const MOST_VALUES = 1024;

/** Every value of the settings on which anything in the mode depends; the first of them where they are too many. */
function everyValue(bindings: readonly Binding[]): readonly (readonly Condition[])[] {
  const conditions = bindings.flatMap(binding => binding.conditions);
  const settings = new Map(conditions.map(({ setting, at }) => [setting, at]));
  let sets: readonly (readonly Condition[])[] = [[]];
  for (const [setting, at] of settings)
    sets = sets
      .flatMap(set => setting.values.map(value => [...set, { setting, is: true, value, at }]))
      .slice(0, MOST_VALUES);
  return sets;
}

function positionsOf(
  { contacts }: Play,
  levels: Levels,
): Readonly<Partial<Record<TwoPositionSwitchName, Position>>> {
  return Object.fromEntries(
    contacts.flatMap((contact, index) => {
      if (contact.kind !== 'switch' || !isTwoPosition(contact.name)) return [];
      return [[contact.name, SWITCHES[contact.name].positions[levels[index] ?? 0]?.name]];
    }),
  );
}

function doesShow(
  play: Play,
  from: PlayState,
  reads: readonly Levels[],
  steps: readonly { readonly fires: readonly string[] }[],
): boolean {
  let state = from;
  for (const [index, levels] of reads.entries()) {
    const step = stepPlay(play, state, inputOf(play, levels));
    const names = new Set(step.fired.map(({ actionName }) => actionName));
    const wanted = new Set(steps[index]?.fires);
    if (names.size !== wanted.size || [...wanted].some(name => !names.has(name))) return false;
    if (step.fired.some(({ effects }) => effects.length > 0)) return true;
    state = step.state;
  }
  return true;
}
