import type { Binding } from '../../gestures/bindings.js';
import { type Contact, contactType } from '../../gestures/contacts.js';
import { positionLevel, positionOf } from '../../gestures/fit.js';
import { type Play, type PlayState, playKey, stepPlay } from '../../gestures/play.js';
import { readsOf } from '../../language/time.js';
import { enterState, inputOf, type Levels, type Situation } from './situation.js';

/** Indices of a binding's contacts in its play. */
export function partIndices(play: Play, { parts }: Pick<Binding, 'parts'>): readonly number[] {
  return parts.map(part => play.contacts.findIndex(({ id }) => id === part.id));
}

export function readsOfBinding(play: Play, { gesture }: Binding): number {
  return 'time' in gesture ? readsOf(gesture.time, play.standard, play.scheme.game.readEvery.value) : 1;
}

/** The levels with some contacts changed. */
export function withLevels(levels: Levels, changes: ReadonlyMap<number, number>): Levels {
  return levels.map((level, index) => changes.get(index) ?? level);
}

/**
 * What the hands do for a gesture, made by its meaning: parts engaged one a read, in this order. A list of
 * levels, read by read.
 *
 * @param reads the gesture's time in reads: one more or less makes a near miss
 */
export function gestureReads(
  play: Play,
  binding: Binding,
  before: Levels,
  order: readonly number[],
  reads: number,
): readonly Levels[] {
  const engaged = (count: number) =>
    withLevels(before, new Map(order.slice(0, count).map(index => [index, 1])));
  const closing = order.map((_, index) => engaged(index + 1));
  const all = engaged(order.length);
  const hold = (count: number) => Array.from({ length: count }, () => all);
  const open = engaged(order.length - 1);
  switch (binding.gesture.kind) {
    case 'press':
    case 'held':
    case 'repeat':
      return closing;
    case 'release':
      return [...closing, open];
    case 'hold':
      return [...closing, ...hold(reads - 1)];
    case 'tap':
      return [...closing, ...hold(reads - 2), open];
    case 'double tap':
      return [...closing, open, ...Array.from({ length: reads - 2 }, () => open), all];
    case 'at':
      return [positioned(play, binding, before)];
    case 'flip':
    case 'flip to':
    case 'turn':
      return [elsewhere(play, binding, before), moved(play, binding, before)];
    default:
      return binding.gesture satisfies never;
  }
}

function onlyPart(play: Play, binding: Binding): { index: number; contact: Contact } {
  const [index] = partIndices(play, binding);
  const [contact] = binding.parts;
  if (index === undefined || contact === undefined) throw new RangeError('a binding without a control');
  return { index, contact };
}

/** The switch in the position the gesture asks for. */
function positioned(play: Play, binding: Binding, before: Levels): Levels {
  const { index, contact } = onlyPart(play, binding);
  const level = positionLevel(contact, positionOf(binding.gesture));
  return withLevels(before, new Map([[index, level ?? before[index] ?? 0]]));
}

/** The switch where a flip can begin: in the other position for `flip to P`. */
export function elsewhere(play: Play, binding: Binding, before: Levels): Levels {
  const { index, contact } = onlyPart(play, binding);
  if (binding.gesture.kind !== 'flip to') return before;
  const level = positionLevel(contact, binding.gesture.position);
  return withLevels(before, new Map([[index, level === null ? 0 : 1 - level]]));
}

function moved(play: Play, binding: Binding, before: Levels): Levels {
  const { index, contact } = onlyPart(play, binding);
  const level = elsewhere(play, binding, before)[index] ?? 0;
  const next = contactType(contact) === 'turning' ? level + 1 : 1 - level;
  return withLevels(before, new Map([[index, next]]));
}

/** All orders of a few things. */
export function ordersOf(list: readonly number[]): readonly (readonly number[])[] {
  if (list.length <= 1) return [list];
  return list.flatMap((first, index) =>
    ordersOf(list.filter((_, other) => other !== index)).map(rest => [first, ...rest]),
  );
}

const MOST_STATES = 4000;

/**
 * A shortest run of reads that fires a binding with no control but its own, by trying everything, read by read;
 * null where none is found within a few thousand states.
 */
export function searchReads(play: Play, binding: Binding, situation: Situation): readonly Levels[] | null {
  const own = partIndices(play, binding);
  const seen = new Set<string>();
  let front: readonly Reached[] = [{ state: enterState(play, situation), reads: [] }];
  while (front.length > 0 && seen.size < MOST_STATES) {
    const steps = front.flatMap(from => stepsFrom(play, own, from));
    const found = steps.find(({ fired }) => fired.some(each => isSame(each, binding)));
    if (found !== undefined) return found.reads;
    front = steps.filter(step => isNew(play, step, situation, seen));
  }
  return null;
}

interface Reached {
  readonly state: PlayState;
  readonly reads: readonly Levels[];
}

interface Step extends Reached {
  readonly fired: readonly Binding[];
}

function stepsFrom(play: Play, own: readonly number[], { state, reads }: Reached): readonly Step[] {
  return nextLevels(play, own, state.levels).map(levels => {
    const step = stepPlay(play, state, inputOf(play, levels));
    return { state: step.state, fired: step.fired, reads: [...reads, levels] };
  });
}

/** True, once, for a state that nothing with an effect has led to, and so no other mode. */
function isNew(play: Play, { state, fired }: Step, { mode }: Situation, seen: Set<string>): boolean {
  if (state.mode !== mode || fired.some(({ effects }) => effects.length > 0)) return false;
  const key = playKey(play, state);
  if (seen.has(key)) return false;
  seen.add(key);
  return true;
}

export function isSame(a: Binding, b: Binding): boolean {
  return (
    a.order === b.order &&
    a.alternative === b.alternative &&
    a.player === b.player &&
    a.direction === b.direction &&
    a.parts.map(({ id }) => id).join() === b.parts.map(({ id }) => id).join()
  );
}

/** What hands can do next with a few controls: let go of any, then engage or move at most one. */
function nextLevels(play: Play, own: readonly number[], levels: Levels): readonly Levels[] {
  const down = own.filter(index => isMomentary(play, index) && levels[index] === 1);
  const made: Levels[] = [];
  for (let bits = 0; bits < 1 << down.length; bits++) {
    const after = withLevels(
      levels,
      new Map(down.filter((_, bit) => (bits >> bit) & 1).map(index => [index, 0])),
    );
    made.push(after);
    for (const index of own) {
      const level = levels[index] ?? 0;
      if (isMomentary(play, index) && level === 1) continue;
      const turns =
        contactType(play.contacts[index] ?? { kind: 'switch', id: 'RESET', name: 'RESET' }) === 'turning';
      made.push(withLevels(after, new Map([[index, turns ? level + 1 : 1 - level]])));
    }
  }
  return made;
}

export function isMomentary({ contacts }: Play, index: number): boolean {
  const contact = contacts[index];
  return contact !== undefined && contactType(contact) === 'momentary';
}
