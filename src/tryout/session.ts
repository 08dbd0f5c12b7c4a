import type { TraceRead } from '../handoff/trace/write-trace.js';
import type { BindingRow } from '../language/model.js';

/** All reads since power-on; equal ones in a row are kept as one, so that an hour of play stays small. */
export interface Session {
  add(levels: readonly number[], game: readonly BindingRow[]): void;
  reads(): readonly TraceRead[];
  /** How many reads that is. */
  count(): number;
}

export function createSession(): Session {
  const reads: TraceRead[] = [];
  let count = 0;
  return {
    add(levels, game) {
      const last = reads.at(-1);
      const isMore =
        last !== undefined && game.length === 0 && last.game.length === 0 && isSame(last.levels, levels);
      if (isMore) reads[reads.length - 1] = { ...last, times: last.times + 1 };
      else reads.push({ levels, game, times: 1 });
      count++;
    },
    reads: () => [...reads],
    count: () => count,
  };
}

const isSame = (one: readonly number[], other: readonly number[]): boolean =>
  one.every((level, index) => level === other[index]);

/** One by one. */
export function* eachRead(reads: readonly TraceRead[]): Generator<Omit<TraceRead, 'times'>, undefined> {
  for (const { levels, game, times } of reads)
    for (let count = 0; count < times; count++) yield { levels, game };
}
