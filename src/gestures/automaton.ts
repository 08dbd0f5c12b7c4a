import type { Gesture } from '../language/model.js';

/**
 * A gesture as numbers: one small automaton that is stepped once a read. `SEMANTICS.md` (Gestures) is its law.
 */
export interface GestureSpec {
  readonly kind: Gesture['kind'];
  /** The time in reads, at least 1; 1 where the gesture has none. */
  readonly reads: number;
}

/** `press`, `hold` and the like look at a control that is engaged or not; `at`, `flip` and `turn` at a position. */
export function isPositional(kind: Gesture['kind']): boolean {
  return kind === 'at' || kind === 'flip' || kind === 'flip to' || kind === 'turn';
}

/** `held` and the positional gestures carry over into a mode; for the others the release-first rule holds. */
export function carriesOver(kind: Gesture['kind']): boolean {
  return kind === 'held' || isPositional(kind);
}

/** A gesture that can never fire: no control is let go, or pressed again, sooner than one read later. */
export function isImpossible({ kind, reads }: GestureSpec): boolean {
  return (kind === 'tap' || kind === 'double tap') && reads === 1;
}

/** How many states the automaton has; they are numbered from 0, which is rest. */
export function stateCount({ kind, reads }: GestureSpec): number {
  switch (kind) {
    case 'press':
    case 'release':
      return 2;
    case 'hold':
    case 'tap':
      return reads + 1;
    case 'double tap':
      return 2 * (reads + 1);
    case 'repeat':
      return reads;
    default:
      return 1;
  }
}

/**
 * One read of one gesture.
 *
 * @param state from 0 (rest) to `stateCount − 1`
 * @param is whether the control is engaged; for `at P`: the switch is in P; for `flip`, `flip to P`, `turn`: it
 *   was moved since the read before (and is in P now)
 * @returns twice the next state, plus 1 where it fires
 */
export function stepGesture(spec: GestureSpec, state: number, is: boolean): number {
  switch (spec.kind) {
    case 'press':
      return is ? 2 + (state === 0 ? 1 : 0) : 0;
    case 'release':
      return is ? 2 : state;
    case 'held':
    case 'at':
    case 'flip':
    case 'flip to':
    case 'turn':
      return is ? 1 : 0;
    case 'hold':
      return stepHold(spec.reads, state, is);
    case 'tap':
      return stepTap(spec.reads, state, is);
    case 'double tap':
      return stepDoubleTap(spec.reads, state, is);
    case 'repeat':
      return stepRepeat(spec.reads, state, is);
    default:
      return spec.kind satisfies never;
  }
}

/** State: reads engaged in a row, up to `reads`. */
function stepHold(reads: number, run: number, is: boolean): number {
  if (!is) return 0;
  if (run === reads) return 2 * run;
  return 2 * (run + 1) + (run + 1 === reads ? 1 : 0);
}

/** State: reads engaged in a row, up to `reads` (too long for a tap). */
function stepTap(reads: number, run: number, is: boolean): number {
  if (is) return 2 * Math.min(run + 1, reads);
  return run > 0 && run < reads ? 1 : 0;
}

/**
 * State: 1 while engaged, plus twice the age of a press that may be a first one: the reads from it to the next
 * read, 1 to `reads`; 0 where there is none (or it was itself a second press).
 */
function stepDoubleTap(reads: number, state: number, is: boolean): number {
  const age = state >> 1;
  if (is && (state & 1) === 0) return age > 0 ? 2 * engagedAt(0) + 1 : 2 * engagedAt(1);
  const older = age === 0 || age === reads ? 0 : age + 1;
  return 2 * (is ? engagedAt(older) : 2 * older);
}

const engagedAt = (age: number): number => 1 + 2 * age;

/** State: reads that must still pass before it can come due. */
function stepRepeat(reads: number, wait: number, is: boolean): number {
  if (is && wait === 0) return 2 * (reads - 1) + 1;
  return 2 * Math.max(wait - 1, 0);
}
