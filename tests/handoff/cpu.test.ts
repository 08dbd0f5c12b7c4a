import { describe, expect, test } from 'vitest';
import { createHandoff } from '../../src/handoff/create.js';
import { createCpu } from '../support/cpu.js';
import { createRandom } from '../support/random.js';
import { assemble, type Call, runCalls, WINDOW_BYTES, WINDOW_START } from '../support/sim65.js';
import { tool } from '../support/tools.js';
import { partOf, randomRead } from './schemes.js';
import { recordSession, wildHands } from './session.js';

/**
 * `BIT` as the MCS6500 family programming manual (MOS Technology, 1976) describes it: bit 7 of the byte goes to
 * N, bit 6 to V, and Z is set when accumulator AND byte is zero; the accumulator stays. Each branch that the
 * routine uses is tried after it, on sim65 as well.
 */
const BIT_PROBE = `
probe:  lda $A0
        bit $A1
        php
        pla
        sta $80                                 ; N V . . . . Z .
        lda #0
        bit $A1
        bmi :+
        lda #1                                  ; BMI skipped over nothing: D7 was 0
:       sta $81
        bit $A1
        bvs :+
        lda #2
        sta $82
        jmp done
:       lda #3
        sta $82
done:   rts
`;

describe('BIT and the branches behind it', () => {
  test('set N, V and Z as the manual says, for every byte', () => {
    const program = assemble(tool('ca65'), tool('ld65'), [
      { defines: {}, files: { 'p.s': BIT_PROBE }, main: 'p.s' },
    ]);
    const address = program.labels.get('probe') ?? 0;
    const calls: Call[] = [];
    for (let byte = 0; byte < 256; byte++)
      for (const a of [0x00, 0x01, 0x40, 0x80, 0xff])
        calls.push({
          address,
          pokes: [
            [0xa0, a],
            [0xa1, byte],
          ],
        });
    const { windows } = runCalls(tool('sim65'), program, calls);
    program.remove();
    calls.forEach(({ pokes }, index) => {
      const [a, byte] = pokes.map(([, value]) => value);
      const [flags, minus, overflow] = windows[index] ?? [];
      expect((flags ?? 0) & 0b1100_0010).toBe(
        ((byte ?? 0) & 0xc0) | (((a ?? 0) & (byte ?? 0)) === 0 ? 2 : 0),
      );
      expect(minus).toBe((byte ?? 0) & 0x80 ? 0 : 1);
      expect(overflow).toBe((byte ?? 0) & 0x40 ? 3 : 2);
    });
  });
});

describe('the CPU model of the tests', () => {
  test.each([0, 3, 5, 8, 13])(
    'leaves what sim65 leaves and counts what it counts, on the routine of random scheme %i',
    seed => {
      const handoff = createHandoff(randomRead(seed));
      const { scheme } = handoff;
      const [consoles] = handoff.classes;
      const [standard] = scheme.standards;
      const [seats] = scheme.startMode.seats;
      if (consoles === undefined || standard === undefined || seats === undefined)
        throw new Error('an empty scheme');
      const program = assemble(tool('ca65'), tool('ld65'), [partOf(handoff, consoles, standard)]);
      const random = createRandom(seed);
      const choice = {
        handoff,
        seats,
        profile: consoles.profile,
        standard,
        labels: program.labels,
        ram: WINDOW_START,
      };
      const calls = recordSession(choice, wildHands(scheme, choice, random), 150, random);
      const whole = runCalls(tool('sim65'), program, calls);
      const cpu = createCpu(program.image);
      let sum = 0;
      calls.forEach(({ address, pokes, fired }, index) => {
        for (const [where, value] of pokes) cpu.memory[where] = value;
        sum += cpu.call(address);
        const count = fired?.length ?? 0;
        expect([...cpu.memory.subarray(WINDOW_START, WINDOW_START + count)]).toEqual([
          ...(whole.windows[index] ?? []).slice(0, count),
        ]);
      });
      expect(sum).toBe(cyclesWithout(program, calls, whole.cycles));
      program.remove();
    },
  );

  test('gives back as much as the harness shows', () => {
    expect(WINDOW_BYTES).toBeGreaterThanOrEqual(8);
  });
});

/** Of a run's cycles those of the calls alone: the same run with calls of a single RTS is taken off. */
function cyclesWithout(program: ReturnType<typeof assemble>, calls: readonly Call[], cycles: number): number {
  const rts = program.image.indexOf(0x60, 0x300);
  const empty = runCalls(
    tool('sim65'),
    program,
    calls.map(call => ({ ...call, address: rts })),
  );
  const JSR_AND_RTS = 12;
  return cycles - empty.cycles + JSR_AND_RTS * calls.length;
}
