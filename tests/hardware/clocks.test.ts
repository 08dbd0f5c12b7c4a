import { describe, expect, it } from 'vitest';
import {
  CYCLES_PER_LINE,
  cpuClock,
  type Fraction,
  frameRate,
  STANDARDS,
  type StandardName,
  toNumber,
} from '../../src/hardware/clocks.js';
import { citeAll } from './cite.js';

/** A fraction in its lowest terms, so that two that are equal are written alike. */
function lowest({ numerator, denominator }: Fraction): Fraction {
  let [a, b] = [numerator, denominator];
  while (b > 0n) [a, b] = [b, a % b];
  return { numerator: numerator / a, denominator: denominator / a };
}

const fraction = (numerator: bigint, denominator: bigint): Fraction => lowest({ numerator, denominator });

/** The colour clocks as the design writes them: 315/88 MHz, and 4/5 of 4.43361875 MHz. */
const NTSC_CLOCK = fraction(315_000_000n, 88n);
const PAL_CLOCK = fraction(4n * 443_361_875n, 5n * 100n);

/**
 * The colour subcarriers as the standards derive them from the line rate.
 * SMPTE 170M: 455/2 of the line rate, which is 4.5 MHz / 286.
 * ITU-R BT.1700: 1135/4 + 1/625 of the line rate, which is 15625 Hz.
 */
const NTSC_SUBCARRIER = fraction(455n * 4_500_000n, 2n * 286n);
const PAL_SUBCARRIER = fraction((1135n * 625n + 4n) * 15_625n, 4n * 625n);

type Row = readonly [name: StandardName, colourClock: Fraction, lines: number, rate: bigint, cpu: number];

/** Frame rates in whole 1/10000 Hz, cut off, not rounded; CPU clocks in hertz, rounded. */
const ROWS: readonly Row[] = [
  ['NTSC', NTSC_CLOCK, 262, 599_227n, 1_193_182],
  ['PAL', PAL_CLOCK, 312, 498_607n, 1_182_298],
  ['SECAM', PAL_CLOCK, 312, 498_607n, 1_182_298],
];

describe('the colour clock', () => {
  const clockOf = (name: StandardName) => lowest(STANDARDS[name].colourClock);

  it('of NTSC is the subcarrier of SMPTE 170M', () => {
    expect(clockOf('NTSC')).toEqual(NTSC_SUBCARRIER);
  });

  it.each(['PAL', 'SECAM'] as const)('of %s is 4/5 of the PAL subcarrier of ITU-R BT.1700', name => {
    expect(clockOf(name)).toEqual(fraction(4n * PAL_SUBCARRIER.numerator, 5n * PAL_SUBCARRIER.denominator));
  });
});

describe.each(ROWS)('%s', (name, colourClock, lines, rate, cpu) => {
  const standard = STANDARDS[name];

  it('has its colour clock, exactly', () => {
    expect(standard.name).toBe(name);
    expect(lowest(standard.colourClock)).toEqual(colourClock);
  });

  it('has 228 colour clocks a line and its lines a frame (programmer’s guide [TIA 3])', () => {
    expect(standard.clocksPerLine).toBe(228);
    expect(standard.linesPerFrame).toBe(lines);
  });

  it('has its frame rate, exactly and as it is written', () => {
    const { numerator, denominator } = colourClock;
    expect(lowest(frameRate(standard))).toEqual(fraction(numerator, denominator * 228n * BigInt(lines)));
    const found = frameRate(standard);
    expect((found.numerator * 10_000n) / found.denominator).toBe(rate);
    expect(toNumber(found)).toBeCloseTo(Number(rate) / 10_000, 3);
  });

  it('has a third of the colour clock as its CPU clock', () => {
    const { numerator, denominator } = colourClock;
    expect(lowest(cpuClock(standard))).toEqual(fraction(numerator, 3n * denominator));
    expect(Math.round(toNumber(cpuClock(standard)))).toBe(cpu);
  });

  it('cites the video standards and the guide', () => {
    expect(citeAll(standard.sources)).toEqual(['V', 'G [TIA 3]']);
  });
});

describe('the clocks', () => {
  it('know these three standards', () => {
    expect(Object.keys(STANDARDS)).toEqual(['NTSC', 'PAL', 'SECAM']);
  });

  it('give a line 76 CPU cycles: a third of its colour clocks', () => {
    expect(CYCLES_PER_LINE).toBe(76);
    expect(CYCLES_PER_LINE * 3).toBe(STANDARDS.NTSC.clocksPerLine);
  });

  it('show a fraction as the nearest number', () => {
    expect(toNumber({ numerator: 3n, denominator: 4n })).toBe(0.75);
    expect(toNumber({ numerator: 0n, denominator: 7n })).toBe(0);
  });
});
