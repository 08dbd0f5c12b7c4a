import { fromSource } from './source.js';

/** Paddle: a pot that charges its line. Counted in scan lines from the end of the dump until D7 reads 1. */
export const PADDLE = {
  /** Scan lines from one end of the knob to the other (from memory). */
  linesAtFarEnd: 380,
  /** Degrees of turn (common practice, no source). */
  degrees: 330,
  sources: [fromSource('G', 'PIA 5.4'), fromSource('G', 'TIA 12.1'), fromSource('R'), fromSource('P')],
} as const;

/** Wheel: two-bit Gray code, high line then low line. All from memory. */
export const WHEEL = {
  stepsPerTurn: 16,
  /** Successive codes turning clockwise; after the last comes the first again. */
  clockwise: [3, 1, 0, 2],
  sources: [fromSource('R')],
} as const;
