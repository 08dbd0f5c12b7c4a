import type { Binding } from '../../gestures/bindings.js';
import { contactType } from '../../gestures/contacts.js';
import { enterEngine } from '../../gestures/engine.js';
import { type Play, type PlayState, stepPlay, valuesIn } from '../../gestures/play.js';
import { startPosition } from '../../gestures/settings.js';
import { type Position, SWITCHES, type TwoPositionSwitchName } from '../../hardware/switches.js';
import type { Condition, Mode, Setting } from '../../language/model.js';

/** Levels of every contact of a play at one read; see `Engine`. */
export type Levels = readonly number[];

/** Where a vector begins: the values of the settings, and what was read at the last read before the mode. */
export interface Situation {
  readonly mode: Mode;
  /** Of the settings the game keeps. */
  readonly values: ReadonlyMap<Setting, string>;
  readonly before: Levels;
}

/** What a run of reads does. */
export interface Outcome {
  /** By read. */
  readonly fired: readonly (readonly Binding[])[];
  /** The reads that were made: it ends with the read at which the mode is left. */
  readonly reads: readonly Levels[];
  /** By read: every setting's value before it. */
  readonly settings: readonly ReadonlyMap<Setting, string>[];
}

export function runReads(play: Play, situation: Situation, reads: readonly Levels[]): Outcome {
  let state = enterState(play, situation);
  const fired: (readonly Binding[])[] = [];
  const made: Levels[] = [];
  const settings: ReadonlyMap<Setting, string>[] = [];
  let values = valuesIn(play, state);
  let isStale = false;
  for (const levels of reads) {
    if (isStale || levels !== made.at(-1)) values = valuesIn(play, state);
    settings.push(values);
    const step = stepPlay(play, state, inputOf(play, levels));
    fired.push(step.fired);
    made.push(levels);
    state = step.state;
    // A setting's value only changes with what fired, or with a switch at the read before.
    isStale = levels !== made.at(-2) || step.fired.some(({ effects }) => effects.length > 0);
    if (step.fired.some(({ effects }) => effects.some(effect => leaves(play, effect)))) break;
  }
  return { fired, reads: made, settings };
}

const leaves = (play: Play, effect: Binding['effects'][number]): boolean =>
  effect.kind === 'go to' && play.engines.has(effect.mode);

export function enterState(play: Play, { mode, values, before }: Situation): PlayState {
  const engine = play.engines.get(mode);
  if (engine === undefined) throw new RangeError(`${mode.name} is not played with ${play.seats.name}`);
  return { read: 1, mode, values, levels: before, engine: enterEngine(engine, before) };
}

export function inputOf({ contacts }: Play, levels: Levels): Parameters<typeof stepPlay>[2] {
  const engaged = new Set<string>();
  const positions: Partial<Record<TwoPositionSwitchName, Position>> = {};
  const turned: Record<string, number> = {};
  contacts.forEach((contact, index) => {
    const level = levels[index] ?? 0;
    const type = contactType(contact);
    if (type === 'momentary' && level === 1) engaged.add(contact.id);
    if (type === 'turning') turned[contact.id] = level;
    if (
      type !== 'two-position' ||
      contact.kind !== 'switch' ||
      contact.name === 'RESET' ||
      contact.name === 'SELECT'
    )
      return;
    const position = SWITCHES[contact.name].positions[level]?.name;
    if (position !== undefined) positions[contact.name] = position;
  });
  return { engaged, positions, turned };
}

/**
 * A situation at rest in which all conditions hold, or with `broken` one of them does not; null where there is
 * none on this console.
 */
export function findSituation(
  play: Play,
  mode: Mode,
  conditions: readonly Condition[],
  broken: Condition | null = null,
): Situation | null {
  const values = new Map<Setting, string>();
  const before = restLevels(play);
  const wanted = (setting: Setting, value: string) =>
    conditions.every(each => each.setting !== setting || holds(each, value) !== (each === broken));
  for (const [setting, source] of play.sources) {
    const asked = conditions.some(each => each.setting === setting);
    const fits = (value: string) => !asked || wanted(setting, value);
    if (source.kind === 'constant') {
      if (!fits(source.value)) return null;
    } else if (source.kind === 'game') {
      const value = [source.startsAs, ...setting.values].find(fits);
      if (value === undefined) return null;
      values.set(setting, value);
    }
  }
  return placeSwitches(play, before, wanted) ? { mode, values, before } : null;
}

/** Moves switches so that their settings fit; false where one can't. */
function placeSwitches(
  play: Play,
  levels: number[],
  wanted: (setting: Setting, value: string) => boolean,
): boolean {
  return play.contacts.every((contact, index) => {
    const governed = [...play.sources].filter(
      ([, source]) => source.kind === 'switch' && source.name === contact.id,
    );
    if (contact.kind !== 'switch' || governed.length === 0) return true;
    const fits = (level: number) =>
      governed.every(([setting, source]) => {
        const position = SWITCHES[contact.name].positions[level]?.name;
        const value =
          source.kind === 'switch' && position !== undefined ? source.values.get(position) : undefined;
        return value === undefined || wanted(setting, value);
      });
    const level = [levels[index] ?? 0, 0, 1].find(fits);
    if (level === undefined) return false;
    levels[index] = level;
    return true;
  });
}

const holds = ({ is, value }: Condition, actual: string): boolean => (actual === value) === is;

/** Everything let go, switches as at power-on, wheels and paddles at 0. */
export function restLevels({ contacts, scheme, profile }: Play): number[] {
  return contacts.map(contact => {
    if (contact.kind !== 'switch' || contact.name === 'RESET' || contact.name === 'SELECT') return 0;
    const position = startPosition(contact.name, scheme, profile);
    return Math.max(
      0,
      SWITCHES[contact.name].positions.findIndex(({ name }) => name === position),
    );
  });
}

/** Each setting's value before the first read. */
export function settingsAt(play: Play, situation: Situation): ReadonlyMap<Setting, string> {
  return valuesIn(play, enterState(play, situation));
}
