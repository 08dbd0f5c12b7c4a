/** A seeded source of chance (mulberry32, public domain): the same seed gives the same numbers everywhere. */
export interface Random {
  /** At least 0, below 1. */
  readonly next: () => number;
  /** 0 to `count − 1`. */
  readonly below: (count: number) => number;
  readonly chance: (part: number) => boolean;
  /** @throws RangeError where the list is empty */
  readonly pick: <T>(list: readonly T[]) => T;
  readonly shuffled: <T>(list: readonly T[]) => readonly T[];
}

export function createRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const below = (count: number) => Math.floor(next() * count);
  const pick = <T>(list: readonly T[]): T => {
    const found = list[below(list.length)];
    if (found === undefined) throw new RangeError('nothing to pick from');
    return found;
  };
  const shuffled = <T>(list: readonly T[]): readonly T[] =>
    list
      .map(item => ({ item, rank: next() }))
      .sort((a, b) => a.rank - b.rank)
      .map(({ item }) => item);
  return { next, below, chance: part => next() < part, pick, shuffled };
}
