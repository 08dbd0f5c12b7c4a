import type { CpuTest } from '../../src/hardware/cpu-test.js';
import { createCpu } from '../support/cpu.js';

/** Opcodes of the MCS6500 family programming manual (1976), appendix on the instructions by addressing. */
const OPCODES: Readonly<Record<string, number>> = {
  'BIT zero page': 0x24,
  'BIT absolute': 0x2c,
  'LDA immediate': 0xa9,
  'LDA zero page': 0xa5,
  'LDA absolute': 0xad,
  'AND immediate': 0x29,
  'EOR zero page': 0x45,
  'CMP zero page': 0xc5,
  'BEQ relative': 0xf0,
  'BNE relative': 0xd0,
  'BMI relative': 0x30,
  'BPL relative': 0x10,
};
const INC_ZERO_PAGE = 0xe6;
const RTS = 0x60;
/** The byte that the code behind the test counts up: the test went on. */
const MARK = 0xf0;
/** The code stands behind the registers of the 6532, in a page of its own. */
const ORIGIN = 0x300;
const MEMORY_BYTES = 0x400;
/** JSR and RTS, 6 cycles each; INC in zero page, 5. */
const CALL_CYCLES = 12;
const MARK_CYCLES = 5;

export interface TestRun {
  readonly wentOn: boolean;
  /** Of the test alone. */
  readonly cycles: number;
}

/** What an address holds, by its symbol. */
export type Bytes = Readonly<Record<string, { readonly address: number; readonly value: number }>>;

/** Assembles the test, an INC that shows that it went on, and its label; then runs it. */
export function runTest({ instructions, bytes }: CpuTest, held: Bytes): TestRun {
  const memory = new Uint8Array(MEMORY_BYTES);
  for (const { address, value } of Object.values(held)) memory[address] = value;
  const skip = ORIGIN + bytes + 2;
  const code: number[] = [];
  for (const { mnemonic, addressing, operand } of instructions) {
    const opcode = OPCODES[`${mnemonic} ${addressing}`];
    if (opcode === undefined) throw new Error(`no opcode for ${mnemonic} ${addressing}`);
    const next = ORIGIN + code.length + 2;
    if (addressing === 'relative' && operand === 'skip') code.push(opcode, skip - next);
    else if (addressing === 'immediate') code.push(opcode, Number.parseInt(operand.slice(2), 16));
    else code.push(opcode, ...addressBytes(addressOf(operand, held), addressing === 'absolute'));
  }
  if (code.length !== bytes) throw new Error(`${code.length} bytes, ${bytes} are stated`);
  memory.set([...code, INC_ZERO_PAGE, MARK, RTS], ORIGIN);
  const cycles = createCpu(memory).call(ORIGIN) - CALL_CYCLES;
  const wentOn = memory[MARK] === 1;
  return { wentOn, cycles: wentOn ? cycles - MARK_CYCLES : cycles };
}

function addressOf(symbol: string, held: Bytes): number {
  const found = held[symbol];
  if (found === undefined) throw new Error(`no address for ${symbol}`);
  return found.address;
}

const addressBytes = (address: number, isAbsolute: boolean): readonly number[] =>
  isAbsolute ? [address & 0xff, address >> 8] : [address];
