import { describe, expect, it } from 'vitest';
import { keypadSettling, paddleReach, wheelTurnsPerSecond } from '../../src/hardware/analog.js';
import { STANDARDS, type TvStandard } from '../../src/hardware/clocks.js';

/** A made-up standard with a CPU clock that comes out even, in thousandths of a hertz. */
const withCpuClock = (millihertz: bigint): TvStandard => ({
  ...STANDARDS.NTSC,
  colourClock: { numerator: 3n * millihertz, denominator: 1000n },
});

const withLines = (linesPerFrame: number): TvStandard => ({ ...STANDARDS.NTSC, linesPerFrame });

/** 400 µs (programmer's guide [PIA 5.5]; the figure is from memory) by the CPU clock, rounded up. */
describe('the wait for a keypad’s row', () => {
  it.each([
    ['NTSC', 478, 7],
    ['PAL', 473, 7],
    ['SECAM', 473, 7],
  ] as const)('on %s is %i cycles or %i lines', (name, cycles, lines) => {
    expect(keypadSettling(STANDARDS[name])).toEqual({ cycles, lines });
  });

  it.each([
    ['falls on a whole cycle', 1_000_000_000n, 400, 6],
    ['falls on a whole line', 950_000_000n, 380, 5],
    ['goes a little beyond a whole cycle', 1_000_000_001n, 401, 6],
    ['goes a little beyond a whole line', 950_000_001n, 381, 6],
    ['stays a little below a whole cycle', 949_999_999n, 380, 5],
  ])('is rounded up and no further where it %s', (_, millihertz, cycles, lines) => {
    expect(keypadSettling(withCpuClock(millihertz))).toEqual({ cycles, lines });
  });
});

/** 380 lines to the far end (from memory), 330 degrees (common practice, no source). */
describe('the reach of a paddle', () => {
  it('ends within the frame where pots are read every frame', () => {
    const { lines, part, degrees } = paddleReach(STANDARDS.NTSC, 1);
    expect(lines).toBe(262);
    expect(part).toBeCloseTo(262 / 380, 12);
    expect(degrees).toBeCloseTo((262 * 330) / 380, 9);
  });

  it('is the whole turn where pots are read every second frame', () => {
    expect(paddleReach(STANDARDS.NTSC, 2)).toEqual({ lines: 524, part: 1, degrees: 330 });
  });

  it.each([
    [379, 379 / 380],
    [380, 1],
    [381, 1],
  ])('with %i lines between two reads is at most the whole turn', (lines, part) => {
    const reach = paddleReach(withLines(lines), 1);
    expect(reach.lines).toBe(lines);
    expect(reach.part).toBeCloseTo(part, 12);
    expect(reach.part).toBeLessThanOrEqual(1);
    expect(reach.degrees).toBeCloseTo(part * 330, 9);
  });
});

/** One step between two reads, 16 steps to the turn (from memory). */
describe('the fastest turn of a wheel that can be followed', () => {
  it('at 60 reads a second is 3.75 turns a second', () => {
    const sixty: TvStandard = {
      ...STANDARDS.NTSC,
      colourClock: { numerator: 60n * 228n * 262n, denominator: 1n },
    };
    expect(wheelTurnsPerSecond(sixty, 1)).toBe(3.75);
    expect(wheelTurnsPerSecond(sixty, 3)).toBe(1.25);
  });

  it('goes by the console’s own frame rate', () => {
    expect(wheelTurnsPerSecond(STANDARDS.NTSC, 1)).toBeCloseTo(59.9227 / 16, 5);
    expect(wheelTurnsPerSecond(STANDARDS.PAL, 2)).toBeCloseTo(49.8607 / 32, 5);
  });
});
