/** `next[level]` as in `Change.touches`; null where the level is not touched. */
export interface LevelChange {
  /** From 0, one for each different change. */
  readonly id: number;
  readonly next: readonly (readonly number[] | null)[];
  /** The last level touched; −1 where none is. */
  readonly last: number;
}

/** By level: which values will do; null where all will. */
export type Masks = readonly (readonly boolean[] | null)[];
