import { describe, expect, it } from 'vitest';
import { PADDLE, WHEEL } from '../../src/hardware/turning.js';
import { citeAll } from './cite.js';

describe('the paddle', () => {
  it('charges in 380 lines at the far end (from memory)', () => {
    expect(PADDLE.linesAtFarEnd).toBe(380);
  });

  it('turns about 330 degrees (common practice, no source)', () => {
    expect(PADDLE.degrees).toBe(330);
  });

  it('cites the sections on it and says that figures are from memory', () => {
    expect(citeAll(PADDLE.sources)).toEqual(expect.arrayContaining(['G [PIA 5.4]', 'G [TIA 12.1]', 'R']));
    expect(PADDLE.sources.every(({ key }) => ['G', 'P', 'R'].includes(key))).toBe(true);
  });
});

describe('the wheel (from memory)', () => {
  it('has 16 steps to the turn, a whole number of code rounds', () => {
    expect(WHEEL.stepsPerTurn).toBe(16);
    expect(WHEEL.stepsPerTurn % WHEEL.clockwise.length).toBe(0);
  });

  it('counts 3, 1, 0, 2 clockwise', () => {
    expect(WHEEL.clockwise).toEqual([3, 1, 0, 2]);
  });

  it('changes one bit a step, as a Gray code must, from its last code to its first as well', () => {
    WHEEL.clockwise.forEach((code, index) => {
      const next = WHEEL.clockwise[(index + 1) % WHEEL.clockwise.length] ?? code;
      expect([1, 2]).toContain(code ^ next);
    });
  });

  it('says that it is from memory', () => {
    expect(citeAll(WHEEL.sources)).toEqual(['R']);
  });
});
