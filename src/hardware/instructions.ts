import { fromSource } from './source.js';

/** The instructions that the tests of this project use. */
export type Mnemonic = 'BIT' | 'LDA' | 'AND' | 'EOR' | 'CMP' | 'STA' | 'BEQ' | 'BNE' | 'BMI' | 'BPL';

/** How an instruction finds its operand. */
export type Addressing = 'immediate' | 'zero page' | 'absolute' | 'relative';

export interface Instruction {
  readonly mnemonic: Mnemonic;
  readonly addressing: Addressing;
  /** As an assembler takes it: `#$10`, `SWCHA`, `skip`. */
  readonly operand: string;
}

/** Bytes and cycles by addressing; a branch costs one cycle more when taken, two when that crosses a page. */
const COSTS: Readonly<Record<Addressing, { readonly bytes: number; readonly cycles: number }>> = {
  immediate: { bytes: 2, cycles: 2 },
  'zero page': { bytes: 2, cycles: 3 },
  absolute: { bytes: 3, cycles: 4 },
  relative: { bytes: 2, cycles: 2 },
};

export const INSTRUCTION_SOURCE = fromSource('M');

/** Cycles a taken branch adds within a page. */
export const TAKEN_CYCLES = 1;

export function bytesOf(instructions: readonly Instruction[]): number {
  return instructions.reduce((sum, { addressing }) => sum + COSTS[addressing].bytes, 0);
}

/** Cycles when no branch is taken. */
export function cyclesOf(instructions: readonly Instruction[]): number {
  return instructions.reduce((sum, { addressing }) => sum + COSTS[addressing].cycles, 0);
}

/** Below this address an operand is reached in zero page, one byte and one cycle cheaper. */
const ZERO_PAGE_END = 0x100;

/** An instruction on a register or a variable: zero page where its address allows. */
export function onMemory(mnemonic: Mnemonic, operand: string, address: number): Instruction {
  return { mnemonic, addressing: address < ZERO_PAGE_END ? 'zero page' : 'absolute', operand };
}

export function onValue(mnemonic: Mnemonic, value: number): Instruction {
  const hex = value.toString(16).toUpperCase().padStart(2, '0');
  return { mnemonic, addressing: 'immediate', operand: `#$${hex}` };
}

export function branch(mnemonic: Mnemonic, label: string): Instruction {
  return { mnemonic, addressing: 'relative', operand: label };
}
