import { CYCLES_PER_LINE, cpuClock, frameRate, type TvStandard, toNumber } from './clocks.js';
import { KEYPAD } from './keypad.js';
import { PADDLE, WHEEL } from './turning.js';

/** The wait between driving a keypad row and reading its columns. */
export interface SettlingTime {
  /** Whole CPU cycles, rounded up. */
  readonly cycles: number;
  /** Whole scan lines, rounded up. */
  readonly lines: number;
}

const MICROSECONDS_PER_SECOND = 1_000_000n;

/** Exact: no rounding before the ceiling. */
export function keypadSettling(standard: TvStandard): SettlingTime {
  const { numerator, denominator } = cpuClock(standard);
  const wait = BigInt(KEYPAD.settleMicroseconds) * numerator;
  const cycles = Number(ceilDivide(wait, MICROSECONDS_PER_SECOND * denominator));
  return { cycles, lines: Math.ceil(cycles / CYCLES_PER_LINE) };
}

const ceilDivide = (a: bigint, b: bigint): bigint => (a + b - 1n) / b;

/** How much of a paddle's turn is seen when its pot is dumped and counted once a read. */
export interface PaddleReach {
  /** Scan lines between two reads: all there are to dump and to count. */
  readonly lines: number;
  /** The part of the knob's turn that charges within them, 0 to 1; at most: the dump takes lines too. */
  readonly part: number;
  /** The same in degrees of turn. */
  readonly degrees: number;
}

/** @param every frames between two reads, at least 1 */
export function paddleReach({ linesPerFrame }: TvStandard, every: number): PaddleReach {
  const lines = linesPerFrame * every;
  const part = Math.min(1, lines / PADDLE.linesAtFarEnd);
  return { lines, part, degrees: part * PADDLE.degrees };
}

/**
 * Turns a second of a wheel that can still be followed: one step between two reads at most.
 *
 * @param every frames between two reads, at least 1
 */
export function wheelTurnsPerSecond(standard: TvStandard, every: number): number {
  return toNumber(frameRate(standard)) / every / WHEEL.stepsPerTurn;
}
