import type { LevelChange, Masks } from './level-change.js';

/**
 * The last levels of a diagram taken together: a set of their values is the bits of one number, bit n for the n-th
 * combination. So the lower part of a diagram, where most of its nodes would be, costs next to nothing.
 */
export interface Leaves {
  /** The first level of the leaves; the number of levels where there are none. */
  readonly from: number;
  /** The bits of all combinations. */
  readonly full: number;
  /** The bit of a state. */
  single(state: readonly number[]): number;
  image(change: LevelChange, set: number): number;
  before(change: LevelChange, set: number): number;
  /** Writes the first combination that the masks let through into `state`; false where there is none. */
  find(set: number, masks: Masks, state: number[]): boolean;
}

/** One short of the sign bit. */
const MOST_BITS = 30;

export function createLeaves(sizes: readonly number[]): Leaves {
  const from = firstLevel(sizes);
  const values = combinations(sizes.slice(from));
  const numbers = new Map(values.map((combination, number) => [combination.join(), number]));
  const tables = new Map<number, Int8Array>();
  /** Where a change leads from each combination; −1 where nowhere. */
  const tableOf = ({ id, next }: LevelChange): Int8Array => {
    const known = tables.get(id);
    if (known !== undefined) return known;
    const table = Int8Array.from(values, combination => {
      const moved = combination.map((value, index) => {
        const map = next[from + index] ?? null;
        return map === null ? value : (map[value] ?? -1);
      });
      return numbers.get(moved.join()) ?? -1;
    });
    tables.set(id, table);
    return table;
  };
  return {
    from,
    full: 2 ** values.length - 1,
    single: state => 1 << (numbers.get(state.slice(from).join()) ?? 0),
    image: (change, set) => {
      if (change.last < from) return set;
      const table = tableOf(change);
      let image = 0;
      for (let left = set; left !== 0; left &= left - 1) {
        const to = table[31 - Math.clz32(left & -left)] ?? -1;
        if (to !== -1) image |= 1 << to;
      }
      return image;
    },
    before: (change, set) => {
      if (change.last < from) return set;
      const table = tableOf(change);
      let before = 0;
      for (const [number, to] of table.entries()) if (to !== -1 && (set >> to) & 1) before |= 1 << number;
      return before;
    },
    find: (set, masks, state) => {
      const number = values.findIndex(
        (combination, bit) =>
          ((set >> bit) & 1) === 1 &&
          combination.every((value, index) => masks[from + index]?.[value] ?? true),
      );
      const found = values[number];
      if (found === undefined) return false;
      for (const [index, value] of found.entries()) state[from + index] = value;
      return true;
    },
  };
}

/** The first level from which on the combinations still have a bit each. */
function firstLevel(sizes: readonly number[]): number {
  let from = sizes.length;
  for (let bits = 1; from > 0; from--) {
    bits *= sizes[from - 1] ?? 1;
    if (bits > MOST_BITS) break;
  }
  return from;
}

const combinations = (sizes: readonly number[]): readonly (readonly number[])[] =>
  sizes.reduce<number[][]>(
    (all, size) => all.flatMap(each => Array.from({ length: size }, (_, value) => [...each, value])),
    [[]],
  );
