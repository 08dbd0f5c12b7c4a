import { type Contact, contactType } from '../../src/gestures/contacts.js';
import {
  createPlay,
  enterPlay,
  type PlayInput,
  type PlayState,
  startPlay,
  stepPlay,
  valuesIn,
} from '../../src/gestures/play.js';
import { type Handoff, routineOf } from '../../src/handoff/model.js';
import { outputKey } from '../../src/handoff/outputs.js';
import {
  INPUT_REGISTERS,
  type ReadValues,
  type RegisterValues,
  registersOf,
} from '../../src/handoff/registers.js';
import type { UnitRoutine } from '../../src/handoff/routine/routine.js';
import { numberOfValue } from '../../src/handoff/units.js';
import type { TvStandard } from '../../src/hardware/clocks.js';
import type { ConsoleProfile } from '../../src/hardware/consoles.js';
import { REGISTERS } from '../../src/hardware/registers.js';
import { type Position, SWITCHES, type TwoPositionSwitchName } from '../../src/hardware/switches.js';
import type { Mode, Scheme, SeatsRow, Setting } from '../../src/language/model.js';
import type { Random } from '../support/random.js';
import type { Call } from '../support/sim65.js';

/** A call of the routine, and what it must leave in its fired bytes (null where that does not matter). */
export interface Expected extends Call {
  readonly fired: readonly number[] | null;
  /** `HARBOUR_DUET`: whose read it is; null for other calls. */
  readonly routine: UnitRoutine | null;
  /** Steps of a keypad scan belong to the read behind them. */
  readonly isScan: boolean;
  readonly words: string;
}

export interface SessionChoice {
  readonly handoff: Handoff;
  readonly seats: SeatsRow;
  readonly profile: ConsoleProfile;
  readonly standard: TvStandard;
  readonly labels: ReadonlyMap<string, number>;
  /** First byte of the routine's RAM. */
  readonly ram: number;
}

/** Where a session begins: at power-on, or at rest in some mode with some settings. */
export interface Beginning {
  readonly mode: Mode;
  readonly values: ReadonlyMap<Setting, string>;
}

/** What the hands do: gives the levels of the next read. */
export type Hands = (levels: readonly number[], state: PlayState) => readonly number[];

/** Plays reads with the gesture engine and writes down the calls that must do the same. */
export function recordSession(
  choice: SessionChoice,
  hands: Hands,
  reads: number,
  random: Random,
  beginning: Beginning | null = null,
): readonly Expected[] {
  const { handoff, seats, profile, standard } = choice;
  const { scheme } = handoff;
  const play = createPlay({ scheme, seats, profile, standard });
  let state = beginning === null ? startPlay(play) : enterPlay(play, beginning.mode, beginning.values);
  const calls: Expected[] = [];
  for (let read = 0; read < reads; read++) {
    const levels = hands(state.levels, state);
    const routine = routineOf(handoff, state.mode, seats, profile.name);
    const values = registersOf(play.contacts, levels);
    const settings = valuesIn(play, state);
    const game = scheme.modes.flatMap(mode => (mode === state.mode && random.chance(0.02) ? mode.rows : []));
    const input = inputOf(
      play.contacts,
      levels,
      game.filter(row => row.who.value.kind === 'game'),
    );
    if (read === 0)
      calls.push(...beginCalls(choice, routine, play.contacts, levels, settings, random, beginning));
    const step = stepPlay(play, state, input);
    calls.push(
      ...readCalls(
        choice,
        routine,
        values,
        settings,
        random,
        firedBytes(handoff, state.mode, step.fired),
        `read ${read}: ${step.fired.map(binding => binding.actionName).join(', ')}`,
      ),
    );
    const entered = [...step.fired, ...step.game].some(({ effects }) =>
      effects.some(effect => effect.kind === 'go to' && play.engines.has(effect.mode)),
    );
    state = step.state;
    if (entered) {
      const next = routineOf(handoff, state.mode, seats, profile.name);
      calls.push(callOf(choice, next.enter.label, values, settings, random, values.values));
    }
  }
  return calls;
}

/** At power-on START, else a read with everything let go and every position as at the first read, then ENTER. */
function beginCalls(
  choice: SessionChoice,
  routine: UnitRoutine,
  contacts: ReturnType<typeof createPlay>['contacts'],
  levels: readonly number[],
  settings: ReturnType<typeof valuesIn>,
  random: Random,
  beginning: Beginning | null,
): readonly Expected[] {
  if (beginning === null && routine.start !== null) {
    const values = registersOf(contacts, levels);
    return [callOf(choice, routine.start.label, values, settings, random, values.values)];
  }
  const atRest = contacts.map((contact, index) =>
    contactType(contact) === 'momentary' ? 0 : (levels[index] ?? 0),
  );
  const values = registersOf(contacts, atRest);
  const read = readCalls(choice, routine, values, settings, random, [], 'at rest');
  return [
    ...read.map(call => ({ ...call, fired: null })),
    callOf(choice, routine.enter.label, values, settings, random, values.values),
  ];
}

function inputOf(
  contacts: ReturnType<typeof createPlay>['contacts'],
  levels: readonly number[],
  game: PlayInput['game'],
): PlayInput {
  const engaged = new Set<string>();
  const positions: Partial<Record<TwoPositionSwitchName, Position>> = {};
  const turned: Record<string, number> = {};
  contacts.forEach((contact, index) => {
    const level = levels[index] ?? 0;
    const type = contactType(contact);
    if (type === 'momentary' && level === 1) engaged.add(contact.id);
    if (type === 'turning') turned[contact.id] = level;
    if (type === 'two-position' && contact.kind === 'switch') {
      const position = SWITCHES[contact.name].positions[level]?.name;
      if (position !== undefined) positions[contact.name as TwoPositionSwitchName] = position;
    }
  });
  return { engaged, positions, turned, ...(game === undefined ? {} : { game }) };
}

function firedBytes(
  { outputs }: Handoff,
  mode: Mode,
  fired: readonly Parameters<typeof outputKey>[0][],
): readonly number[] {
  const bytes: number[] = [];
  for (const binding of fired) {
    const output = outputs.get(mode)?.get(outputKey(binding));
    if (output === undefined) throw new RangeError(`${binding.actionName} has no bit`);
    bytes[output.byte] = (bytes[output.byte] ?? 0) | (1 << output.bit);
  }
  return bytes;
}

function readCalls(
  choice: SessionChoice,
  routine: UnitRoutine,
  values: ReadValues,
  settings: ReturnType<typeof valuesIn>,
  random: Random,
  fired: readonly number[],
  words: string,
): readonly Expected[] {
  const rows = rowsOf(routine);
  const scan = routine.scan.map((piece, index) => {
    const before = rows[index - 1];
    const registers = before === undefined ? values.values : (values.rows.get(before) ?? values.values);
    return { ...callOf(choice, piece.label, values, settings, random, registers), routine, isScan: true };
  });
  const last = rows.at(-1);
  const registers = last === undefined ? values.values : (values.rows.get(last) ?? values.values);
  const outputs = choice.handoff.outputs.get(routine.unit.mode)?.values() ?? [];
  const count = Math.max(-1, ...[...outputs].map(({ byte }) => byte)) + 1;
  const all = Array.from({ length: count }, (_, byte) => fired[byte] ?? 0);
  const read = callOf(choice, routine.read.label, values, settings, random, registers);
  const pokes = [...read.pokes, ...(count === 0 ? [] : [staleByte(choice, count, random)])];
  return [...scan, { ...read, pokes, fired: all, routine, words }];
}

/** A fired byte holds anything before a read: another seats row's or mode's, or what power-on left there. */
function staleByte({ ram }: SessionChoice, count: number, random: Random): [number, number] {
  return [ram + random.below(count), random.below(256)];
}

function rowsOf({ plan }: UnitRoutine): readonly number[] {
  const rows = plan.map.banks.flatMap(({ lines }) =>
    lines.flatMap(({ wire }) => (wire.kind === 'matrix' ? [wire.row] : [])),
  );
  return [...new Set(rows)].sort((a, b) => a - b);
}

/** Bits that nothing drives read as nothing in particular. */
const NOISE: Readonly<Partial<Record<string, number>>> = { SWCHB: 0x34 };

function callOf(
  { handoff, labels, ram }: SessionChoice,
  label: string,
  values: ReadValues,
  settings: ReturnType<typeof valuesIn>,
  random: Random,
  registers: RegisterValues,
): Expected {
  const address = labels.get(label);
  if (address === undefined) throw new RangeError(`${label} is not in the program`);
  const pokes: [number, number][] = INPUT_REGISTERS.map(symbol => {
    const noise = symbol.startsWith('INPT') ? 0x7f : (NOISE[symbol] ?? 0);
    const mixed = (registers[symbol] & ~noise) | (random.below(256) & noise);
    return [REGISTERS[symbol].address, mixed];
  });
  for (const cell of handoff.ram.shared) {
    const setting = handoff.scheme.settings.find(each => handoff.names.setting(each) === cell.symbol);
    if (setting !== undefined)
      pokes.push([ram + cell.offset, Math.max(0, numberOfValue(setting, settings.get(setting) ?? ''))]);
    for (const [id, position] of values.paddles) {
      const symbol = `${handoff.names.prefix}POSITION_${handoff.names.contact({ id })}`;
      if (symbol === cell.symbol) pokes.push([ram + cell.offset, position & 0xff]);
    }
  }
  return { address, pokes, fired: null, routine: null, isScan: false, words: label };
}

/** Any control may do anything at any read: more than hands can. */
export function wildHands(
  scheme: Scheme,
  choice: Pick<SessionChoice, 'seats' | 'profile' | 'standard'>,
  random: Random,
): Hands {
  const { contacts } = createPlay({ scheme, ...choice });
  const isFixed = (contact: Contact) =>
    contact.kind === 'switch' && choice.profile.switches[contact.name].kind === 'fixed';
  const next = (contact: Contact, level: number): number => {
    if (isFixed(contact)) return level;
    const type = contactType(contact);
    if (type === 'turning') return random.chance(0.3) ? turnOnce(contact, level, random) : level;
    return random.chance(MOVES[type][level === 1 ? 1 : 0]) ? 1 - level : level;
  };
  return levels => contacts.map((contact, index) => next(contact, levels[index] ?? 0));
}

/** Chance of being moved at a read: from level 0, from level 1. */
const MOVES = { momentary: [0.12, 0.2], 'two-position': [0.1, 0.1] } as const;

function turnOnce(contact: Parameters<typeof contactType>[0], level: number, random: Random): number {
  const isWheel = contact.kind === 'control' && contact.control.wiring.kind === 'gray';
  return isWheel ? level + random.pick([1, -1]) : random.below(256);
}

/**
 * Calls that drive one unit's routine to its longest ways: settings stay as thrown, and again and again as many
 * gestures as the lines allow come due at one read.
 */
export function busyCalls(
  choice: SessionChoice,
  mode: Mode,
  random: Random,
  rounds: number,
): readonly Expected[] {
  const { handoff, seats, profile, standard } = choice;
  const { scheme } = handoff;
  const play = createPlay({ scheme, seats, profile, standard });
  const routine = routineOf(handoff, mode, seats, profile.name);
  const settings = new Map(scheme.settings.map(setting => [setting, random.pick(setting.values)]));
  const wild = wildHands(scheme, choice, random);
  const start = startPlay(play);
  let levels: readonly number[] = play.contacts.map(contact =>
    contactType(contact) === 'momentary' ? 0 : random.below(2),
  );
  const calls: Expected[] = [
    ...beginCalls(choice, routine, play.contacts, levels, settings, random, { mode, values: settings }),
  ];
  for (let round = 0; round < rounds; round++) {
    for (const engaged of busyRound(play, mode, random)) {
      const others = wild(levels, start);
      levels = play.contacts.map((contact, index) =>
        contactType(contact) === 'momentary' ? (engaged[index] ?? 0) : (others[index] ?? 0),
      );
      const values = registersOf(play.contacts, levels);
      const read = readCalls(choice, routine, values, settings, random, [], 'busy');
      calls.push(...read.map(call => ({ ...call, fired: null })));
    }
  }
  return calls;
}

/** Each gesture, in thrown order, takes the lines that are still free and comes due at the last read but one. */
function busyRound(
  play: ReturnType<typeof createPlay>,
  mode: Mode,
  random: Random,
): readonly (readonly number[])[] {
  const patterns = new Map<number, readonly number[]>();
  for (const gesture of random.shuffled(play.engines.get(mode)?.gestures ?? [])) {
    const pattern = patternOf(gesture.kind, gesture.reads, random);
    for (const part of gesture.parts) if (!patterns.has(part)) patterns.set(part, pattern);
  }
  const length = Math.max(1, ...[...patterns.values()].map(pattern => pattern.length)) + 1;
  return Array.from({ length: length + 1 }, (_, read) =>
    play.contacts.map((_contact, index) => {
      const pattern = patterns.get(index) ?? [];
      return (
        pattern[read - (length - pattern.length)] ??
        (read === length && random.chance(0.5) ? (pattern.at(-1) ?? 0) : 0)
      );
    }),
  );
}

const engagedFor = (reads: number): readonly number[] => Array.from({ length: reads }, () => 1);

/** Levels of a control by which its gesture fires, read by read. */
function patternOf(kind: string, reads: number, random: Random): readonly number[] {
  if (random.chance(0.15)) return random.pick([[0], [1], [1, 0], engagedFor(reads + 1)]);
  switch (kind) {
    case 'hold':
      return engagedFor(reads);
    case 'tap':
      return [...engagedFor(Math.max(1, reads - 1)), 0];
    case 'release':
      return [1, 0];
    case 'double tap':
      return [1, 0, 1];
    default:
      return [1];
  }
}
