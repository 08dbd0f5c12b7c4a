import { doHold, valueAfter } from '../../gestures/values.js';
import type { Condition, Effect, Setting } from '../../language/model.js';
import { assignmentsOf, type SourceOf } from './worlds.js';

/**
 * All values that the settings of some conditions can have, numbered, and where one row's `Then` leads from each.
 */
export interface ValueChain {
  readonly values: readonly ReadonlyMap<Setting, string>[];
  /** By number: the number after the `Then`. */
  readonly next: readonly number[];
}

/** @param effects without `go to`; those on settings the game does not keep on this console change nothing */
export function chainOf(
  conditions: readonly Condition[],
  effects: readonly Effect[],
  sourceOf: SourceOf,
): ValueChain {
  const touched = new Set<Setting>();
  for (const effect of effects)
    if (effect.kind !== 'go to' && sourceOf(effect.setting).kind === 'game') touched.add(effect.setting);
  const values = assignmentsOf(conditions, sourceOf, touched).map(assignment => assignment.values);
  const numbers = new Map(values.map((value, index) => [keyOf(value), index]));
  const next = values.map(before => numbers.get(keyOf(afterEffects(before, effects, touched))) ?? 0);
  return { values, next };
}

/** Values after a `Then`. Only settings that the values speak of, and that may change, do. */
export function afterEffects(
  before: ReadonlyMap<Setting, string>,
  effects: readonly Effect[],
  touched: ReadonlySet<Setting>,
): ReadonlyMap<Setting, string> {
  const change = (setting: Setting, value: string) =>
    touched.has(setting) ? effects.reduce((now, effect) => valueAfter(effect, setting, now), value) : value;
  return new Map([...before].map(([setting, value]) => [setting, change(setting, value)]));
}

const keyOf = (values: ReadonlyMap<Setting, string>): string => JSON.stringify([...values.values()]);

/** By number: whether a `When` holds. */
export function holdsIn({ values }: ValueChain, conditions: readonly Condition[]): readonly boolean[] {
  return values.map(value => doHold(conditions, setting => value.get(setting)));
}
