import type { Binding } from '../../gestures/bindings.js';
import { enterEngine } from '../../gestures/engine.js';
import { createPlay, type Play, type PlayState, startPlay, stepPlay } from '../../gestures/play.js';
import type { BindingRow, Mode, Scheme, Setting } from '../../language/model.js';
import { symbolPart } from '../../language/symbol.js';
import { createHandoff } from '../create.js';
import type { Handoff } from '../model.js';
import { type Output, outputKey } from '../outputs.js';
import { inputOf } from '../vectors/situation.js';
import { engagedWords } from '../vectors/vectors.js';
import { levelsOfRead } from './levels.js';
import { type LogOrigin, type LogRead, readLog } from './log.js';

/** A read at which the build and the scheme differ. */
export interface TraceDifference {
  /** From 0. */
  readonly read: number;
  /** Of the log, from 1. */
  readonly line: number;
  /** The mode as the scheme has it. */
  readonly mode: string;
  readonly engaged: readonly string[];
  /** Sentences. */
  readonly says: readonly string[];
}

export interface TraceResult {
  readonly reads: number;
  readonly differences: readonly TraceDifference[];
  /** What could not be read or chosen, a sentence each. */
  readonly faults: readonly string[];
}

/**
 * Compares a log of register values, read by read from power-on, with what the scheme says.
 *
 * @param options what the log was made on; what it leaves open is as the log says, else the first of the scheme
 */
export function traceScheme(scheme: Scheme, logText: string, options: LogOrigin = {}): TraceResult {
  const log = readLog(logText);
  const chosen = choosePlay(scheme, { ...log.origin, ...options });
  if (typeof chosen === 'string') return { reads: 0, differences: [], faults: [chosen] };
  const handoff = createHandoff(scheme);
  const differences: TraceDifference[] = [];
  let state = startPlay(chosen);
  log.reads.forEach((read, index) => {
    const followed = follow(chosen, handoff, state, read);
    if (followed.says.length > 0) {
      const engaged = engagedWords(chosen, followed.levels, state.levels);
      differences.push({
        read: index,
        line: read.line,
        mode: followed.mode.name,
        engaged,
        says: followed.says,
      });
    }
    state = followed.state;
  });
  return { reads: log.reads.length, differences, faults: log.faults };
}

/** A play, or a sentence that says what there is not. */
export function choosePlay(scheme: Scheme, options: LogOrigin): Play | string {
  const seats = named(scheme.seats, options.seats);
  const profile = named(scheme.consoles, options.console);
  const standard = named(scheme.standards, options.standard);
  const missing = (what: string, name: string | undefined, list: readonly { readonly name: string }[]) =>
    `The scheme has no ${what} “${name ?? ''}”; it has ${list.map(each => each.name).join(', ')}.`;
  if (seats === undefined) return missing('seats row', options.seats, scheme.seats);
  if (profile === undefined) return missing('console', options.console, scheme.consoles);
  if (standard === undefined) return missing('TV standard', options.standard, scheme.standards);
  return createPlay({ scheme, seats, profile, standard });
}

function named<T extends { readonly name: string }>(
  list: readonly T[],
  name: string | undefined,
): T | undefined {
  return name === undefined
    ? list[0]
    : list.find(each => each.name.toLowerCase() === name.trim().toLowerCase());
}

interface Followed {
  readonly state: PlayState;
  readonly mode: Mode;
  readonly levels: readonly number[];
  readonly says: readonly string[];
}

/** One read: the scheme is played with what was read, then the build is compared with it. */
function follow(play: Play, handoff: Handoff, before: PlayState, read: LogRead): Followed {
  const says: string[] = [];
  const state = settle(play, takeMode(play, handoff, before, read, says), read);
  const levels = levelsOfRead(play.contacts, read, state.levels);
  const game = gameRows(state.mode, read, handoff);
  const step = stepPlay(play, state, { ...inputOf(play, levels), game });
  says.push(
    ...compareFires(
      handoff,
      state.mode,
      step.fired,
      read,
      new Set(step.game.map(({ action }) => action.name)),
    ),
  );
  return { state: step.state, mode: state.mode, levels, says };
}

/** Where the log says that the build is in another mode, that is told once and then followed. */
function takeMode(play: Play, handoff: Handoff, state: PlayState, read: LogRead, says: string[]): PlayState {
  if (read.mode === null) return state;
  const mode = play.scheme.modes.find(
    each => each.name.toLowerCase() === read.mode?.toLowerCase() || handoff.names.mode(each) === read.mode,
  );
  if (mode === state.mode) return state;
  const engine = mode === undefined ? undefined : play.engines.get(mode);
  if (mode === undefined || engine === undefined) {
    says.push(`The log names a mode that these seats do not play: ${read.mode}.`);
    return state;
  }
  says.push(
    `The build is in ${mode.name}, the scheme in ${state.mode.name}; from here on the build’s mode is taken.`,
  );
  return { ...state, mode, read: Math.max(1, state.read), engine: enterEngine(engine, state.levels) };
}

/** The game’s own code may set what the game keeps: the log’s value is taken. */
function settle(play: Play, state: PlayState, { settings }: LogRead): PlayState {
  if (settings.size === 0) return state;
  const values = new Map<Setting, string>(state.values);
  for (const [setting, source] of play.sources) {
    const given = [...settings].find(([name]) => name.toLowerCase() === setting.name.toLowerCase())?.[1];
    const value = setting.values.find(each => each.toLowerCase() === given?.toLowerCase());
    if (source.kind === 'game' && value !== undefined) values.set(setting, value);
  }
  return { ...state, values };
}

/** What the game does by itself can't be told from the registers: the log is believed. */
export function gameRows(mode: Mode, { fires }: LogRead, { names }: Handoff): readonly BindingRow[] {
  return mode.rows.filter(
    ({ who, action }) =>
      who.value.kind === 'game' &&
      fires.some(name => isAction(name, action.name) || name === names.action(action)),
  );
}

const isAction = (given: string, name: string): boolean =>
  given.toLowerCase() === name.toLowerCase() || given === symbolPart(name);

function compareFires(
  { outputs }: Handoff,
  mode: Mode,
  fired: readonly Binding[],
  { fires }: LogRead,
  byGame: ReadonlySet<string>,
): readonly string[] {
  const own = outputs.get(mode);
  const due = [...new Set(fired.flatMap(binding => own?.get(outputKey(binding)) ?? []))];
  const matches = (given: string, output: Output) =>
    given === output.symbol || isAction(given, output.actionName);
  const absent = due.filter(output => fires.every(given => !matches(given, output)));
  const extra = fires.filter(
    given =>
      due.every(output => !matches(given, output)) && [...byGame].every(name => !isAction(given, name)),
  );
  const all = [...(own?.values() ?? [])];
  return [
    ...absent.map(
      output => `${wordsOf(output)} should happen${causeOf(output, fired)}, but the build does not do it.`,
    ),
    ...extra.map(given => {
      const output = all.find(each => given === each.symbol);
      return `The build does ${output === undefined ? given : wordsOf(output)}, but by the scheme it should not.`;
    }),
  ];
}

function wordsOf({ actionName, player, direction }: Output): string {
  const who = player === 'anyone' ? '' : ` (${player})`;
  return `“${actionName}${direction === null ? '' : ` ${direction}`}”${who}`;
}

/** ` (left button, hold 0.5 s)`. */
function causeOf(output: Output, fired: readonly Binding[]): string {
  const binding = fired.find(each => outputKey(each) === outputKey(output));
  if (binding === undefined) return '';
  const { gesture, parts } = binding;
  const detail =
    'time' in gesture ? ` ${gesture.time.text}` : 'position' in gesture ? ` ${gesture.position}` : '';
  return ` by ${parts.map(({ id }) => id).join(' + ')}, ${gesture.kind}${detail}`;
}

/** The result as lines for people. */
export function traceLines({ reads, differences, faults }: TraceResult): readonly string[] {
  const told = differences.flatMap(({ read, line, mode, engaged, says }) => [
    `Read ${read} (line ${line}), ${mode}, ${engaged.length === 0 ? 'nothing engaged' : engaged.join(', ')}:`,
    ...says.map(text => `  ${text}`),
  ]);
  const count = differences.length;
  const all = reads === 1 ? '1 read' : `${reads} reads`;
  const agree = faults.length === 0 ? 'the build and the scheme agree.' : 'no other difference is seen.';
  const sum = count === 0 ? `${all}: ${agree}` : `${all}, ${count} where the build and the scheme differ.`;
  return [...faults, ...told, sum];
}
