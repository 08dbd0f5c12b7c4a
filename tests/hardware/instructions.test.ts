import { describe, expect, it } from 'vitest';
import {
  type Addressing,
  branch,
  bytesOf,
  cyclesOf,
  INSTRUCTION_SOURCE,
  type Instruction,
  onMemory,
  onValue,
  TAKEN_CYCLES,
} from '../../src/hardware/instructions.js';

/** MCS6500 family programming manual (1976), summary of the instructions: bytes and cycles by addressing. */
const COSTS: readonly (readonly [Addressing, number, number])[] = [
  ['immediate', 2, 2],
  ['zero page', 2, 3],
  ['absolute', 3, 4],
  ['relative', 2, 2],
];
const one = (addressing: Addressing): Instruction => ({ mnemonic: 'LDA', addressing, operand: '' });

describe('the cost of instructions', () => {
  it.each(COSTS)('%s is %i bytes and %i cycles', (addressing, bytes, cycles) => {
    expect(bytesOf([one(addressing)])).toBe(bytes);
    expect(cyclesOf([one(addressing)])).toBe(cycles);
  });

  it('adds up', () => {
    const all = COSTS.map(([addressing]) => one(addressing));
    expect(bytesOf(all)).toBe(9);
    expect(cyclesOf(all)).toBe(11);
  });

  it('of no instruction is nothing', () => {
    expect([bytesOf([]), cyclesOf([])]).toEqual([0, 0]);
  });

  it('of a branch is one cycle more when it is taken within a page', () => {
    expect(TAKEN_CYCLES).toBe(1);
  });

  it('comes from the programming manual', () => {
    expect(INSTRUCTION_SOURCE).toStrictEqual({ key: 'M' });
  });
});

describe('an instruction', () => {
  it.each([
    [0x00, 'zero page'],
    [0xff, 'zero page'],
    [0x100, 'absolute'],
    [0x280, 'absolute'],
  ])('on address %i is %s', (address, addressing) => {
    expect(onMemory('BIT', 'SWCHA', address)).toEqual({ mnemonic: 'BIT', addressing, operand: 'SWCHA' });
  });

  it.each([
    [0x00, '#$00'],
    [0x0a, '#$0A'],
    [0x0f, '#$0F'],
    [0x10, '#$10'],
    [0xfe, '#$FE'],
  ])('on the value %i is written with two hexadecimal digits', (value, operand) => {
    expect(onValue('LDA', value)).toEqual({ mnemonic: 'LDA', addressing: 'immediate', operand });
  });

  it('that branches names its label', () => {
    expect(branch('BNE', 'skip')).toEqual({ mnemonic: 'BNE', addressing: 'relative', operand: 'skip' });
  });
});
