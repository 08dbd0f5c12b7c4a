import type { Binding } from '../../gestures/bindings.js';
import type { Play } from '../../gestures/play.js';
import {
  gestureReads,
  isMomentary,
  isSame,
  ordersOf,
  partIndices,
  readsOfBinding,
  searchReads,
  withLevels,
} from './sequences.js';
import { type Levels, runReads, type Situation } from './situation.js';

/** Reads and where they begin. */
export interface Shortest {
  readonly situation: Situation;
  readonly reads: readonly Levels[];
}

/** Parts in any order, the first by which it fires at the last read; else whatever a search finds. */
export function shortestReads(play: Play, binding: Binding, situation: Situation): Shortest | null {
  const reads = shortestTime(play, binding);
  for (const order of ordersOf(partIndices(play, binding))) {
    const made = gestureReads(play, binding, situation.before, order, reads);
    const begun = beginning(play, binding, situation, made);
    const { fired } = runReads(play, begun, made);
    if (fired.length === made.length && fired.at(-1)?.some(each => isSame(each, binding)))
      return { situation: begun, reads: made };
  }
  const found = searchReads(play, binding, situation);
  return found === null ? null : { situation, reads: found };
}

/** Reads of the shortest way to make a gesture: a tap and a double tap need not take all their time. */
function shortestTime(play: Play, binding: Binding): number {
  const { kind } = binding.gesture;
  return kind === 'tap' || kind === 'double tap' ? 2 : readsOfBinding(play, binding);
}

/** What has a position is where the first read has it: nothing has been moved yet. */
export function beginning(
  play: Play,
  binding: Binding,
  situation: Situation,
  reads: readonly Levels[],
): Situation {
  const [first] = reads;
  const [index] = partIndices(play, binding);
  if (first === undefined || index === undefined || isMomentary(play, index)) return situation;
  return { ...situation, before: withLevels(situation.before, new Map([[index, first[index] ?? 0]])) };
}
