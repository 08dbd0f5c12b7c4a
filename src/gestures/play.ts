import type { TvStandard } from '../hardware/clocks.js';
import type { ConsoleProfile } from '../hardware/consoles.js';
import { PORTS } from '../hardware/ports.js';
import {
  isTwoPosition,
  type Position,
  SWITCH_NAMES,
  SWITCHES,
  type TwoPositionSwitchName,
} from '../hardware/switches.js';
import type { BindingRow, Effect, Mode, Scheme, SeatsRow, Setting } from '../language/model.js';
import { readsOf } from '../language/time.js';
import { type Binding, bindingsOf } from './bindings.js';
import { type Contact, contactType, controlContact, switchContact } from './contacts.js';
import {
  createEngine,
  type Engine,
  type EngineState,
  engineKey,
  enterEngine,
  startEngine,
  stepEngine,
} from './engine.js';
import { type SettingSource, settingSource, startPosition } from './settings.js';
import { doHold, type ValueIn, valueAfter, valueFrom } from './values.js';

/** What is played: one scheme, with these seats taken, on this console, on this TV standard. */
export interface PlayChoice {
  readonly scheme: Scheme;
  readonly seats: SeatsRow;
  readonly profile: ConsoleProfile;
  readonly standard: TvStandard;
}

/** A scheme made ready to be played. Built once; never changes. */
export interface Play extends PlayChoice {
  /** Everything that can be worked: the controls of both ports, then the panel switches the console has. */
  readonly contacts: readonly Contact[];
  /** By mode: its bindings (fallback bindings in force included) and their gestures. */
  readonly engines: ReadonlyMap<Mode, Engine>;
  readonly sources: ReadonlyMap<Setting, SettingSource>;
}

/** Where a play stands between two reads. Plain data, never changed in place; `playKey` makes a text of it. */
export interface PlayState {
  /** Reads done so far. */
  readonly read: number;
  readonly mode: Mode;
  /** Of every setting the game keeps. */
  readonly values: ReadonlyMap<Setting, string>;
  /** By contact of the play, as at the last read (before the first: as at power-on). See `Engine` for levels. */
  readonly levels: readonly number[];
  readonly engine: EngineState;
}

/** What is read at one read. */
export interface PlayInput {
  /** Ids of the momentary contacts that are engaged (`left stick up`, `RESET`); unknown ones count for nothing. */
  readonly engaged: ReadonlySet<string>;
  /** Switches that are in another position than before; one the console fixes stays where it is. */
  readonly positions?: Readonly<Partial<Record<TwoPositionSwitchName, Position>>>;
  /** Paddles and wheels by contact id, as whole numbers; one that is left out has not moved. */
  readonly turned?: Readonly<Record<string, number>>;
  /** `game` rows of the mode that the game itself does at this read; ignored where their `When` does not hold. */
  readonly game?: readonly BindingRow[];
}

/** One read of a play. */
export interface PlayStep {
  readonly state: PlayState;
  /** The mode in which it was read; `state.mode` is the one the next read is made in. */
  readonly mode: Mode;
  /** In the order of the rows. */
  readonly fired: readonly Binding[];
  /** The `game` rows that happened. */
  readonly game: readonly BindingRow[];
}

/** Makes a scheme ready to be played. Modes that do not list the seats row are left out: they can't be entered. */
export function createPlay(choice: PlayChoice): Play {
  const { scheme, seats, profile, standard } = choice;
  const contacts = contactsIn(seats, profile);
  const inReads = (time: Parameters<typeof readsOf>[0]) =>
    readsOf(time, standard, scheme.game.readEvery.value);
  const modes = scheme.modes.filter(mode => mode.seats.includes(seats) || mode === scheme.startMode);
  return {
    ...choice,
    contacts,
    engines: new Map(
      modes.map(mode => [mode, createEngine(bindingsOf(scheme, mode, seats, profile), inReads, contacts)]),
    ),
    sources: new Map(scheme.settings.map(setting => [setting, settingSource(setting, scheme, profile)])),
  };
}

/** Power-on: the start mode, every setting at `Starts as`, everything at rest. */
export function startPlay(play: Play): PlayState {
  return enterPlay(play, play.scheme.startMode, new Map());
}

/**
 * At rest in any mode with any values, as witnesses and vectors begin: before a first read.
 *
 * @param values of settings the game keeps; one that is missing starts as the scheme says
 * @param positions of two-position switches; one that is missing is where it is at power-on
 */
export function enterPlay(
  play: Play,
  mode: Mode,
  values: ReadonlyMap<Setting, string>,
  positions: Readonly<Partial<Record<TwoPositionSwitchName, Position>>> = {},
): PlayState {
  const kept = new Map<Setting, string>();
  for (const [setting, source] of play.sources)
    if (source.kind === 'game') kept.set(setting, values.get(setting) ?? source.startsAs);
  const levels = play.contacts.map(contact => startLevel(contact, play, positions));
  return { read: 0, mode, values: kept, levels, engine: startEngine(engineOf(play, mode)) };
}

/**
 * One read: what fires, and where it leads. Every `When` is judged on the values before the read (a switch's
 * setting on its position before it); effects are applied in the order of the rows, those of game rows in their
 * place among them; the first `go to` wins. A `go to` a mode that does not list the seats row is not taken.
 */
export function stepPlay(play: Play, state: PlayState, input: PlayInput): PlayStep {
  const engine = engineOf(play, state.mode);
  const levels = play.contacts.map((contact, index) =>
    levelOf(contact, input, state.levels[index] ?? 0, play),
  );
  const before = state.read === 0 ? levels : state.levels;
  const valueIn = valuesOf(play, state.values, before);
  const holds = engine.bindings.map(({ conditions }) => doHold(conditions, valueIn));
  const { state: stepped, fired } = stepEngine(engine, state.engine, levels, index => holds[index] === true);
  const firedBindings = fired.flatMap(index => engine.bindings[index] ?? []);
  const game = (input.game ?? []).filter(
    row => row.mode === state.mode && row.who.value.kind === 'game' && doHold(row.conditions, valueIn),
  );
  const effects = effectsInOrder(firedBindings, game);
  const target = effects.find(effect => effect.kind === 'go to' && play.engines.has(effect.mode));
  const mode = target?.kind === 'go to' ? target.mode : state.mode;
  return {
    mode: state.mode,
    fired: firedBindings,
    game,
    state: {
      read: state.read + 1,
      mode,
      values: applyEffects(state.values, effects),
      levels,
      engine: target === undefined ? stepped : enterEngine(engineOf(play, mode), levels),
    },
  };
}

/** The value of every setting before the next read, as a `When` sees it. */
export function valuesIn(play: Play, state: PlayState): ReadonlyMap<Setting, string> {
  const valueIn = valuesOf(play, state.values, state.levels);
  return new Map(play.scheme.settings.map(setting => [setting, valueIn(setting) ?? setting.startsAs]));
}

/** A text that is the same for two states of a play exactly if it goes on the same from both. */
export function playKey(play: Play, state: PlayState): string {
  const values = play.scheme.settings.map(setting => state.values.get(setting) ?? '');
  const first = state.read === 0 ? 'first' : '';
  return JSON.stringify([
    play.scheme.modes.indexOf(state.mode),
    values,
    first,
    state.levels,
    engineKey(state.engine),
  ]);
}

function engineOf(play: Play, mode: Mode): Engine {
  const engine = play.engines.get(mode);
  if (engine === undefined) throw new RangeError(`${mode.name} is not played with ${play.seats.name}`);
  return engine;
}

function contactsIn(seats: SeatsRow, profile: ConsoleProfile): readonly Contact[] {
  const controls = PORTS.flatMap(port => {
    const controller = seats[port];
    return controller === null
      ? []
      : controller.controls.map(control => controlContact(port, controller, control));
  });
  const switches = SWITCH_NAMES.filter(name => profile.switches[name].kind !== 'absent');
  return [...controls, ...switches.map(switchContact)];
}

function startLevel(
  contact: Contact,
  { scheme, profile }: Play,
  positions: Readonly<Partial<Record<TwoPositionSwitchName, Position>>>,
): number {
  if (contact.kind !== 'switch' || !isTwoPosition(contact.name)) return 0;
  const fixed = profile.switches[contact.name].kind === 'fixed';
  const chosen = fixed ? undefined : positions[contact.name];
  return positionIndex(contact.name, chosen ?? startPosition(contact.name, scheme, profile));
}

const positionIndex = (name: TwoPositionSwitchName, position: Position): number =>
  Math.max(
    SWITCHES[name].positions.findIndex(candidate => candidate.name === position),
    0,
  );

/** What is read of a contact: a switch or a knob that the input does not name stays as it was. */
function levelOf(contact: Contact, input: PlayInput, before: number, { profile }: Play): number {
  if (contactType(contact) === 'momentary') return input.engaged.has(contact.id) ? 1 : 0;
  if (contact.kind === 'control') return input.turned?.[contact.id] ?? before;
  if (!isTwoPosition(contact.name) || profile.switches[contact.name].kind === 'fixed') return before;
  const moved = input.positions?.[contact.name];
  return moved === undefined ? before : positionIndex(contact.name, moved);
}

function valuesOf(play: Play, kept: ReadonlyMap<Setting, string>, levels: readonly number[]): ValueIn {
  const positionOf = (name: TwoPositionSwitchName): Position | undefined => {
    const index = play.contacts.findIndex(({ id }) => id === name);
    return SWITCHES[name].positions[levels[index] ?? 0]?.name;
  };
  return setting => {
    const source = play.sources.get(setting);
    return source === undefined ? undefined : valueFrom(source, kept.get(setting), positionOf);
  };
}

/** Effects of what fired, in the order of the rows. */
function effectsInOrder(fired: readonly Binding[], game: readonly BindingRow[]): readonly Effect[] {
  const all = [
    ...fired.map(({ order, effects }) => ({ order, effects })),
    ...game.map(({ index, effects }) => ({ order: index, effects })),
  ];
  return all.toSorted((a, b) => a.order - b.order).flatMap(({ effects }) => effects);
}

function applyEffects(
  values: ReadonlyMap<Setting, string>,
  effects: readonly Effect[],
): ReadonlyMap<Setting, string> {
  const after = new Map(values);
  for (const effect of effects) {
    if (effect.kind === 'go to') continue;
    const value = after.get(effect.setting);
    if (value !== undefined) after.set(effect.setting, valueAfter(effect, effect.setting, value));
  }
  return after;
}
