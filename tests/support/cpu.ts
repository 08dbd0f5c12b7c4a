/**
 * A small model of the CPU, for counting cycles call by call: flags, cycles and page crossings as the MCS6500
 * family programming manual (MOS Technology, 1976) gives them. Only what the reading routine uses; it is held
 * against sim65 in tests/handoff/cpu.test.ts.
 */
export interface Cpu {
  readonly memory: Uint8Array;
  /** Runs a subroutine and gives its cycles, JSR and RTS included. */
  readonly call: (address: number) => number;
}

interface State {
  a: number;
  x: number;
  y: number;
  pc: number;
  s: number;
  n: boolean;
  v: boolean;
  z: boolean;
  c: boolean;
  cycles: number;
}

type Mode = 'imm' | 'zp' | 'abs' | 'absx' | 'acc' | 'imp' | 'rel';
type Step = (state: State, operand: Operand) => void;

interface Operand {
  readonly read: () => number;
  readonly write: (value: number) => void;
  readonly address: number;
}

const setNZ = (state: State, value: number): void => {
  state.n = (value & 0x80) !== 0;
  state.z = (value & 0xff) === 0;
};

const load =
  (to: 'a' | 'x' | 'y'): Step =>
  (state, operand) => {
    state[to] = operand.read();
    setNZ(state, state[to]);
  };
const store =
  (from: 'a' | 'x' | 'y'): Step =>
  (state, operand) =>
    operand.write(state[from]);
const logic =
  (combine: (a: number, b: number) => number): Step =>
  (state, operand) => {
    state.a = combine(state.a, operand.read()) & 0xff;
    setNZ(state, state.a);
  };
const compare =
  (from: 'a' | 'x' | 'y'): Step =>
  (state, operand) => {
    const value = operand.read();
    state.c = state[from] >= value;
    setNZ(state, state[from] - value);
  };
const shift =
  (left: boolean, rotate: boolean): Step =>
  (state, operand) => {
    const value = operand.read();
    const carried = rotate && state.c ? 1 : 0;
    state.c = (value & (left ? 0x80 : 0x01)) !== 0;
    const result = left ? ((value << 1) | carried) & 0xff : (value >> 1) | (carried << 7);
    operand.write(result);
    setNZ(state, result);
  };
const count =
  (by: number): Step =>
  (state, operand) => {
    const result = (operand.read() + by) & 0xff;
    operand.write(result);
    setNZ(state, result);
  };
const add = (state: State, value: number): void => {
  const sum = state.a + value + (state.c ? 1 : 0);
  state.v = ((state.a ^ sum) & (value ^ sum) & 0x80) !== 0;
  state.c = sum > 0xff;
  state.a = sum & 0xff;
  setNZ(state, state.a);
};
/** Z from the AND with the accumulator, N and V from the operand's bits 7 and 6. */
const bit: Step = (state, operand) => {
  const value = operand.read();
  state.z = (state.a & value) === 0;
  state.n = (value & 0x80) !== 0;
  state.v = (value & 0x40) !== 0;
};
const branch =
  (isTaken: (state: State) => boolean): Step =>
  (state, operand) => {
    if (!isTaken(state)) return;
    state.cycles += (operand.address & 0xff00) === (state.pc & 0xff00) ? 1 : 2;
    state.pc = operand.address;
  };
const flag =
  (name: 'c', value: boolean): Step =>
  state => {
    state[name] = value;
  };
const index =
  (by: number): Step =>
  state => {
    state.x = (state.x + by) & 0xff;
    setNZ(state, state.x);
  };
const move =
  (from: 'a' | 'x', to: 'a' | 'x'): Step =>
  state => {
    state[to] = state[from];
    setNZ(state, state[to]);
  };

const OPCODES: Readonly<Record<number, readonly [mode: Mode, cycles: number, step: Step]>> = {
  169: ['imm', 2, load('a')],
  165: ['zp', 3, load('a')],
  173: ['abs', 4, load('a')],
  189: ['absx', 4, load('a')],
  162: ['imm', 2, load('x')],
  166: ['zp', 3, load('x')],
  133: ['zp', 3, store('a')],
  141: ['abs', 4, store('a')],
  134: ['zp', 3, store('x')],
  41: ['imm', 2, logic((a, b) => a & b)],
  37: ['zp', 3, logic((a, b) => a & b)],
  9: ['imm', 2, logic((a, b) => a | b)],
  5: ['zp', 3, logic((a, b) => a | b)],
  73: ['imm', 2, logic((a, b) => a ^ b)],
  69: ['zp', 3, logic((a, b) => a ^ b)],
  201: ['imm', 2, compare('a')],
  197: ['zp', 3, compare('a')],
  224: ['imm', 2, compare('x')],
  228: ['zp', 3, compare('x')],
  36: ['zp', 3, bit],
  44: ['abs', 4, bit],
  101: ['zp', 3, (state, operand) => add(state, operand.read())],
  105: ['imm', 2, (state, operand) => add(state, operand.read())],
  230: ['zp', 5, count(1)],
  198: ['zp', 5, count(-1)],
  10: ['acc', 2, shift(true, false)],
  6: ['zp', 5, shift(true, false)],
  74: ['acc', 2, shift(false, false)],
  70: ['zp', 5, shift(false, false)],
  42: ['acc', 2, shift(true, true)],
  38: ['zp', 5, shift(true, true)],
  106: ['acc', 2, shift(false, true)],
  102: ['zp', 5, shift(false, true)],
  240: ['rel', 2, branch(({ z }) => z)],
  208: ['rel', 2, branch(({ z }) => !z)],
  176: ['rel', 2, branch(({ c }) => c)],
  144: ['rel', 2, branch(({ c }) => !c)],
  48: ['rel', 2, branch(({ n }) => n)],
  16: ['rel', 2, branch(({ n }) => !n)],
  112: ['rel', 2, branch(({ v }) => v)],
  80: ['rel', 2, branch(({ v }) => !v)],
  24: ['imp', 2, flag('c', false)],
  56: ['imp', 2, flag('c', true)],
  232: ['imp', 2, index(1)],
  202: ['imp', 2, index(-1)],
  170: ['imp', 2, move('a', 'x')],
  138: ['imp', 2, move('x', 'a')],
  76: [
    'abs',
    3,
    (state, { address }) => {
      state.pc = address;
    },
  ],
};
const RTS = 0x60;
const JSR_CYCLES = 6;
const RTS_CYCLES = 6;
const MOST_CYCLES = 100_000;

export function createCpu(memory: Uint8Array): Cpu {
  const byte = (address: number) => memory[address & 0xffff] ?? 0;
  return {
    memory,
    call: start => {
      const state: State = {
        a: 0x5a,
        x: 0xa5,
        y: 0x3c,
        pc: start,
        s: 0xff,
        n: false,
        v: false,
        z: false,
        c: true,
        cycles: JSR_CYCLES,
      };
      while (byte(state.pc) !== RTS) {
        const opcode = byte(state.pc);
        const entry = OPCODES[opcode];
        if (entry === undefined)
          throw new RangeError(`opcode ${opcode.toString(16)} at ${state.pc.toString(16)}`);
        const [mode, cycles, step] = entry;
        state.cycles += cycles;
        if (state.cycles > MOST_CYCLES) throw new RangeError('the routine does not end');
        step(state, operandOf(state, mode, memory));
      }
      return state.cycles + RTS_CYCLES;
    },
  };
}

/** Fetches the operand and moves on to the next instruction. */
function operandOf(state: State, mode: Mode, memory: Uint8Array): Operand {
  const at = (address: number): Operand => ({
    address,
    read: () => memory[address & 0xffff] ?? 0,
    write: value => {
      memory[address & 0xffff] = value;
    },
  });
  const first = memory[state.pc + 1] ?? 0;
  const second = memory[state.pc + 2] ?? 0;
  const absolute = first | (second << 8);
  state.pc += mode === 'abs' || mode === 'absx' ? 3 : mode === 'acc' || mode === 'imp' ? 1 : 2;
  switch (mode) {
    case 'imm':
      return { address: 0, read: () => first, write: () => {} };
    case 'zp':
      return at(first);
    case 'abs':
      return at(absolute);
    case 'absx':
      if ((absolute & 0xff) + state.x > 0xff) state.cycles += 1;
      return at(absolute + state.x);
    case 'rel':
      return at(state.pc + (first < 0x80 ? first : first - 0x100));
    case 'acc':
      return {
        address: 0,
        read: () => state.a,
        write: value => {
          state.a = value;
        },
      };
    case 'imp':
      return at(0);
    default:
      return mode satisfies never;
  }
}
