import { afterAll, describe, expect, test } from 'vitest';
import { bindingsOnAllConsoles } from '../../../src/documents/bits/mode-view.js';
import { instructionText, testOfBinding } from '../../../src/documents/bits/tests-of-bindings.js';
import type { Binding } from '../../../src/gestures/bindings.js';
import type { CpuTest } from '../../../src/hardware/cpu-test.js';
import { assemble, type Call, type Program, runCalls } from '../../support/sim65.js';
import { tool } from '../../support/tools.js';
import { LINES, POSITIONS } from './lines.js';
import { DYE_WORKS, inputOf } from './support.js';

/** Two 4-bit chips' worth of symbols (G), and free bytes of zero page for what the tests keep. */
const REGISTER_ADDRESSES: Readonly<Record<string, number>> = {
  SWCHA: 0x280,
  SWCHB: 0x282,
  INPT0: 0x08,
  INPT1: 0x09,
  INPT2: 0x0a,
  INPT3: 0x0b,
  INPT4: 0x0c,
  INPT5: 0x0d,
};
const FIRST_KEPT = 0xa0;
const RESULT = 0x80;
const WENT_ON = 1;
const SKIPPED = 2;

/** Every binding of the scheme whose test is different, with its test. */
function distinctTests(): readonly { binding: Binding; test: CpuTest; text: string }[] {
  const { scheme } = inputOf(DYE_WORKS);
  const found = new Map<string, { binding: Binding; test: CpuTest; text: string }>();
  for (const mode of scheme.modes) {
    for (const seats of mode.seats) {
      for (const { binding } of bindingsOnAllConsoles(scheme, mode, seats)) {
        const cpuTest = testOfBinding(binding);
        const text = cpuTest.instructions.map(instructionText).join('\n');
        found.set(`${binding.parts.map(({ id }) => id).join()} ${text}`, { binding, test: cpuTest, text });
      }
    }
  }
  return [...found.values()];
}

const TESTS = distinctTests();

/** Symbols that a test keeps in RAM, each with a byte of zero page. */
const KEPT = new Map(
  [
    ...new Set(
      TESTS.flatMap(({ text }) =>
        [...text.matchAll(/^(?:LDA|BIT|EOR|CMP) ([a-z]\w+)$/gm)].map(([, name]) => name ?? ''),
      ),
    ),
  ].map((name, index) => [name, FIRST_KEPT + index]),
);

const addressOf = (symbol: string): number => {
  const address = REGISTER_ADDRESSES[symbol] ?? KEPT.get(symbol);
  if (address === undefined) throw new Error(`no address for ${symbol}`);
  return address;
};

/** A subroutine: 1 in $80 where the test goes on, 2 where it branches to `skip`; both ways as long. */
function subroutine(body: string, name: string): string {
  const equates = [...Object.entries(REGISTER_ADDRESSES), ...KEPT].map(
    ([symbol, address]) => `${symbol} = ${address}`,
  );
  const both = `        LDA #${WENT_ON}\n        STA ${RESULT}\n        RTS\nskip:   LDA #${SKIPPED}\n        STA ${RESULT}\n        RTS`;
  const code = body.split('\n').map(line => `        ${line}`);
  return [...equates, '.segment "CODE"', `${name}:`, ...code, both, ''].join('\n');
}

let built: Program | undefined;
function program(): Program {
  const bodies = [...TESTS.map(({ text }) => text), ''];
  built ??= assemble(
    tool('ca65'),
    tool('ld65'),
    bodies.map((body, index) => ({
      defines: {},
      files: { 'test.s': `.export test_${index}\n${subroutine(body, `test_${index}`)}` },
      main: 'test.s',
    })),
  );
  return built;
}
afterAll(() => built?.remove());

const entry = (index: number): number => {
  const address = program().labels.get(`test_${index}`);
  if (address === undefined) throw new Error(`test ${index} was not assembled`);
  return address;
};

/** A small generator, so that the same bytes are tried each time. */
function createRandom(): () => number {
  let state = 0x2f6e2b1;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state >>> 24;
  };
}

/** Bytes for all registers and kept bytes, each bit at random. */
function randomBytes(random: () => number): Map<number, number> {
  const addresses = [...Object.values(REGISTER_ADDRESSES), ...KEPT.values()];
  return new Map(addresses.map(address => [address, random()]));
}

const level = (bytes: ReadonlyMap<number, number>, address: number, bit: number): number =>
  ((bytes.get(address) ?? 0) >> bit) & 1;

/** Whether a binding's control is engaged (turned, moved), told from the sources alone. */
function isEngaged({ parts, gesture }: Binding, bytes: ReadonlyMap<number, number>): boolean {
  const [first] = parts;
  const id = first?.id ?? '';
  const differs = (a: string, b: string) => bytes.get(addressOf(a)) !== bytes.get(addressOf(b));
  if (id.endsWith('wheel')) return ((bytes.get(0x280) ?? 0) & 0x30) !== bytes.get(addressOf('was_L'));
  const paddle = /^(left|right) ([AB]) paddle$/.exec(id);
  if (paddle !== null) {
    const place = `${paddle[1] === 'left' ? 'L' : 'R'}${paddle[2]}`;
    return differs(`count_${place}`, `was_${place}`);
  }
  const position = POSITIONS[id];
  if (position !== undefined) {
    const now = level(bytes, 0x282, position.bit);
    if (gesture.kind === 'flip') return now !== level(bytes, addressOf('was_SWCHB'), position.bit);
    return 'position' in gesture && now === position.reads[gesture.position];
  }
  return parts.every(part => isPartEngaged(part.id, parts.length > 1, bytes));
}

/** Keys of a chord lie in the bytes the scan has kept, 0 = pressed: keys 1 to 8, then 9, star, 0, hash. */
const KEPT_KEYS: Readonly<Record<string, readonly [symbol: string, bit: number]>> = {
  'left key 1': ['keys_L1', 0],
  'left key 5': ['keys_L1', 4],
  'left key 9': ['keys_L2', 0],
};

function isPartEngaged(id: string, inChord: boolean, bytes: ReadonlyMap<number, number>): boolean {
  const kept = inChord ? KEPT_KEYS[id] : undefined;
  if (kept !== undefined) return level(bytes, addressOf(kept[0]), kept[1]) === 0;
  const line = LINES[id];
  if (line === undefined) throw new Error(`${id} is not among the lines`);
  return level(bytes, line.address, line.bit) === line.engaged;
}

/** Random bytes under which the binding is engaged, or is not: half the bits are flipped until it fits. */
function bytesWith(binding: Binding, engaged: boolean, random: () => number): ReadonlyMap<number, number> {
  for (let tries = 0; tries < 100_000; tries++) {
    const bytes = randomBytes(random);
    // A count or a code that is that of the read before hardly ever comes by chance.
    if (!engaged) copyKept(bytes);
    if (isEngaged(binding, bytes) === engaged) return bytes;
  }
  throw new Error('no fitting bytes');
}

function copyKept(bytes: Map<number, number>): void {
  for (const [name, address] of KEPT) {
    if (name.startsWith('count_'))
      bytes.set(address, bytes.get(addressOf(name.replace('count', 'was'))) ?? 0);
  }
  const wheel = KEPT.get('was_L');
  if (wheel !== undefined) bytes.set(wheel, (bytes.get(0x280) ?? 0) & 0x30);
}

const callOf = (index: number, bytes: ReadonlyMap<number, number>): Call => ({
  address: entry(index),
  pokes: [...bytes],
});

const ROUNDS = 24;

describe('tests of the appendix, run under sim65 (flags and cycles of the MCS6500 manual)', () => {
  test('cover every form', () => {
    const forms = new Set(TESTS.map(({ text }) => text.replace(/ \S+/g, '')));
    expect([...forms].sort()).toEqual([
      'BIT\nBMI',
      'BIT\nBMI\nLDA\nBIT\nBNE',
      'BIT\nBPL',
      'LDA\nAND\nCMP\nBEQ',
      'LDA\nBIT\nBNE',
      'LDA\nBIT\nBNE\nBIT\nBMI',
      'LDA\nBIT\nBNE\nLDA\nBIT\nBNE',
      'LDA\nCMP\nBEQ',
      'LDA\nEOR\nAND\nBEQ',
    ]);
  });

  test('go on when engaged and skip when not, whatever the other bits are', () => {
    const sim65 = tool('sim65');
    const random = createRandom();
    const wanted = TESTS.flatMap(({ binding }, index) =>
      Array.from({ length: ROUNDS }, (_, round) => {
        const engaged = round % 2 === 0;
        return { engaged, call: callOf(index, bytesWith(binding, engaged, random)) };
      }),
    );
    const { windows } = runCalls(
      sim65,
      program(),
      wanted.map(({ call }) => call),
    );
    const results = windows.map(([result]) => result);
    expect(results).toEqual(wanted.map(({ engaged }) => (engaged ? WENT_ON : SKIPPED)));
  });

  test('take the cycles they are said to take', () => {
    const sim65 = tool('sim65');
    const random = createRandom();
    const cyclesOf = (index: number, bytes: ReadonlyMap<number, number>) => {
      const own = runCalls(sim65, program(), [callOf(index, bytes)]).cycles;
      const empty = runCalls(sim65, program(), [callOf(TESTS.length, bytes)]).cycles;
      return own - empty;
    };
    for (const [index, { binding, test: cpuTest, text }] of TESTS.entries()) {
      const engaged = cyclesOf(index, bytesWith(binding, true, random));
      expect(engaged, text).toBe(cpuTest.engagedCycles);
      const idle = cyclesOf(index, bytesWith(binding, false, random));
      expect(idle, text).toBeGreaterThanOrEqual(cpuTest.idleCycles.least);
      expect(idle, text).toBeLessThanOrEqual(cpuTest.idleCycles.most);
      if (binding.parts.length === 1) expect(cpuTest.idleCycles.least).toBe(cpuTest.idleCycles.most);
    }
  });

  test('have the bytes they are said to have', () => {
    const { image } = program();
    const STA_RESULT = [0xa9, WENT_ON, 0x85, RESULT, 0x60];
    for (const [index, { test: cpuTest, text }] of TESTS.entries()) {
      const end = entry(index) + cpuTest.bytes;
      expect([...image.subarray(end, end + STA_RESULT.length)], text).toEqual(STA_RESULT);
    }
  });
});
