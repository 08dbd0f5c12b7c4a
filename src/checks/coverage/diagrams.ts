import { createStore, MOST_NUMBERS, type Store } from './diagram-store.js';
import { createLeaves, type Leaves } from './leaves.js';
import type { LevelChange, Masks } from './level-change.js';
import { createMemo } from './memo.js';

/**
 * Sets of states as decision diagrams. A state is one value for each of some variables; a node stands for a set
 * of the values of the variables from its level on, with one child for each value of its level's variable:
 *
 *     level 0 (3 values)        a ── child for value 0, 1, 2
 *     level 1 (2 values)      b   b   ∅
 *     leaves (the last levels together)      a number for the set of their combinations
 *
 * Equal sets are the same node, so a set and its combinations are worked out once, however many modes, consoles
 * and seats rows come by it. 0 is the empty set on every level.
 */
export interface Diagrams {
  readonly sizes: readonly number[];
  /** The set of all states. */
  readonly full: number;
  single(state: readonly number[]): number;
  union(one: number, other: number): number;
  minus(one: number, other: number): number;
  /** Where the change leads from the states of the set. */
  image(change: LevelChange, set: number): number;
  /** From where the change leads into the set. */
  before(change: LevelChange, set: number): number;
  /** A state of the set that has, on each level, a value that the mask lets through; the lowest values first. */
  find(set: number, masks: Masks): number[] | null;
}

const MASKS = new Map<string, readonly boolean[]>();

/** Lets one of a level's values through. */
export function maskOfOne(size: number, value: number): readonly boolean[] {
  const key = `${size} ${value}`;
  const known = MASKS.get(key);
  if (known !== undefined) return known;
  const mask = Array.from({ length: size }, (_, each) => each === value);
  MASKS.set(key, mask);
  return mask;
}

const NOTHING = new Int32Array(0);
const UNION = 1;
const MINUS = 2;
const IMAGE = 3;

/**
 * @param most numbers that may be kept
 * @throws TooManyStatesError, from any of its functions, where more are needed
 */
export function createDiagrams(sizes: readonly number[], most = MOST_NUMBERS): Diagrams {
  const leaves = createLeaves(sizes);
  const depth = leaves.from;
  const store = createStore(sizes.slice(0, depth), most);
  const memo = createMemo();
  const { child, make, buffers } = store;
  /** By level, down to the leaves. */
  const full = fullNodes(store, leaves);

  function union(level: number, one: number, other: number): number {
    if (one === other || other === 0) return one;
    if (one === 0) return other;
    if (one === full[level] || other === full[level]) return full[level] ?? leaves.full;
    if (level === depth) return one | other;
    const [low, high] = one < other ? [one, other] : [other, one];
    const known = memo.get(UNION, low, high);
    if (known !== -1) return known;
    const buffer = buffers[level] ?? NOTHING;
    for (let value = 0; value < buffer.length; value++)
      buffer[value] = union(level + 1, child(low, value), child(high, value));
    return memo.set(UNION, low, high, make(level));
  }

  function minus(level: number, one: number, other: number): number {
    if (one === 0 || one === other || other === full[level]) return 0;
    if (other === 0) return one;
    if (level === depth) return one & ~other;
    const known = memo.get(MINUS, one, other);
    if (known !== -1) return known;
    const buffer = buffers[level] ?? NOTHING;
    for (let value = 0; value < buffer.length; value++)
      buffer[value] = minus(level + 1, child(one, value), child(other, value));
    return memo.set(MINUS, one, other, make(level));
  }

  function image(change: LevelChange, level: number, set: number): number {
    if (set === 0 || level > change.last) return set;
    if (level === depth) return leaves.image(change, set);
    const operation = IMAGE + 2 * change.id;
    const known = memo.get(operation, level, set);
    if (known !== -1) return known;
    const next = change.next[level] ?? null;
    const buffer = buffers[level] ?? NOTHING;
    buffer.fill(0);
    for (let value = 0; value < buffer.length; value++) {
      const to = next === null ? value : (next[value] ?? -1);
      if (to === -1) continue;
      const moved = image(change, level + 1, child(set, value));
      buffer[to] = union(level + 1, buffer[to] ?? 0, moved);
    }
    return memo.set(operation, level, set, make(level));
  }

  function before(change: LevelChange, level: number, set: number): number {
    if (set === 0 || level > change.last) return set;
    if (level === depth) return leaves.before(change, set);
    const operation = IMAGE + 2 * change.id + 1;
    const known = memo.get(operation, level, set);
    if (known !== -1) return known;
    const next = change.next[level] ?? null;
    const buffer = buffers[level] ?? NOTHING;
    for (let value = 0; value < buffer.length; value++) {
      const to = next === null ? value : (next[value] ?? -1);
      buffer[value] = to === -1 ? 0 : before(change, level + 1, child(set, to));
    }
    return memo.set(operation, level, set, make(level));
  }

  /** @param hopeless nodes in which nothing was found: a node is on one level, so it is looked through once */
  function find(set: number, masks: Masks, level: number, state: number[], hopeless: Set<number>): boolean {
    if (level === depth) return leaves.find(set, masks, state);
    if (hopeless.has(set)) return false;
    const mask = masks[level] ?? null;
    const size = sizes[level] ?? 0;
    for (let value = 0; value < size; value++) {
      const next = mask === null || mask[value] === true ? child(set, value) : 0;
      if (next === 0) continue;
      state[level] = value;
      if (find(next, masks, level + 1, state, hopeless)) return true;
    }
    hopeless.add(set);
    return false;
  }

  return {
    sizes,
    full: full[0] ?? leaves.full,
    single: state => singleNode(store, leaves, state),
    union: (one, other) => union(0, one, other),
    minus: (one, other) => minus(0, one, other),
    image: (change, set) => image(change, 0, set),
    before: (change, set) => before(change, 0, set),
    find: (set, masks) => {
      const state: number[] = [];
      return set !== 0 && find(set, masks, 0, state, new Set()) ? state : null;
    },
  };
}

/** For each level, the node of all values from there on; last the full leaf. */
function fullNodes({ buffers, make }: Store, leaves: Leaves): readonly number[] {
  const full = new Array<number>(leaves.from + 1).fill(leaves.full);
  for (let level = leaves.from - 1; level >= 0; level--) {
    buffers[level]?.fill(full[level + 1] ?? leaves.full);
    full[level] = make(level);
  }
  return full;
}

function singleNode({ buffers, make }: Store, leaves: Leaves, state: readonly number[]): number {
  let node = leaves.single(state);
  for (let level = leaves.from - 1; level >= 0; level--) {
    const buffer = buffers[level] ?? NOTHING;
    buffer.fill(0);
    buffer[state[level] ?? 0] = node;
    node = make(level);
  }
  return node;
}
