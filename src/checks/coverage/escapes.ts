import { type Diagrams, maskOfOne } from './diagrams.js';
import type { Projection } from './projection.js';

/** By mode number: a reachable state from which there is no way; null where there is none such. */
export interface Escapes {
  /** No way to any other mode. */
  readonly stuck: readonly (Trap | null)[];
  /** No way to the start mode or a menu. */
  readonly stale: readonly (Trap | null)[];
}

/** A state as the values of the levels; −1 where the value of a level, by itself, makes no difference. */
export type Trap = readonly number[];

/** @param isFresh by mode number, whether it is the start mode or a menu */
export function findEscapes(
  projection: Projection,
  diagrams: Diagrams,
  reached: readonly number[],
  isFresh: readonly boolean[],
): Escapes {
  const someOutside = (set: number, safe: number) => findTrap(set, diagrams.minus(set, safe), diagrams);
  const fresh = statesThatCanFreshen(projection, diagrams, isFresh);
  return {
    stuck: reached.map((set, mode) =>
      set === 0 ? null : someOutside(set, statesThatCanLeave(mode, projection, diagrams)),
    ),
    stale: reached.map((set, mode) => someOutside(set, fresh[mode] ?? 0)),
  };
}

function findTrap(reached: number, bad: number, diagrams: Diagrams): Trap | null {
  const state = diagrams.find(bad, []);
  if (state === null) return null;
  const has = (set: number, level: number, value: number): boolean =>
    diagrams.find(
      set,
      state.map((own, at) => maskOfOne(diagrams.sizes[at] ?? 0, at === level ? value : own)),
    ) !== null;
  return state.map((own, level) => {
    for (let value = 0; value < (diagrams.sizes[level] ?? 0); value++)
      if (has(reached, level, value) && !has(bad, level, value)) return own;
    return -1;
  });
}

function statesThatCanLeave(mode: number, { modes }: Projection, diagrams: Diagrams): number {
  let safe = 0;
  for (let before = -1; before !== safe; ) {
    before = safe;
    for (const { change, to } of modes[mode] ?? [])
      safe = diagrams.union(safe, diagrams.before(change, to === mode ? safe : diagrams.full));
  }
  return safe;
}

function statesThatCanFreshen(
  { modes }: Projection,
  diagrams: Diagrams,
  isFresh: readonly boolean[],
): readonly number[] {
  const safe = isFresh.map(each => (each ? diagrams.full : 0));
  for (let isGrowing = true; isGrowing; ) {
    isGrowing = false;
    for (const [mode, edges] of modes.entries()) {
      const before = safe[mode] ?? 0;
      if (before === diagrams.full) continue;
      let after = before;
      for (const { change, to } of edges)
        after = diagrams.union(after, diagrams.before(change, (to === mode ? after : safe[to]) ?? 0));
      if (after === before) continue;
      safe[mode] = after;
      isGrowing = true;
    }
  }
  return safe;
}
