import type { Mode, Scheme, SeatsRow, Setting } from '../../src/language/model.js';
import {
  type Console,
  fixedAt,
  isGone,
  type Standard,
  type State,
  TWO_POSITION,
  type Way,
  waysOf,
} from './plain-ways.js';

/** The second opinion on coverage, part 2: a breadth-first search over explicit states. */

/** The fallback row of a setting that counts on a console. */
export const fallbackFor = (scheme: Scheme, setting: Setting, profile: Console) =>
  scheme.fallbacks.find(
    row => row.subject.kind === 'setting' && row.subject.setting === setting && isGone(profile, row.without),
  );

export function keptByGame(scheme: Scheme, setting: Setting, profile: Console): string | null {
  const fallback = fallbackFor(scheme, setting, profile);
  if (fallback?.instead.kind === 'stays') return null;
  if (setting.setBy.kind === 'game') return setting.startsAs;
  const fixed = fixedAt(profile, setting.setBy.name);
  if (fixed === null || fallback === undefined) return null;
  return [...setting.setBy.values].find(([position]) => position === fixed)?.[1] ?? null;
}

export function valueIn(scheme: Scheme, setting: Setting, profile: Console, state: State): string {
  const fallback = fallbackFor(scheme, setting, profile);
  if (fallback?.instead.kind === 'stays') return fallback.instead.value;
  const kept = state.values.get(setting);
  if (kept !== undefined) return kept;
  if (setting.setBy.kind === 'game') return setting.startsAs;
  const { name, values } = setting.setBy;
  const position = fixedAt(profile, name) ?? state.switches.get(name);
  return [...values].find(([each]) => each === position)?.[1] ?? '';
}

export function powerOn(scheme: Scheme, profile: Console): State {
  const values = new Map<Setting, string>();
  const switches = new Map<string, string>();
  for (const setting of scheme.settings) {
    const kept = keptByGame(scheme, setting, profile);
    if (kept !== null) values.set(setting, kept);
  }
  for (const [name, positions] of Object.entries(TWO_POSITION)) {
    if (fixedAt(profile, name) !== null) continue;
    const setting = scheme.settings.find(({ setBy }) => setBy.kind === 'switch' && setBy.name === name);
    const asked =
      setting?.setBy.kind === 'switch'
        ? [...setting.setBy.values].find(([, value]) => value === setting.startsAs)?.[0]
        : undefined;
    switches.set(name, asked ?? positions[0]);
  }
  return { mode: scheme.startMode, values, switches };
}

export const keyOf = ({ mode, values, switches }: State) =>
  [mode.name, ...[...values].map(([{ name }, value]) => `${name}=${value}`), ...[...switches].flat()].join(
    '|',
  );

export function canDo(way: Way, scheme: Scheme, profile: Console, state: State): boolean {
  if (way.mode !== state.mode) return false;
  if (
    !way.when.every(({ setting, is, value }) => (valueIn(scheme, setting, profile, state) === value) === is)
  )
    return false;
  const { gesture } = way;
  const position = state.switches.get(way.parts[0] ?? '') ?? fixedAt(profile, way.parts[0] ?? '');
  if (gesture?.kind === 'at') return position === gesture.position;
  if (gesture?.kind === 'flip to') return position !== gesture.position;
  return true;
}

export const moved = (state: State, name: string): State => {
  const other = (TWO_POSITION[name] ?? []).find(position => position !== state.switches.get(name)) ?? '';
  return { ...state, switches: new Map(state.switches).set(name, other) };
};

/** Where a way leads; null where it is to a mode that these seats are not for. */
export function after(way: Way, seats: SeatsRow, state: State): State | null {
  let next: State = { ...state, values: new Map(state.values) };
  if (way.gesture?.kind === 'flip' || way.gesture?.kind === 'flip to') next = moved(next, way.parts[0] ?? '');
  let hasGone = false;
  for (const effect of way.effects) {
    if (effect.kind === 'go to') {
      if (!hasGone) next.mode = effect.mode;
      hasGone = true;
      continue;
    }
    const { setting } = effect;
    const value = next.values.get(setting);
    if (value === undefined) continue;
    const count = setting.values.length;
    const stepped =
      effect.kind === 'set'
        ? effect.value
        : setting.values[(setting.values.indexOf(value) + effect.by + count) % count];
    next.values.set(setting, stepped ?? value);
  }
  return next.mode.seats.includes(seats) ? next : null;
}

/** What is known of one console, seats row and standard. */
export interface Known {
  profile: Console;
  seats: SeatsRow;
  standard: Standard;
  ways: Map<Mode, Way[]>;
  /** Every reachable state with its distance and the states one step on. */
  states: Map<string, { state: State; distance: number; next: string[] }>;
  /** What can be done in some reachable state. */
  usable: Set<Way>;
  /** The values that settings have in some reachable state. */
  values: Map<Setting, Set<string>>;
}

export function explore(scheme: Scheme, profile: Console, seats: SeatsRow, standard: Standard): Known {
  const modes = scheme.modes.filter(mode => mode.seats.includes(seats));
  const place = { profile, seats, standard, every: scheme.game.readEvery.value };
  const ways = new Map(modes.map(mode => [mode, waysOf(scheme, mode, place)]));
  const states: Known['states'] = new Map();
  const first = powerOn(scheme, profile);
  const usable = new Set<Way>();
  const values = new Map(scheme.settings.map(setting => [setting, new Set<string>()]));
  if (!first.mode.seats.includes(seats)) return { profile, seats, standard, ways, states, usable, values };
  states.set(keyOf(first), { state: first, distance: 0, next: [] });
  for (const entry of states.values()) {
    const { state, distance } = entry;
    const followers = [...state.switches.keys()].map(name => moved(state, name));
    for (const way of ways.get(state.mode) ?? []) {
      if (!canDo(way, scheme, profile, state)) continue;
      usable.add(way);
      const follower = after(way, seats, state);
      if (follower !== null) followers.push(follower);
    }
    for (const [setting, seen] of values) seen.add(valueIn(scheme, setting, profile, state));
    for (const follower of followers) {
      const key = keyOf(follower);
      entry.next.push(key);
      if (!states.has(key)) states.set(key, { state: follower, distance: distance + 1, next: [] });
    }
  }
  return { profile, seats, standard, ways, states, usable, values };
}

/** Keys of the states from which a state that `isGoal` can be reached, itself included. */
export function leadingTo({ states }: Known, isGoal: (state: State) => boolean): Set<string> {
  const good = new Set([...states].filter(([, { state }]) => isGoal(state)).map(([key]) => key));
  for (let size = -1; size !== good.size; ) {
    size = good.size;
    for (const [key, { next }] of states) if (next.some(each => good.has(each))) good.add(key);
  }
  return good;
}

export function distanceTo({ states }: Known, isGoal: (state: State) => boolean): number {
  for (const { state, distance } of states.values()) if (isGoal(state)) return distance;
  return -1;
}

export const isReached = ({ states }: Known, mode: Mode) =>
  [...states.values()].some(({ state }) => state.mode === mode);
