import type { Binding } from '../../gestures/bindings.js';
import { type Contact, contactType } from '../../gestures/contacts.js';
import { positionLevel, positionOf } from '../../gestures/fit.js';
import { isTwoPosition, type TwoPositionSwitchName } from '../../hardware/switches.js';
import type { Condition } from '../../language/model.js';
import { type Cell, gestureReads, type Holder, type TimedCell } from './cells.js';
import { MOST_CONTACTS, type Part, type PartHoldBack, type Program, type ProgramContact } from './program.js';
import { type World, worldsOf } from './worlds.js';

/** A program with what its numbers stand for. */
export interface Built {
  readonly program: Program;
  readonly contacts: readonly Contact[];
  readonly world: World;
}

/** The settings under which bindings are looked at, and which of their holders are live in each. */
export interface Setup<Y extends Binding | null = Binding | null> {
  readonly x: Binding;
  readonly y: Y;
  /** Live bindings that hold x or y back. */
  readonly holders: readonly TargetedHolder[];
  readonly worlds: readonly World[];
}

interface TargetedHolder extends Holder {
  readonly target: 'x' | 'y';
}

export function setUp<Y extends Binding | null>(cell: Cell, x: Binding, y: Y): Setup<Y> {
  const holders = [...holdersOf(cell, x, 'x'), ...(y === null ? [] : holdersOf(cell, y, 'y'))];
  const bindings = [x, ...(y === null ? [] : [y])];
  const watched = switchesOf([...bindings, ...holders.map(({ binding }) => binding)]);
  const isPlain = holders.length === 0 && watched.length === 0;
  const worlds = isPlain
    ? plainWorlds(cell, x.conditions, y?.conditions ?? NONE)
    : worldsOf({
        must: bindings.flatMap(({ conditions }) => conditions),
        holders: holders.map(({ binding }) => binding.conditions),
        watched,
        sourceOf: cell.sourceOf,
      });
  return { x, y, holders, worlds };
}

const NONE: readonly Condition[] = [];

function holdersOf({ holders }: Cell, held: Binding, target: 'x' | 'y'): readonly TargetedHolder[] {
  return (holders.get(held) ?? []).map(holder => ({ ...holder, target }));
}

type Conditions = readonly Condition[];
const PLAIN = new WeakMap<Cell, Map<Conditions, Map<Conditions, readonly World[]>>>();

/** The one world in which two `When` hold, or none: kept, since the bindings of a row share their conditions. */
function plainWorlds(cell: Cell, x: Conditions, y: Conditions): readonly World[] {
  const byCell = PLAIN.get(cell) ?? new Map<Conditions, Map<Conditions, readonly World[]>>();
  const byX = byCell.get(x) ?? new Map<Conditions, readonly World[]>();
  const worlds =
    byX.get(y) ?? worldsOf({ must: [...x, ...y], holders: [], watched: [], sourceOf: cell.sourceOf });
  PLAIN.set(cell, byCell);
  byCell.set(x, byX);
  byX.set(y, worlds);
  return worlds;
}

/** The program of a set-up in one of its worlds; null where its contacts are more than bits. */
export function buildProgram(timed: TimedCell, { x, y, holders }: Setup, world: World): Built | null {
  const live = holders.filter((_, index) => world.holds[index] === true);
  const contacts = distinct([x, ...(y === null ? [] : [y]), ...live.map(({ binding }) => binding)]);
  if (contacts.length > MOST_CONTACTS) return null;
  const bits = new Map(contacts.map(({ id }, index) => [id, 1 << index]));
  const maskOf = (ids: readonly string[]) => ids.reduce((mask, id) => mask | (bits.get(id) ?? 0), 0);
  const partOf = (binding: Binding): Part => ({
    kind: binding.gesture.kind,
    reads: gestureReads(binding, timed),
    mask: maskOf(binding.parts.map(({ id }) => id)),
    wanted:
      binding.parts[0] === undefined ? null : positionLevel(binding.parts[0], positionOf(binding.gesture)),
    goesTo: binding.effects.some(({ kind }) => kind === 'go to'),
  });
  const holdBacks = live.map(({ target, binding, until }): PartHoldBack => {
    const { kind, mask, wanted } = partOf(binding);
    return { target, holder: { kind, mask, wanted }, until: maskOf(until) };
  });
  return {
    program: {
      contacts: contacts.map(contact => programContact(contact, contacts, timed, world)),
      x: partOf(x),
      y: y === null ? null : partOf(y),
      holdBacks,
    },
    contacts,
    world,
  };
}

function distinct(bindings: readonly Binding[]): readonly Contact[] {
  const byId = new Map<string, Contact>();
  for (const { parts } of bindings) for (const part of parts) if (!byId.has(part.id)) byId.set(part.id, part);
  return [...byId.values()];
}

const switchesOf = (bindings: readonly Binding[]): readonly TwoPositionSwitchName[] =>
  bindings.flatMap(({ parts }) => parts.flatMap(({ id }) => (isTwoPositionName(id) ? [id] : [])));

const isTwoPositionName = (id: string): id is TwoPositionSwitchName =>
  id === 'TV type' || id === 'left difficulty' || id === 'right difficulty';

function programContact(
  contact: Contact,
  contacts: readonly Contact[],
  { cell }: TimedCell,
  world: World,
): ProgramContact {
  const other = cell.opposites.get(contact.id);
  const opposite = other === undefined ? -1 : contacts.findIndex(({ id }) => id === other);
  const plain: ProgramContact = {
    type: contactType(contact),
    starts: [0],
    isFixed: false,
    isFrozen: false,
    opposite: opposite < 0 ? null : opposite,
  };
  if (contact.kind !== 'switch' || !isTwoPosition(contact.name)) return plain;
  const state = cell.profiles[0].switches[contact.name];
  const known = state.kind === 'fixed' ? state.position : world.positions.get(contact.name);
  const level = known === undefined ? null : positionLevel(contact, known);
  return {
    ...plain,
    starts: level === null ? [0, 1] : [level],
    isFixed: state.kind === 'fixed',
    isFrozen: world.positions.has(contact.name),
  };
}
