import type { Position, TwoPositionSwitchName } from '../hardware/switches.js';
import type { Condition, Effect, Setting } from '../language/model.js';
import type { SettingSource } from './settings.js';

/** What a setting is worth now; undefined where it is not known. */
export type ValueIn = (setting: Setting) => string | undefined;

/** Whether all conditions of a `When` hold. */
export function doHold(conditions: readonly Condition[], valueIn: ValueIn): boolean {
  return conditions.every(({ setting, is, value }) => (valueIn(setting) === value) === is);
}

/** The value after one `Then` part, before the wrap at either end; the value itself where the part leaves it alone. */
export function valueAfter(effect: Effect, setting: Setting, value: string): string {
  if (effect.kind === 'go to' || effect.setting !== setting) return value;
  if (effect.kind === 'set') return effect.value;
  const count = setting.values.length;
  const next = (setting.values.indexOf(value) + effect.by + count) % count;
  return setting.values[next] ?? value;
}

/** A setting's value on a console: what the game keeps, what a switch's position gives, or what never changes. */
export function valueFrom(
  source: SettingSource,
  kept: string | undefined,
  positionOf: (name: TwoPositionSwitchName) => Position | undefined,
): string | undefined {
  switch (source.kind) {
    case 'constant':
      return source.value;
    case 'game':
      return kept ?? source.startsAs;
    case 'switch': {
      const position = positionOf(source.name);
      return position === undefined ? undefined : source.values.get(position);
    }
    default:
      return source satisfies never;
  }
}
