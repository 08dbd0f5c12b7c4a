import { settingSource, startPosition } from '../../gestures/settings.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import {
  isTwoPosition,
  type Position,
  SWITCH_NAMES,
  SWITCHES,
  type TwoPositionSwitchName,
} from '../../hardware/switches.js';
import type { Scheme, Setting } from '../../language/model.js';

/** What a state holds besides the mode: the settings the game keeps, then the switches that can be moved. */
export interface Space {
  readonly variables: readonly Variable[];
  /** Value number of each variable at power-on. */
  readonly start: readonly number[];
  /** How each setting's value is read from a state. */
  readonly readings: ReadonlyMap<Setting, Reading>;
  readonly switches: ReadonlyMap<TwoPositionSwitchName, number>;
}

export type Variable =
  | { readonly kind: 'setting'; readonly setting: Setting; readonly size: number }
  | {
      readonly kind: 'switch';
      readonly name: TwoPositionSwitchName;
      readonly positions: readonly Position[];
      readonly size: number;
    };

export type Reading =
  | { readonly kind: 'constant'; readonly value: string }
  /** `values[n]` is the setting's value where the variable has value number n. */
  | { readonly kind: 'variable'; readonly variable: number; readonly values: readonly string[] };

export function createSpace(scheme: Scheme, profile: ConsoleProfile): Space {
  const variables: Variable[] = [];
  const start: number[] = [];
  const readings = new Map<Setting, Reading>();
  const switches = new Map<TwoPositionSwitchName, number>();
  for (const setting of scheme.settings) {
    const source = settingSource(setting, scheme, profile);
    if (source.kind === 'constant') readings.set(setting, source);
    if (source.kind !== 'game') continue;
    readings.set(setting, { kind: 'variable', variable: variables.length, values: setting.values });
    variables.push({ kind: 'setting', setting, size: setting.values.length });
    start.push(Math.max(0, setting.values.indexOf(source.startsAs)));
  }
  for (const name of SWITCH_NAMES) {
    if (!isTwoPosition(name) || profile.switches[name].kind === 'fixed') continue;
    const positions = SWITCHES[name].positions.map(position => position.name);
    switches.set(name, variables.length);
    variables.push({ kind: 'switch', name, positions, size: positions.length });
    start.push(positions.indexOf(startPosition(name, scheme, profile)));
  }
  for (const setting of scheme.settings) {
    const source = settingSource(setting, scheme, profile);
    if (source.kind !== 'switch') continue;
    const variable = switches.get(source.name);
    if (variable === undefined) continue;
    const values = SWITCHES[source.name].positions.map(({ name }) => source.values.get(name) ?? '');
    readings.set(setting, { kind: 'variable', variable, values });
  }
  return { variables, start, readings, switches };
}

/** For each concerned variable, which of its values will do; null where no state will. */
export type Guard = ReadonlyMap<number, readonly boolean[]>;

/** Keeps only values for which `fits` holds; false where none is left. */
function narrow(guard: Map<number, readonly boolean[]>, variable: number, fits: readonly boolean[]): boolean {
  const before = guard.get(variable);
  const after = before === undefined ? fits : fits.map((fit, value) => fit && before[value] === true);
  guard.set(variable, after);
  return after.includes(true);
}

export interface Demand {
  readonly setting: Setting;
  readonly is: boolean;
  readonly value: string;
}

/** The states in which all demands on settings hold. */
export function guardOf(demands: Iterable<Demand>, space: Space): Guard | null {
  const guard = new Map<number, readonly boolean[]>();
  for (const { setting, is, value } of demands) {
    const reading = space.readings.get(setting);
    if (reading === undefined) return null;
    if (reading.kind === 'constant') {
      if ((reading.value === value) !== is) return null;
      continue;
    }
    const fits = reading.values.map(each => (each === value) === is);
    if (!narrow(guard, reading.variable, fits)) return null;
  }
  return withoutFull(guard);
}

/** Adds that a switch is in a position; for a fixed switch that has been looked at before. */
export function guardSwitch(
  guard: Guard,
  name: TwoPositionSwitchName,
  position: Position,
  is: boolean,
  space: Space,
): Guard | null {
  const variable = space.switches.get(name);
  if (variable === undefined) return guard;
  const narrowed = new Map(guard);
  const fits = SWITCHES[name].positions.map(each => (each.name === position) === is);
  return narrow(narrowed, variable, fits) ? withoutFull(narrowed) : null;
}

function withoutFull(guard: Map<number, readonly boolean[]>): Guard {
  for (const [variable, fits] of guard) if (!fits.includes(false)) guard.delete(variable);
  return guard;
}
