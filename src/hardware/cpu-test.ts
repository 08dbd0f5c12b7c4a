import {
  branch,
  bytesOf,
  cyclesOf,
  type Instruction,
  onMemory,
  onValue,
  TAKEN_CYCLES,
} from './instructions.js';
import type { Wire } from './wiring.js';

/** A few instructions that go on when a control is engaged (or turned) and branch to `skip` when it is not. */
export interface CpuTest {
  readonly instructions: readonly Instruction[];
  readonly bytes: number;
  /** Cycles when it goes on: no branch is taken. */
  readonly engagedCycles: number;
  /** Cycles when it branches within a page: at the first branch, at the last. */
  readonly idleCycles: { readonly least: number; readonly most: number };
  /** Why each branch has its polarity, in the order of the code. */
  readonly reasons: readonly PolarityReason[];
}

/** A sentence that holds for any register, and the symbol of the one it is said of here. */
export interface PolarityReason {
  readonly register: string;
  readonly why: string;
}

/** A bit of a register, or of a byte in RAM that keeps what a register read. */
export interface TestedBit {
  /** The symbol of the register or of the byte. */
  readonly register: string;
  readonly address: number;
  readonly mask: number;
}

/** One bit and the level that counts as engaged. */
export interface WantedLevel {
  readonly bit: TestedBit;
  readonly reads: 0 | 1;
}

export const SKIP_LABEL = 'skip';
const SIGN_BIT = 7;

/**
 * Tests that every bit has its wanted level. Bits of one register that must all read 0 are tested together:
 * BIT sets Z only when none of the masked bits is 1 (M).
 */
export function levelsTest(levels: readonly WantedLevel[]): CpuTest {
  const groups = groupLevels(levels);
  return createTest(groups.flatMap(groupInstructions), groups.map(reasonOf));
}

interface LevelGroup {
  readonly bit: TestedBit;
  readonly mask: number;
  readonly reads: 0 | 1;
}

function groupLevels(levels: readonly WantedLevel[]): readonly LevelGroup[] {
  const groups: LevelGroup[] = [];
  for (const { bit, reads } of levels) {
    const known = groups.findIndex(
      group => reads === 0 && group.reads === 0 && group.bit.register === bit.register,
    );
    const group = groups[known];
    if (group === undefined) groups.push({ bit, mask: bit.mask, reads });
    else groups[known] = { ...group, mask: group.mask | bit.mask };
  }
  return groups;
}

const isSign = (mask: number): boolean => mask === 1 << SIGN_BIT;

function groupInstructions({ bit, mask, reads }: LevelGroup): readonly Instruction[] {
  const test = onMemory('BIT', bit.register, bit.address);
  if (isSign(mask)) return [test, branch(reads === 0 ? 'BMI' : 'BPL', SKIP_LABEL)];
  return [onValue('LDA', mask), test, branch(reads === 0 ? 'BNE' : 'BEQ', SKIP_LABEL)];
}

function reasonOf({ bit, mask, reads }: LevelGroup): PolarityReason {
  const form = isSign(mask) ? 'sign' : mask === bit.mask ? 'one bit' : 'several bits';
  return { register: bit.register, why: WHY[form][reads] };
}

const WHY = {
  sign: {
    0: 'BIT copies D7 to N; 1 is not engaged, so BMI skips',
    1: 'BIT copies D7 to N; 0 is not engaged, so BPL skips',
  },
  'one bit': {
    0: 'BIT sets Z when the masked bit is 0; 1 is not engaged, so BNE skips',
    1: 'BIT sets Z when the masked bit is 0; 0 is not engaged, so BEQ skips',
  },
  'several bits': {
    0: 'BIT sets Z only when none of the masked bits is 1, that is when all are engaged; else BNE skips',
    1: 'BIT sets Z only when none of the masked bits is 1; then BEQ skips',
  },
} as const;

/** Tests whether the two code bits of a wheel differ from those kept at the read before. */
export function wheelTest(wire: Extract<Wire, { kind: 'gray' }>, kept: string): CpuTest {
  return createTest(
    [
      onMemory('LDA', wire.high.register, wire.high.address),
      onValue('AND', wire.mask),
      onMemory('CMP', kept, 0),
      branch('BEQ', SKIP_LABEL),
    ],
    [{ register: kept, why: 'CMP sets Z when the code is still that of the read before; then BEQ skips' }],
  );
}

/** Tests whether one bit differs from that of the read before, kept with its register's other bits. */
export function changeTest(bit: TestedBit, kept: string): CpuTest {
  return createTest(
    [
      onMemory('LDA', bit.register, bit.address),
      onMemory('EOR', kept, 0),
      onValue('AND', bit.mask),
      branch('BEQ', SKIP_LABEL),
    ],
    [
      {
        register: kept,
        why: 'EOR leaves 1 where a bit differs from the read before; AND sets Z where it does not, so BEQ skips',
      },
    ],
  );
}

/** Tests whether a paddle's count differs from that of the read before; both are bytes in RAM. */
export function paddleTest(count: string, kept: string): CpuTest {
  return createTest(
    [onMemory('LDA', count, 0), onMemory('CMP', kept, 0), branch('BEQ', SKIP_LABEL)],
    [{ register: kept, why: 'CMP sets Z when the count is still that of the read before; then BEQ skips' }],
  );
}

function createTest(instructions: readonly Instruction[], reasons: readonly PolarityReason[]): CpuTest {
  const ends = instructions.flatMap(({ addressing }, index) =>
    addressing === 'relative' ? [cyclesOf(instructions.slice(0, index + 1)) + TAKEN_CYCLES] : [],
  );
  return {
    instructions,
    bytes: bytesOf(instructions),
    engagedCycles: cyclesOf(instructions),
    idleCycles: { least: Math.min(...ends), most: Math.max(...ends) },
    reasons,
  };
}
