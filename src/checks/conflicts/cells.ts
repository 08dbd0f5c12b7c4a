import { isImpossible } from '../../gestures/automaton.js';
import { type Binding, bindingsOf } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import { fitsParts } from '../../gestures/fit.js';
import { holdBacksOf } from '../../gestures/hold-backs.js';
import { type SettingSource, settingSource } from '../../gestures/settings.js';
import type { TvStandard } from '../../hardware/clocks.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import { SWITCH_NAMES, type SwitchName } from '../../hardware/switches.js';
import type { Mode, Scheme, SeatsRow, Setting, Time } from '../../language/model.js';
import { readsOf } from '../../language/time.js';

/** A mode as it is played in one seats row, on the consoles on which it is the same. */
export interface Cell {
  readonly scheme: Scheme;
  readonly mode: Mode;
  readonly seats: SeatsRow;
  /** At least one; the first stands for all. */
  readonly profiles: readonly [ConsoleProfile, ...ConsoleProfile[]];
  readonly bindings: readonly Binding[];
  /** By binding that is held back: what holds it back. */
  readonly holders: ReadonlyMap<Binding, readonly Holder[]>;
  readonly sourceOf: (setting: Setting) => SettingSource;
  /** By contact id, what it is never engaged together with. */
  readonly opposites: ReadonlyMap<string, string>;
}

/** A live binding that holds another back until some lines have been let go. */
export interface Holder {
  readonly binding: Binding;
  readonly until: readonly string[];
}

/** Longer times (and only those) do not fit a byte: they have a rule of their own and are not searched. */
export const MOST_READS = 255;

/** All cells of a mode, in the scheme’s order of seats and consoles. */
export function cellsOf(scheme: Scheme, mode: Mode): readonly Cell[] {
  const groups = groupProfiles(scheme, [mode]);
  return mode.seats.flatMap(seats => groups.map(profiles => createCell(scheme, mode, seats, profiles)));
}

export function createCell(scheme: Scheme, mode: Mode, seats: SeatsRow, profiles: Cell['profiles']): Cell {
  const [profile] = profiles;
  const bindings = bindingsOf(scheme, mode, seats, profile);
  const sources = new Map<Setting, SettingSource>();
  return {
    scheme,
    mode,
    seats,
    profiles,
    bindings,
    holders: holdersOf(bindings),
    opposites: oppositesOf(seats),
    sourceOf: setting => {
      const source = sources.get(setting) ?? settingSource(setting, scheme, profile);
      sources.set(setting, source);
      return source;
    },
  };
}

function holdersOf(bindings: readonly Binding[]): ReadonlyMap<Binding, readonly Holder[]> {
  const holders = new Map<Binding, Holder[]>();
  for (const { holder, held, until } of holdBacksOf(bindings)) {
    const [binding, target] = [bindings[holder], bindings[held]];
    if (binding === undefined || target === undefined) continue;
    holders.set(target, [...(holders.get(target) ?? []), { binding, until }]);
  }
  return holders;
}

/** The consoles of a scheme, those together on which some modes have the same bindings and settings. */
export function groupProfiles(scheme: Scheme, modes: readonly Mode[]): readonly Cell['profiles'][] {
  const switches = switchesThatMatter(scheme, modes);
  const groups = new Map<string, [ConsoleProfile, ...ConsoleProfile[]]>();
  for (const profile of scheme.consoles) {
    const key = switches.map(name => stateKey(profile, name)).join();
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [profile]);
    else group.push(profile);
  }
  return [...groups.values()];
}

/** `front` and `rear` are the same to a gesture. */
function stateKey(profile: ConsoleProfile, name: SwitchName): string {
  const state = profile.switches[name];
  return state.kind === 'fixed' ? state.position : state.kind === 'absent' ? 'absent' : 'there';
}

/** Switches that a row of the modes is on, that give a setting its `When` names, or whose lack brings a fallback. */
function switchesThatMatter(scheme: Scheme, modes: readonly Mode[]): readonly SwitchName[] {
  const rows = modes.flatMap(mode => mode.rows);
  const controls = rows.flatMap(({ alternatives }) => alternatives.flatMap(({ parts }) => parts));
  const settings = new Set<Setting>(
    rows.flatMap(({ conditions, effects }) => [
      ...conditions.map(({ setting }) => setting),
      ...effects.flatMap(effect => (effect.kind === 'go to' ? [] : [effect.setting])),
    ]),
  );
  const fallbacks = scheme.fallbacks.filter(
    ({ subject, instead }) =>
      (instead.kind === 'binding' && modes.includes(instead.mode)) ||
      (subject.kind === 'setting' && settings.has(subject.setting)),
  );
  const found = new Set<SwitchName>([
    ...controls.flatMap(part => (part.kind === 'switch' ? [part.name] : [])),
    ...[...settings].flatMap(({ setBy }) => (setBy.kind === 'switch' ? [setBy.name] : [])),
    ...fallbacks.map(({ without }) => without),
  ]);
  return SWITCH_NAMES.filter(name => found.has(name));
}

/** By contact id: the one direction it excludes. */
function oppositesOf(seats: SeatsRow): ReadonlyMap<string, string> {
  return new Map(
    (['left', 'right'] as const).flatMap(port =>
      (seats[port]?.opposites ?? []).flatMap(([a, b]) => [
        [`${port} ${a}`, `${port} ${b}`] as const,
        [`${port} ${b}`, `${port} ${a}`] as const,
      ]),
    ),
  );
}

/** A cell on one TV standard: times are reads, and what can't fire is told apart. */
export interface TimedCell {
  readonly cell: Cell;
  readonly standard: TvStandard;
  readonly readsOf: (time: Time) => number;
}

export function timeCell(cell: Cell, standard: TvStandard): TimedCell {
  const every = cell.scheme.game.readEvery.value;
  return { cell, standard, readsOf: time => cachedReads(time, standard, every) };
}

const CACHES = new Map<string, WeakMap<Time, number>>();

/** Times are worked out once: exact fractions are slow. */
function cachedReads(time: Time, standard: TvStandard, every: number): number {
  const key = `${standard.name} ${every}`;
  const cache = CACHES.get(key) ?? new WeakMap<Time, number>();
  CACHES.set(key, cache);
  const reads = cache.get(time) ?? readsOf(time, standard, every);
  cache.set(time, reads);
  return reads;
}

/** The reads of a binding’s gesture; 1 where it has no time. */
export function gestureReads({ gesture }: Binding, { readsOf: inReads }: TimedCell): number {
  return 'time' in gesture ? inReads(gesture.time) : 1;
}

/** Whether a binding takes part in conflicts at all: its gesture fits its control, is possible and fits a byte. */
export function takesPart(binding: Binding, timed: TimedCell): boolean {
  const reads = gestureReads(binding, timed);
  const isPossible = !isImpossible({ kind: binding.gesture.kind, reads });
  return isPossible && reads <= MOST_READS && fitsParts(binding.gesture, binding.parts);
}

/** True where two contacts of a control are never engaged together (a rule of its own: `impossible-chord`). */
export function hasOpposites(parts: readonly Contact[], { opposites }: Cell): boolean {
  return parts.some(({ id }) => {
    const other = opposites.get(id);
    return other !== undefined && parts.some(part => part.id === other);
  });
}
