import { type Fraction, frameRate, type TvStandard, toNumber } from '../hardware/clocks.js';
import type { Time } from './model.js';

/**
 * The number of reads a time takes: `ceil(T·f/p)` for seconds, `ceil(frames/p)` for frames, at least 1.
 * Exact: no rounding before the ceiling.
 *
 * @param every frames between two reads, at least 1
 */
export function readsOf(time: Time, standard: TvStandard, every: number): number {
  const { numerator, denominator } = framesOf(time, standard);
  const reads = ceilingOf({ numerator, denominator: denominator * BigInt(every) });
  return reads < 1n ? 1 : Number(reads);
}

/** Seconds that a time lasts on a standard, for display only. */
export function secondsOf(time: Time, standard: TvStandard): number {
  const amount = toNumber(time.amount);
  return time.unit === 'seconds' ? amount : amount / toNumber(frameRate(standard));
}

function framesOf(time: Time, standard: TvStandard): Fraction {
  if (time.unit === 'frames') return time.amount;
  const rate = frameRate(standard);
  return {
    numerator: time.amount.numerator * rate.numerator,
    denominator: time.amount.denominator * rate.denominator,
  };
}

function ceilingOf({ numerator, denominator }: Fraction): bigint {
  return (numerator + denominator - 1n) / denominator;
}
