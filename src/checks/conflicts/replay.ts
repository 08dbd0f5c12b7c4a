import type { WitnessStep } from '../../findings/finding.js';
import type { Binding } from '../../gestures/bindings.js';
import { type Contact, contactType } from '../../gestures/contacts.js';
import {
  contactsOf,
  createEngine,
  type Engine,
  type EngineState,
  startEngine,
  stepEngine,
} from '../../gestures/engine.js';
import { positionLevel } from '../../gestures/fit.js';
import { startPosition } from '../../gestures/settings.js';
import { doHold, type ValueIn, valueFrom } from '../../gestures/values.js';
import { isTwoPosition, SWITCHES } from '../../hardware/switches.js';
import type { Setting } from '../../language/model.js';
import type { Cell, TimedCell } from './cells.js';
import type { Levels } from './inputs.js';

/** Levels of contacts at one read, by contact id; a momentary contact that is missing is let go. */
export type NamedLevels = ReadonlyMap<string, number>;

/** A search’s path with its contacts’ names. */
export function namedPath(contacts: readonly Contact[], path: readonly Levels[]): readonly NamedLevels[] {
  return path.map(levels => new Map(contacts.map(({ id }, index) => [id, (levels >> index) & 1])));
}

/**
 * Steps all bindings of a mode through a path: what is engaged at each read, and every action that fires.
 *
 * @param others contacts that no binding of the mode uses, but the path does
 */
export function replay(
  timed: TimedCell,
  path: readonly NamedLevels[],
  values: (read: number) => ReadonlyMap<Setting, string>,
  others: readonly Contact[] = [],
): readonly WitnessStep[] {
  const contacts = [...contactsOf(timed.cell.bindings), ...others];
  return firings(timed, path, values).map((fired, read) => ({
    read,
    engaged: engagedNames(timed.cell, contacts, path[read - 1] ?? null, path[read] ?? new Map()),
    fires: actionNames(fired),
  }));
}

/** What fires, read by read. */
function firings(
  timed: TimedCell,
  path: readonly NamedLevels[],
  values: (read: number) => ReadonlyMap<Setting, string>,
): readonly (readonly Binding[])[] {
  const engine = createEngine(timed.cell.bindings, timed.readsOf);
  const standing = standingLevels(timed.cell, engine.contacts, values(0));
  let state: EngineState = startEngine(engine);
  return path.map((levels, read) => {
    const all = new Map([...standing, ...levels]);
    const step = stepNamed(timed.cell, engine, state, all, valueIn(timed.cell, values(read)));
    state = step.state;
    return step.fired;
  });
}

/** Every binding that fires on a path, read after read. */
export function firedBy(
  timed: TimedCell,
  path: readonly NamedLevels[],
  values: ReadonlyMap<Setting, string>,
): readonly Binding[] {
  return firings(timed, path, () => values).flat();
}

/** Where switches stand that give the values which a sequence is about, by contact id. */
function standingLevels(
  { sourceOf }: Cell,
  contacts: readonly Contact[],
  values: ReadonlyMap<Setting, string>,
): NamedLevels {
  const levels = new Map<string, number>();
  for (const [setting, value] of values) {
    const source = sourceOf(setting);
    if (source.kind !== 'switch') continue;
    const [position = null] = [...source.values].find(([, given]) => given === value) ?? [];
    for (const contact of contacts.filter(({ id }) => id === source.name)) {
      const level = positionLevel(contact, position);
      if (level !== null) levels.set(contact.id, level);
    }
  }
  return levels;
}

/** One read of an engine whose levels are given by name. */
export function stepNamed(
  cell: Cell,
  engine: Engine,
  state: EngineState,
  levels: NamedLevels,
  values: ValueIn,
): { readonly state: EngineState; readonly fired: readonly Binding[] } {
  const numbers = levelsOf(cell, engine.contacts, levels);
  const { state: next, fired } = stepEngine(engine, state, numbers, index =>
    doHold(engine.bindings[index]?.conditions ?? [], values),
  );
  return { state: next, fired: fired.flatMap(index => engine.bindings[index] ?? []) };
}

/** Levels by contact; what the names leave out is let go, or where power-on has it. */
export function levelsOf(cell: Cell, contacts: readonly Contact[], levels: NamedLevels): readonly number[] {
  return contacts.map(contact => levels.get(contact.id) ?? restLevel(cell, contact));
}

/** Settings that a sequence is about have the given values, all others those of power-on. */
export function valueIn({ scheme, sourceOf, profiles }: Cell, values: ReadonlyMap<Setting, string>): ValueIn {
  return setting =>
    values.get(setting) ??
    valueFrom(sourceOf(setting), undefined, name => startPosition(name, scheme, profiles[0]));
}

/** Actions, each once, in the order of the rows. */
export const actionNames = (fired: readonly Binding[]): readonly string[] => [
  ...new Set(fired.map(({ actionName }) => actionName)),
];

/** Names of what is engaged; of a switch that was moved (or does not begin where power-on has it), its position. */
export function engagedNames(
  cell: Cell,
  contacts: readonly Contact[],
  before: NamedLevels | null,
  levels: NamedLevels,
): readonly string[] {
  return contacts.flatMap(contact => {
    const level = levels.get(contact.id);
    if (level === undefined) return [];
    if (contactType(contact) === 'momentary') return level === 1 ? [contact.id] : [];
    const old = before?.get(contact.id) ?? (contact.kind === 'switch' ? restLevel(cell, contact) : level);
    if (level === old) return [];
    const position = contact.kind === 'switch' ? SWITCHES[contact.name].positions[level] : undefined;
    return [position === undefined ? contact.id : `${contact.id} ${position.name}`];
  });
}

/** The level of a contact at power-on. */
function restLevel({ scheme, profiles }: Cell, contact: Contact): number {
  if (contact.kind !== 'switch' || !isTwoPosition(contact.name)) return 0;
  return positionLevel(contact, startPosition(contact.name, scheme, profiles[0])) ?? 0;
}
