import type { ConsoleProfile } from '../hardware/consoles.js';
import { type Position, SWITCHES, type TwoPositionSwitchName } from '../hardware/switches.js';
import type { Scheme, Setting } from '../language/model.js';
import { isInForce } from './bindings.js';

/** What decides a setting's value on one console. */
export type SettingSource =
  /** The game keeps it; it begins as `startsAs`. */
  | { readonly kind: 'game'; readonly startsAs: string }
  /** It is read from a switch that can be moved. */
  | {
      readonly kind: 'switch';
      readonly name: TwoPositionSwitchName;
      readonly values: ReadonlyMap<Position, string>;
    }
  /** It never changes. */
  | { readonly kind: 'constant'; readonly value: string };

export function settingSource(setting: Setting, scheme: Scheme, profile: ConsoleProfile): SettingSource {
  const fallback = scheme.fallbacks.find(
    row => row.subject.kind === 'setting' && row.subject.setting === setting && isInForce(row, profile),
  );
  if (fallback?.instead.kind === 'stays') return { kind: 'constant', value: fallback.instead.value };
  if (setting.setBy.kind === 'game') return { kind: 'game', startsAs: setting.startsAs };
  const state = profile.switches[setting.setBy.name];
  if (state.kind !== 'fixed')
    return { kind: 'switch', name: setting.setBy.name, values: setting.setBy.values };
  const value = setting.setBy.values.get(state.position) ?? setting.startsAs;
  return fallback === undefined ? { kind: 'constant', value } : { kind: 'game', startsAs: value };
}

/**
 * The position each two-position switch is in at power-on: where the console fixes it, that; else the one that
 * gives its settings' `Starts as`; else the one at rest (COLOR, B).
 */
export function startPosition(
  name: TwoPositionSwitchName,
  scheme: Scheme,
  profile: ConsoleProfile,
): Position {
  const state = profile.switches[name];
  if (state.kind === 'fixed') return state.position;
  for (const { setBy, startsAs } of scheme.settings) {
    if (setBy.kind !== 'switch' || setBy.name !== name) continue;
    for (const [position, value] of setBy.values) if (value === startsAs) return position;
  }
  const [atRest] = SWITCHES[name].positions;
  if (atRest === undefined) throw new RangeError(`${name} has no positions`);
  return atRest.name;
}
