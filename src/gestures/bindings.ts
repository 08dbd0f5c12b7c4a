import type { Place } from '../findings/place.js';
import type { ConsoleProfile } from '../hardware/consoles.js';
import type { Direction } from '../hardware/controllers.js';
import { SWITCH_NAMES, type SwitchName } from '../hardware/switches.js';
import type {
  Action,
  BindingRow,
  Chord,
  Condition,
  ControlName,
  Effect,
  Fallback,
  Gesture,
  Mode,
  PlayerName,
  Scheme,
  SeatedPlayer,
  SeatsRow,
  Setting,
  Who,
} from '../language/model.js';
import { createMemory } from '../memory.js';
import type { Contact } from './contacts.js';
import { type ResolvedChord, resolveChord } from './resolve.js';

/**
 * What one player can do in a mode, in one seats row on one console: one alternative of a row, for one player,
 * in one direction. The gesture engine, conflicts, coverage and the hand-off all work on these.
 */
export interface Binding {
  readonly mode: Mode;
  /** What it was written as. */
  readonly origin: BindingOrigin;
  /** The words to point at: the row's action, or the fallback row. */
  readonly at: Place;
  /** From 0: rows of the mode's table in order, then fallback bindings in theirs. Effects apply in this order. */
  readonly order: number;
  /** From 0, among the alternatives of its row. */
  readonly alternative: number;
  readonly player: PlayerName | 'anyone';
  /** The action's name; `SETTING: next` for a fallback that steps a setting. */
  readonly actionName: string;
  /** Null for a fallback that steps a setting. */
  readonly action: Action | null;
  readonly direction: Direction | null;
  /** One contact, or those of a chord. */
  readonly parts: readonly Contact[];
  readonly gesture: Gesture;
  readonly conditions: readonly Condition[];
  readonly effects: readonly Effect[];
  readonly insteadOf: readonly Action[];
  readonly alongWith: readonly Action[];
}

export type BindingOrigin =
  | { readonly kind: 'row'; readonly row: BindingRow }
  /** `row` is the row that the fallback stands for; null where it steps a setting. */
  | { readonly kind: 'fallback'; readonly fallback: Fallback; readonly row: BindingRow | null };

/**
 * Every binding of a mode (game rows aside), fallback bindings in force on the console included. Made once for the
 * rows of a mode, a seats row and a kind of console: asked again, the same objects come back.
 */
export function bindingsOf(
  scheme: Scheme,
  mode: Mode,
  seats: SeatsRow,
  profile: ConsoleProfile,
): readonly Binding[] {
  return remembered([mode.rows, mode, seats, scheme.fallbacks, lackOf(profile)], () =>
    makeBindings(scheme, mode, seats, profile),
  );
}

const remembered = createMemory<readonly Binding[]>();

/** The switches that a console fixes or lacks, in words: all of it that bindings depend on. */
function lackOf(profile: ConsoleProfile): string {
  const known = lacks.get(profile);
  if (known !== undefined) return known;
  const lack = SWITCH_NAMES.map(name => {
    const state = profile.switches[name];
    return state.kind === 'fixed' ? state.position : state.kind === 'absent' ? 'absent' : '';
  }).join();
  lacks.set(profile, lack);
  return lack;
}

const lacks = new WeakMap<ConsoleProfile, string>();

function makeBindings(
  scheme: Scheme,
  mode: Mode,
  seats: SeatsRow,
  profile: ConsoleProfile,
): readonly Binding[] {
  const rows = mode.rows.flatMap(row => bindingsOfRow(row, seats, profile));
  const fallbacks = scheme.fallbacks
    .filter(fallback => isInForce(fallback, profile))
    .flatMap((fallback, index) => fallbackBindings(fallback, mode, seats, profile, mode.rows.length + index));
  return [...rows, ...fallbacks];
}

/** A fallback row is in force where the console fixes or lacks its switch. */
export function isInForce(fallback: Fallback, profile: ConsoleProfile): boolean {
  const { kind } = profile.switches[fallback.without];
  return kind === 'fixed' || kind === 'absent';
}

/** The bindings that a row makes, fallbacks aside; none where its player or its controls are not there. */
export function bindingsOfRow(row: BindingRow, seats: SeatsRow, profile: ConsoleProfile): readonly Binding[] {
  if (row.gesture === null) return [];
  const template: Template = {
    mode: row.mode,
    origin: { kind: 'row', row },
    at: row.at,
    order: row.index,
    actionName: row.action.name,
    action: row.action,
    gesture: row.gesture.value,
    ...linksOf(row),
  };
  return expand(row.who.value, row.alternatives, seats, profile).map(way => createBinding(template, way));
}

/** What all bindings of one written row have in common. */
type Template = Omit<Binding, keyof Way>;

/** Written out: thousands are made, and this is several times faster than a spread. */
const createBinding = (of: Template, way: Way): Binding => ({
  mode: of.mode,
  origin: of.origin,
  at: of.at,
  order: of.order,
  alternative: way.alternative,
  player: way.player,
  actionName: of.actionName,
  action: of.action,
  direction: way.direction,
  parts: way.parts,
  gesture: of.gesture,
  conditions: of.conditions,
  effects: of.effects,
  insteadOf: of.insteadOf,
  alongWith: of.alongWith,
});

const linksOf = (row: BindingRow) => ({
  conditions: row.conditions,
  effects: row.effects,
  insteadOf: row.insteadOf.map(({ value }) => value),
  alongWith: row.alongWith.map(({ value }) => value),
});

function fallbackBindings(
  fallback: Fallback,
  mode: Mode,
  seats: SeatsRow,
  profile: ConsoleProfile,
  order: number,
): readonly Binding[] {
  const { instead, subject } = fallback;
  if (instead.kind !== 'binding' || instead.mode !== mode) return [];
  const template = { mode, at: fallback.at, order, gesture: instead.gesture.value };
  if (subject.kind === 'setting') {
    const origin = { kind: 'fallback', fallback, row: null } as const;
    const stepping: Template = { ...template, origin, ...stepLinks(subject.setting, fallback) };
    return instead.alternatives.flatMap((chord, alternative) =>
      steppers(chord, seats)
        .flatMap(who => expand(who, [chord], seats, profile))
        .map(way => createBinding(stepping, { ...way, alternative })),
    );
  }
  return mode.rows
    .filter(row => row.action === subject.action && needsSwitch(row, fallback.without, profile))
    .flatMap(row => {
      const origin = { kind: 'fallback', fallback, row } as const;
      const { action } = row;
      const standing: Template = { ...template, origin, actionName: action.name, action, ...linksOf(row) };
      return expand(row.who.value, instead.alternatives, seats, profile).map(way =>
        createBinding(standing, way),
      );
    });
}

const stepLinks = (setting: Setting, fallback: Fallback) => ({
  actionName: `${setting.name}: next`,
  action: null,
  conditions: [],
  effects: [{ kind: 'step', setting, by: 1, at: fallback.at } as const],
  insteadOf: [],
  alongWith: [],
});

/** Who steps a setting with a fallback control: each player of the port it names, else anyone. */
function steppers(chord: Chord, { players }: SeatsRow): readonly Who[] {
  const named = chord.parts.find(
    (part): part is Extract<ControlName, { kind: 'control' }> =>
      part.kind === 'control' && part.port !== null,
  );
  if (named === undefined) return [{ kind: 'anyone' }];
  return players
    .filter(({ port, letter }) => port === named.port && (named.letter === '' || letter === named.letter))
    .map(({ name }) => ({ kind: 'player', player: name }));
}

/** True where no alternative of the row can be done on a console that fixes or lacks the switch. */
export function needsSwitch(row: BindingRow, name: SwitchName, profile: ConsoleProfile): boolean {
  if (row.gesture === null) return false;
  const state = profile.switches[name];
  const gesture = row.gesture.value;
  if (state.kind === 'fixed' && gesture.kind === 'at' && gesture.position === state.position) return false;
  return row.alternatives.every(chord =>
    chord.parts.some(part => part.kind === 'switch' && part.name === name),
  );
}

interface Way extends ResolvedChord {
  readonly player: PlayerName | 'anyone';
  readonly alternative: number;
}

/** Each way in which the alternatives can be done: by player, alternative and direction, in this order. */
function expand(
  who: Who,
  alternatives: readonly Chord[],
  seats: SeatsRow,
  profile: ConsoleProfile,
): readonly Way[] {
  const waysFor = (chord: Chord, alternative: number, player: SeatedPlayer | null, name: Way['player']) =>
    resolveChord(chord, seats, player, profile).map(({ parts, direction }) => ({
      parts,
      direction,
      player: name,
      alternative,
    }));
  switch (who.kind) {
    case 'game':
      return [];
    case 'anyone':
      return alternatives.flatMap((chord, alternative) =>
        chord.parts.some(isOwnControl)
          ? seats.players.flatMap(player => waysFor(chord, alternative, player, 'anyone'))
          : waysFor(chord, alternative, null, 'anyone'),
      );
    case 'each':
    case 'player':
      return seats.players
        .filter(player => who.kind === 'each' || player.name === who.player)
        .flatMap(player =>
          alternatives.flatMap((chord, alternative) => waysFor(chord, alternative, player, player.name)),
        );
    default:
      return who satisfies never;
  }
}

const isOwnControl = (part: ControlName): boolean => part.kind === 'control' && part.port === null;
