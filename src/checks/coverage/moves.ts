import { isTwoPosition, type Position, type TwoPositionSwitchName } from '../../hardware/switches.js';
import type { Effect, Mode } from '../../language/model.js';
import type { Doing } from './doings.js';
import { type Guard, guardOf, guardSwitch, type Space } from './space.js';

/** What a step does to the values of a state. */
export interface Change {
  /**
   * For each variable that the step asks for or changes: `next[v]` is the value number it gets where it has
   * value number v, −1 where the step can't be taken. All other variables keep theirs.
   */
  readonly touches: ReadonlyMap<number, readonly number[]>;
  /** From 0; equal for equal changes of a space, and then they are the same object. */
  readonly id: number;
}

/** The changes made so far, by what they touch. */
export type Changes = Map<string, Change>;

/** A row (or a fallback) done in one way, as a step of the graph. */
export interface Step {
  /** Where it can be done. */
  readonly guard: Guard;
  readonly change: Change;
  /** The mode of its first `go to`. */
  readonly to: Mode | null;
}

/** Null where its `When` can't hold on this console, whatever the state. */
export function createStep(doing: Doing, space: Space, changes: Changes): Step | null {
  const asked = guardOf(doing.conditions, space);
  if (asked === null) return null;
  const { gesture } = doing;
  const name = twoPositionSwitch(doing);
  const guard =
    name !== null && gesture !== null && 'position' in gesture
      ? guardSwitch(asked, name, gesture.position, gesture.kind === 'at', space)
      : asked;
  if (guard === null) return null;
  const maps = new Map<number, number[]>();
  applyEffects(doing.effects, maps, space);
  if (name !== null && gesture?.kind !== 'at') moveSwitch(name, maps, space);
  return { guard, change: createChange(guard, maps, space, changes), to: targetOf(doing.effects) };
}

/** A switch moved to a position from the other one, and nothing else. */
export function createSwitchChange(
  name: TwoPositionSwitchName,
  position: Position,
  space: Space,
  changes: Changes,
): Change {
  const maps = new Map<number, number[]>();
  moveSwitch(name, maps, space);
  return createChange(
    guardSwitch(new Map(), name, position, false, space) ?? new Map(),
    maps,
    space,
    changes,
  );
}

/** The first `go to` wins. */
function targetOf(effects: readonly Effect[]): Mode | null {
  for (const effect of effects) if (effect.kind === 'go to') return effect.mode;
  return null;
}

/** The switch that is looked at (`at`) or moved (`flip`, `flip to`): these are all the gestures that fit one. */
const twoPositionSwitch = ({ worked }: Doing): TwoPositionSwitchName | null =>
  worked !== null && isTwoPosition(worked.name) ? worked.name : null;

/** A switch has two positions: moved, it is in the other one. */
function moveSwitch(name: TwoPositionSwitchName, maps: Map<number, number[]>, space: Space): void {
  const variable = space.switches.get(name);
  if (variable !== undefined) maps.set(variable, [1, 0]);
}

/** In order. Effects are on settings that the game keeps: the language has no others. */
function applyEffects(effects: readonly Effect[], maps: Map<number, number[]>, space: Space): void {
  for (const effect of effects) {
    if (effect.kind === 'go to') continue;
    const reading = space.readings.get(effect.setting);
    if (reading?.kind !== 'variable') continue;
    const size = reading.values.length;
    const before = maps.get(reading.variable) ?? reading.values.map((_, value) => value);
    maps.set(
      reading.variable,
      before.map(value =>
        effect.kind === 'set' ? reading.values.indexOf(effect.value) : (value + effect.by + size) % size,
      ),
    );
  }
}

function createChange(
  guard: Guard,
  maps: ReadonlyMap<number, readonly number[]>,
  space: Space,
  changes: Changes,
): Change {
  const touches = new Map<number, readonly number[]>();
  const keys: string[] = [];
  for (const [index, variable] of space.variables.entries()) {
    const fits = guard.get(index);
    const map = maps.get(index);
    if (fits === undefined && map === undefined) continue;
    const next = Array.from({ length: variable.size }, (_, value) =>
      fits === undefined || fits[value] === true ? (map?.[value] ?? value) : -1,
    );
    if (next.every((value, before) => value === before)) continue;
    touches.set(index, next);
    keys.push(`${index}:${next.join(',')}`);
  }
  const key = keys.join(' ');
  const known = changes.get(key);
  if (known !== undefined) return known;
  const change = { touches, id: changes.size };
  changes.set(key, change);
  return change;
}

/** Whether a touch leaves some value out. */
export const isAsked = (next: readonly number[]): boolean => next.includes(-1);

/** Whether a touch changes some value. */
export const isChanged = (next: readonly number[]): boolean =>
  next.some((value, before) => value !== -1 && value !== before);
