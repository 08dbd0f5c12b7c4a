import type { WitnessStep } from '../../findings/finding.js';
import type { Binding } from '../../gestures/bindings.js';
import { contactsOf, createEngine, enterEngine } from '../../gestures/engine.js';
import { settingSource } from '../../gestures/settings.js';
import { doHold } from '../../gestures/values.js';
import type { Condition, Mode, Setting } from '../../language/model.js';
import { type Built, buildProgram, type Setup, setUp } from './build.js';
import type { TimedCell } from './cells.js';
import { createMachine, FIRES_X } from './machine.js';
import {
  actionNames,
  engagedNames,
  firedBy,
  levelsOf,
  type NamedLevels,
  namedPath,
  replay,
  stepNamed,
  valueIn,
} from './replay.js';
import { pathTo, search } from './search.js';
import { areUnrelated, type Sighting, sharesLine, sightingIn } from './sighting.js';
import { afterEffects } from './value-chain.js';
import { type Assignment, assignmentsOf } from './worlds.js';

/** A timed cell and what is live in it. */
export interface LiveCell {
  readonly timed: TimedCell;
  readonly live: readonly Binding[];
}

/**
 * Rule 9: what leads from one mode into another is still engaged (or in its position) there, and that already
 * means something.
 *
 * @param from the mode that is left
 * @param entered a mode with the same seats row and standard, on the consoles that `from` is for; empty where it
 *   does not list the seats row
 */
export function findCarryOvers(
  from: LiveCell,
  entered: (mode: Mode) => readonly LiveCell[],
): readonly Sighting[] {
  return from.live.flatMap(x => {
    const target = targetOf(x);
    if (target === null || target === x.mode || x.gesture.kind === 'turn') return [];
    return entered(target).flatMap(to =>
      to.live
        .filter(y => canCarryOver(x, y) && areUnrelated(x, y))
        .flatMap(y => sight(onSharedConsole(from, to), onSharedConsole(to, from), x, y)),
    );
  });
}

/** A cell as it is on the first console that it shares with another: they need not be for the same ones. */
function onSharedConsole(own: LiveCell, other: LiveCell): LiveCell {
  const { cell } = own.timed;
  const shared = cell.profiles.find(profile => other.timed.cell.profiles.includes(profile));
  if (shared === undefined || shared === cell.profiles[0]) return own;
  const rest = cell.profiles.filter(profile => profile !== shared);
  const sourceOf = (setting: Setting) => settingSource(setting, cell.scheme, shared);
  return { ...own, timed: { ...own.timed, cell: { ...cell, profiles: [shared, ...rest], sourceOf } } };
}

function targetOf({ effects }: Binding): Mode | null {
  const first = effects.find(effect => effect.kind === 'go to');
  return first?.kind === 'go to' ? first.mode : null;
}

const canCarryOver = (x: Binding, y: Binding): boolean =>
  (y.gesture.kind === 'held' || y.gesture.kind === 'at') && sharesLine(x, y);

/** One way to set what the two rows ask about: before x fires, and after it. */
interface Passage {
  readonly before: Assignment;
  readonly after: ReadonlyMap<Setting, string>;
}

function sight(from: LiveCell, to: LiveCell, x: Binding, y: Binding): readonly Sighting[] {
  const { cell } = from.timed;
  const setup: Setup = { ...setUp(from.timed.cell, x, null), y };
  for (const passage of passagesOf(from.timed, to.timed, setup, x, y)) {
    const found = followPassage(from.timed, to.timed, setup, passage, y);
    if (found === null) continue;
    return [
      sightingIn(to.timed, 'carry-over', [x, y], {
        profiles: cell.profiles.filter(profile => to.timed.cell.profiles.includes(profile)),
        length: found.path.length + 1,
        witness: () => witnessOf(from.timed, to.timed, passage, found),
        extra: { from: cell.mode.name, state: y.gesture.kind === 'at' ? 'in that position' : 'engaged' },
      }),
    ];
  }
  return [];
}

/** Values under which x is live in its mode and y, after x’s `Then`, in the other. */
function passagesOf(
  { cell }: TimedCell,
  to: TimedCell,
  setup: Setup,
  x: Binding,
  y: Binding,
): readonly Passage[] {
  const holders = [...setup.holders, ...setUp(to.cell, y, null).holders].map(({ binding }) => binding);
  const conditions: readonly Condition[] = [x, y, ...holders].flatMap(binding => binding.conditions);
  const touched = new Set<Setting>();
  for (const effect of x.effects)
    if (effect.kind !== 'go to' && cell.sourceOf(effect.setting).kind === 'game') touched.add(effect.setting);
  return assignmentsOf(conditions, cell.sourceOf, touched).flatMap(before => {
    const after = afterSwitch(afterEffects(before.values, x.effects, touched), x, y, cell.sourceOf);
    const isLive = doHold(x.conditions, setting => before.values.get(setting));
    return isLive && doHold(y.conditions, setting => after.get(setting)) ? [{ before, after }] : [];
  });
}

/** Where x moved a switch, the settings it gives have the values of the position that y asks for. */
function afterSwitch(
  values: ReadonlyMap<Setting, string>,
  x: Binding,
  y: Binding,
  sourceOf: TimedCell['cell']['sourceOf'],
): ReadonlyMap<Setting, string> {
  if (y.gesture.kind !== 'at') return values;
  const { position } = y.gesture;
  return new Map(
    [...values].map(([setting, value]) => {
      const source = sourceOf(setting);
      const isMoved = source.kind === 'switch' && x.parts.some(({ id }) => id === source.name);
      return [setting, (isMoved ? source.values.get(position) : undefined) ?? value];
    }),
  );
}

interface Followed {
  readonly path: readonly NamedLevels[];
  /** What is still engaged at the first read of the mode that is entered. */
  readonly entry: NamedLevels;
}

/** A shortest way to fire x with y’s control engaged (or its switch in y’s position), and y firing in the next read. */
function followPassage(
  from: TimedCell,
  to: TimedCell,
  setup: Setup,
  { before, after }: Passage,
  y: Binding,
): Followed | null {
  const holds = setup.holders.map(({ binding }) =>
    doHold(binding.conditions, setting => before.values.get(setting)),
  );
  const built = buildProgram(from, setup, { holds, positions: before.positions, values: before.values });
  if (built === null) return null;
  const staysInMode = (path: readonly NamedLevels[]) => !leavesBefore(from, path, before);
  for (const path of pathsWithBoth(built, staysInMode)) {
    const last = path.at(-1);
    if (last === undefined) continue;
    const own = new Map(
      [...last].map(([id, level]) => [id, y.parts.some(part => part.id === id) ? level : 0]),
    );
    const entry = [last, own].find(levels => firesOnEntry(to, y, last, levels, after));
    if (entry !== undefined) return { path, entry };
  }
  return null;
}

/** True where a read before the last has led out of the mode already. */
function leavesBefore(from: TimedCell, path: readonly NamedLevels[], { values }: Assignment): boolean {
  return firedBy(from, path.slice(0, -1), values).some(binding => targetOf(binding) !== null);
}

/** The shortest way that is as it is wished, and the shortest of all for where none is; empty where there is no way. */
function pathsWithBoth(
  { program, contacts }: Built,
  isWished: (path: readonly NamedLevels[]) => boolean,
): readonly (readonly NamedLevels[])[] {
  const { x, y } = program;
  const yMask = y?.mask ?? 0;
  const machine = createMachine(program, x.mask | yMask);
  const isCarried = (levels: number): boolean =>
    y?.kind === 'at'
      ? ((levels & yMask) !== 0) === (y.wanted === 1)
      : (levels & (x.mask | yMask)) === (x.mask | yMask);
  const first: (readonly NamedLevels[])[] = [];
  const wished: (readonly NamedLevels[])[] = [];
  search(machine, {
    watch: 0,
    wants: fires => (fires & FIRES_X) !== 0,
    onFire: ({ node }) => {
      if (wished.length > 0 || !isCarried(machine.inputs.levels[node.at] ?? 0)) return;
      const path = namedPath(contacts, pathTo(machine, node));
      if (first.length === 0) first.push(path);
      if (isWished(path)) wished.push(path);
    },
    isDone: () => wished.length > 0,
  });
  return [...wished, ...first];
}

function firesOnEntry(
  to: TimedCell,
  y: Binding,
  last: NamedLevels,
  levels: NamedLevels,
  values: ReadonlyMap<Setting, string>,
): boolean {
  return enter(to, last, levels, values).includes(y);
}

/** What fires at the first read of a mode. */
function enter(
  { cell, readsOf }: TimedCell,
  last: NamedLevels,
  levels: NamedLevels,
  values: ReadonlyMap<Setting, string>,
): readonly Binding[] {
  const engine = createEngine(cell.bindings, readsOf);
  const state = enterEngine(engine, levelsOf(cell, engine.contacts, last));
  return stepNamed(cell, engine, state, levels, valueIn(cell, values)).fired;
}

function witnessOf(
  from: TimedCell,
  to: TimedCell,
  { before, after }: Passage,
  { path, entry }: Followed,
): readonly WitnessStep[] {
  const own = new Set(contactsOf(from.cell.bindings));
  const contacts = contactsOf([...from.cell.bindings, ...to.cell.bindings]);
  const others = contacts.filter(contact => !own.has(contact));
  const steps = replay(from, path, () => before.values, others);
  const last = path.at(-1) ?? entry;
  return [
    ...steps,
    {
      read: steps.length,
      engaged: engagedNames(to.cell, contacts, last, entry),
      fires: actionNames(enter(to, last, entry, after)),
    },
  ];
}
