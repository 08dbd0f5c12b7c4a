import { fromSource, type Source } from './source.js';

export type StandardName = 'NTSC' | 'PAL' | 'SECAM';

/** A TV standard of the console. Rates are exact: a fraction of whole numbers, in hertz. */
export interface TvStandard {
  readonly name: StandardName;
  readonly colourClock: Fraction;
  readonly clocksPerLine: number;
  readonly linesPerFrame: number;
  readonly sources: readonly Source[];
}

/** An exact, non-negative fraction; the denominator is above 0. */
export interface Fraction {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

/** CPU cycles in one scan line: 228 colour clocks at three to a cycle. G [TIA 3]. */
export const CYCLES_PER_LINE = 76;
const CLOCKS_PER_LINE = 228;
const CLOCKS_PER_CYCLE = 3n;
const sources = [fromSource('V'), fromSource('G', 'TIA 3')];

/** 4/5 of the PAL subcarrier, 4.43361875 MHz. */
const PAL_COLOUR_CLOCK: Fraction = { numerator: 4n * 443361875n, denominator: 5n * 100n };

export const STANDARDS: Readonly<Record<StandardName, TvStandard>> = {
  NTSC: {
    name: 'NTSC',
    colourClock: { numerator: 315_000_000n, denominator: 88n },
    clocksPerLine: CLOCKS_PER_LINE,
    linesPerFrame: 262,
    sources,
  },
  PAL: {
    name: 'PAL',
    colourClock: PAL_COLOUR_CLOCK,
    clocksPerLine: CLOCKS_PER_LINE,
    linesPerFrame: 312,
    sources,
  },
  SECAM: {
    name: 'SECAM',
    colourClock: PAL_COLOUR_CLOCK,
    clocksPerLine: CLOCKS_PER_LINE,
    linesPerFrame: 312,
    sources,
  },
};

/** Frames a second, exact: colour clock over clocks a line times lines a frame. */
export function frameRate(standard: TvStandard): Fraction {
  const perFrame = BigInt(standard.clocksPerLine * standard.linesPerFrame);
  return {
    numerator: standard.colourClock.numerator,
    denominator: standard.colourClock.denominator * perFrame,
  };
}

/** CPU clock in hertz, exact. */
export function cpuClock(standard: TvStandard): Fraction {
  const { numerator, denominator } = standard.colourClock;
  return { numerator, denominator: denominator * CLOCKS_PER_CYCLE };
}

/** The nearest floating point number, for display only. */
export function toNumber(fraction: Fraction): number {
  return Number(fraction.numerator) / Number(fraction.denominator);
}
