import { describe, expect, it } from 'vitest';
import {
  type CpuTest,
  changeTest,
  levelsTest,
  paddleTest,
  SKIP_LABEL,
  type TestedBit,
  type WantedLevel,
  wheelTest,
} from '../../src/hardware/cpu-test.js';
import { runTest } from './run-test.js';
import { wireIn } from './wires.js';

const KEPT = 0x90;
const BYTES = Array.from({ length: 256 }, (_, byte) => byte);

const bitOf = (register: string, address: number, bit: number): TestedBit => ({
  register,
  address,
  mask: 2 ** bit,
});
const swcha = (bit: number) => bitOf('SWCHA', 0x280, bit);
const inpt4 = bitOf('INPT4', 0x0c, 7);
const wants = (bit: TestedBit, reads: 0 | 1): WantedLevel => ({ bit, reads });

const codeOf = ({ instructions }: CpuTest): readonly string[] =>
  instructions.map(({ mnemonic, operand }) => `${mnemonic} ${operand}`);

/** MCS6500 family programming manual (1976): BIT copies bit 7 to N; Z is set when accumulator AND byte is 0. */
describe('the test of one level', () => {
  it.each<[string, WantedLevel, readonly string[], readonly number[]]>([
    ['0 on D7 in zero page', wants(inpt4, 0), ['BIT INPT4', 'BMI skip'], [4, 5, 6]],
    ['1 on D7 in zero page', wants(inpt4, 1), ['BIT INPT4', 'BPL skip'], [4, 5, 6]],
    ['0 on D7, absolute', wants(swcha(7), 0), ['BIT SWCHA', 'BMI skip'], [5, 6, 7]],
    ['1 on D7, absolute', wants(swcha(7), 1), ['BIT SWCHA', 'BPL skip'], [5, 6, 7]],
    ['0 on D6', wants(swcha(6), 0), ['LDA #$40', 'BIT SWCHA', 'BNE skip'], [7, 8, 9]],
    ['1 on D6', wants(swcha(6), 1), ['LDA #$40', 'BIT SWCHA', 'BEQ skip'], [7, 8, 9]],
    ['0 on D0', wants(swcha(0), 0), ['LDA #$01', 'BIT SWCHA', 'BNE skip'], [7, 8, 9]],
    ['1 on D3', wants(swcha(3), 1), ['LDA #$08', 'BIT SWCHA', 'BEQ skip'], [7, 8, 9]],
  ])('for %s goes on when the bit has it, for every byte', (_, level, code, [bytes, engaged, idle]) => {
    const test = levelsTest([level]);
    expect(codeOf(test)).toEqual(code);
    expect(test).toMatchObject({ bytes, engagedCycles: engaged, idleCycles: { least: idle, most: idle } });
    const { register, address, mask } = level.bit;
    for (const value of BYTES) {
      const isEngaged = ((value & mask) === 0 ? 0 : 1) === level.reads;
      const run = runTest(test, { [register]: { address, value } });
      expect([value, run]).toEqual([value, { wentOn: isEngaged, cycles: isEngaged ? engaged : idle }]);
    }
  });

  it.each([
    [wants(inpt4, 0), 'INPT4', /BIT copies D7 to N; 1 is not engaged, so BMI skips/],
    [wants(inpt4, 1), 'INPT4', /BIT copies D7 to N; 0 is not engaged, so BPL skips/],
    [wants(swcha(4), 0), 'SWCHA', /BIT sets Z when the masked bit is 0; 1 is not engaged, so BNE skips/],
    [wants(swcha(4), 1), 'SWCHA', /BIT sets Z when the masked bit is 0; 0 is not engaged, so BEQ skips/],
  ])('says why its branch has its polarity', (level, register, why) => {
    const { reasons } = levelsTest([level]);
    expect(reasons).toEqual([{ register, why: expect.stringMatching(why) }]);
  });
});

describe('the test of several levels', () => {
  const holds = (levels: readonly WantedLevel[], value: number): boolean =>
    levels.every(({ bit, reads }) => ((value & bit.mask) === 0 ? 0 : 1) === reads);

  it.each<[string, readonly WantedLevel[], readonly string[]]>([
    [
      'tests bits of one register that must all be 0 together',
      [wants(swcha(4), 0), wants(swcha(6), 0)],
      ['LDA #$50', 'BIT SWCHA', 'BNE skip'],
    ],
    [
      'tests D7 with another bit by the mask, not by the sign',
      [wants(swcha(7), 0), wants(swcha(0), 0)],
      ['LDA #$81', 'BIT SWCHA', 'BNE skip'],
    ],
    [
      'tests a 1 behind a 0 of the same register apart',
      [wants(swcha(4), 0), wants(swcha(5), 1)],
      ['LDA #$10', 'BIT SWCHA', 'BNE skip', 'LDA #$20', 'BIT SWCHA', 'BEQ skip'],
    ],
    [
      'tests a 0 behind a 1 of the same register apart',
      [wants(swcha(5), 1), wants(swcha(4), 0)],
      ['LDA #$20', 'BIT SWCHA', 'BEQ skip', 'LDA #$10', 'BIT SWCHA', 'BNE skip'],
    ],
    [
      'tests two that must be 1 apart',
      [wants(swcha(1), 1), wants(swcha(2), 1)],
      ['LDA #$02', 'BIT SWCHA', 'BEQ skip', 'LDA #$04', 'BIT SWCHA', 'BEQ skip'],
    ],
    [
      'joins a 0 to that before a 1',
      [wants(swcha(0), 0), wants(swcha(7), 1), wants(swcha(3), 0)],
      ['LDA #$09', 'BIT SWCHA', 'BNE skip', 'BIT SWCHA', 'BPL skip'],
    ],
  ])('%s', (_, levels, code) => {
    const test = levelsTest(levels);
    expect(codeOf(test)).toEqual(code);
    for (const value of BYTES)
      expect([value, runTest(test, { SWCHA: { address: 0x280, value } }).wentOn]).toEqual([
        value,
        holds(levels, value),
      ]);
  });

  it('says of a joined test that all must be engaged, of a lone bit what it said before', () => {
    const { reasons } = levelsTest([wants(swcha(4), 0), wants(inpt4, 0), wants(swcha(6), 0)]);
    expect(reasons).toEqual([
      {
        register: 'SWCHA',
        why: expect.stringMatching(/none of the masked bits is 1.*all are engaged.*BNE skips/),
      },
      { register: 'INPT4', why: expect.stringMatching(/BMI skips/) },
    ]);
  });

  /** 3 and 2 cycles to the first branch, one more as it is taken; behind it 2, 4 and 2, one more if taken. */
  it('keeps two registers apart and costs more the later it skips', () => {
    const test = levelsTest([wants(inpt4, 0), wants(swcha(4), 0)]);
    expect(codeOf(test)).toEqual(['BIT INPT4', 'BMI skip', 'LDA #$10', 'BIT SWCHA', 'BNE skip']);
    expect(test).toMatchObject({ bytes: 11, engagedCycles: 13, idleCycles: { least: 6, most: 14 } });
    const run = (button: number, stick: number) =>
      runTest(test, { INPT4: { address: 0x0c, value: button }, SWCHA: { address: 0x280, value: stick } });
    expect(run(0x00, 0xef)).toEqual({ wentOn: true, cycles: 13 });
    expect(run(0x80, 0xef)).toEqual({ wentOn: false, cycles: 6 });
    expect(run(0x00, 0xff)).toEqual({ wentOn: false, cycles: 14 });
  });
});

/** Programming manual: CMP sets Z when accumulator and byte are equal; EOR leaves 1 where two bits differ. */
describe('the test of a change', () => {
  it('of a wheel looks at its two bits alone, and at what was kept of them', () => {
    const wire = wireIn('left', 'wheel', 'wheel');
    if (wire.kind !== 'gray') throw new Error('the wheel has no code');
    const test = wheelTest(wire, 'keptWheel');
    expect(codeOf(test)).toEqual(['LDA SWCHA', 'AND #$30', 'CMP keptWheel', 'BEQ skip']);
    expect(test).toMatchObject({ bytes: 9, engagedCycles: 11, idleCycles: { least: 12, most: 12 } });
    expect(test.reasons).toEqual([
      {
        register: 'keptWheel',
        why: expect.stringMatching(/CMP sets Z.*code is still.*read before.*BEQ skips/),
      },
    ]);
    for (const value of BYTES)
      for (const kept of [0x00, 0x10, 0x20, 0x30]) {
        const held = { SWCHA: { address: 0x280, value }, keptWheel: { address: KEPT, value: kept } };
        const hasTurned = (value & 0x30) !== kept;
        expect(runTest(test, held)).toEqual({ wentOn: hasTurned, cycles: hasTurned ? 11 : 12 });
      }
  });

  it('of one bit passes over what else the register and the kept byte hold', () => {
    const test = changeTest(bitOf('SWCHB', 0x282, 6), 'keptSwitches');
    expect(codeOf(test)).toEqual(['LDA SWCHB', 'EOR keptSwitches', 'AND #$40', 'BEQ skip']);
    expect(test).toMatchObject({ bytes: 9, engagedCycles: 11, idleCycles: { least: 12, most: 12 } });
    expect(test.reasons).toEqual([
      {
        register: 'keptSwitches',
        why: expect.stringMatching(/EOR leaves 1.*differs.*AND sets Z.*BEQ skips/),
      },
    ]);
    for (const value of BYTES)
      for (const kept of [0x00, 0x40, 0xbf, 0xff]) {
        const held = { SWCHB: { address: 0x282, value }, keptSwitches: { address: KEPT, value: kept } };
        const hasMoved = (value & 0x40) !== (kept & 0x40);
        expect(runTest(test, held)).toEqual({ wentOn: hasMoved, cycles: hasMoved ? 11 : 12 });
      }
  });

  it('of a paddle compares two counts', () => {
    const test = paddleTest('count', 'keptCount');
    expect(codeOf(test)).toEqual(['LDA count', 'CMP keptCount', 'BEQ skip']);
    expect(test).toMatchObject({ bytes: 6, engagedCycles: 8, idleCycles: { least: 9, most: 9 } });
    expect(test.reasons).toEqual([
      {
        register: 'keptCount',
        why: expect.stringMatching(/CMP sets Z.*count is still.*read before.*BEQ skips/),
      },
    ]);
    for (const value of BYTES)
      for (const kept of [0, 127, 255]) {
        const held = { count: { address: 0x91, value }, keptCount: { address: KEPT, value: kept } };
        const hasTurned = value !== kept;
        expect(runTest(test, held)).toEqual({ wentOn: hasTurned, cycles: hasTurned ? 8 : 9 });
      }
  });
});

it('every branch of a test leads to the label', () => {
  expect(SKIP_LABEL).toBe('skip');
});
