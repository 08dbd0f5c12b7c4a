import type { Finding, WitnessStep } from '../../findings/finding.js';
import type { Binding } from '../../gestures/bindings.js';
import { type Contact, contactType } from '../../gestures/contacts.js';
import { enterPlay, type Play, type PlayState, stepPlay } from '../../gestures/play.js';
import {
  isTwoPosition,
  type Position,
  SWITCHES,
  type TwoPositionSwitchName,
} from '../../hardware/switches.js';
import type { Condition, Mode } from '../../language/model.js';
import { findSituation, inputOf, type Levels } from './situation.js';

/** Where a witness begins, and what is read from there. */
export interface Beginning {
  /** At rest, before the first read. */
  readonly state: PlayState;
  readonly reads: readonly Levels[];
}

/**
 * A beginning in a mode from which the witness of a finding does what the finding says, up to the first read that
 * changes something: a witness does not simulate what comes then. Null where there is none.
 */
export function findBeginning(
  play: Play,
  mode: Mode,
  { actions = [], witness }: Pick<Finding, 'actions' | 'witness'>,
): Beginning | null {
  const steps = witness?.steps ?? [];
  const bindings = play.engines.get(mode)?.bindings ?? [];
  const named = bindings.filter(({ actionName }) => actions.includes(actionName));
  for (const conditions of [...ownConditions(named), ...everyValue(bindings)]) {
    const situation = findSituation(play, mode, conditions);
    if (situation === null) continue;
    const state = enterPlay(play, mode, situation.values, positionsOf(play, situation.before));
    const reads = levelsOfSteps(play, steps, state.levels);
    if (reads !== null && doesShow(play, state, reads, steps)) return { state, reads };
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

/** Null where the witness names a control that is not there. */
function levelsOfSteps(
  { contacts }: Play,
  steps: readonly WitnessStep[],
  before: Levels,
): readonly Levels[] | null {
  const reads: Levels[] = [];
  let levels = before;
  for (const { engaged } of steps) {
    if (!engaged.every(name => contacts.some(contact => isNamed(contact, name)))) return null;
    levels = contacts.map((contact, index) => levelIn(contact, engaged, levels[index] ?? 0));
    reads.push(levels);
  }
  return reads;
}

/** `left stick up`, or of a switch that was moved `TV type COLOR`. */
function isNamed(contact: Contact, name: string): boolean {
  if (name === contact.id) return true;
  return contact.kind === 'switch' && name.startsWith(`${contact.id} `);
}

/** What a step of a witness makes of a contact: a switch and what turns stay where they were unless it names them. */
function levelIn(contact: Contact, engaged: readonly string[], before: number): number {
  switch (contactType(contact)) {
    case 'momentary':
      return engaged.includes(contact.id) ? 1 : 0;
    case 'turning':
      return engaged.includes(contact.id) ? before + 1 : before;
    default: {
      if (contact.kind !== 'switch') return before;
      const { positions } = SWITCHES[contact.name];
      const moved = positions.findIndex(({ name }) => engaged.includes(`${contact.id} ${name}`));
      return moved < 0 ? before : moved;
    }
  }
}
