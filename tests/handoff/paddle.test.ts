import { expect, test } from 'vitest';
import { createHandoff } from '../../src/handoff/create.js';
import { writeInclude } from '../../src/handoff/include.js';
import { writeReadAsm } from '../../src/handoff/read-asm.js';
import { createCpu } from '../support/cpu.js';
import { assemble } from '../support/sim65.js';
import { tool } from '../support/tools.js';
import { readText } from './schemes.js';

const PADDLES = readText(`# Two sluices

Two sluices.

## Game

| Item | Value |
| --- | --- |
| Short name | TS |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Both | 2 | paddles | empty |

## Actions

| Action | Say it as |
| --- | --- |
| Open | Open the sluice |

## Mode: Weir

| Who | Action | Control | Gesture |
| --- | --- | --- | --- |
| each | Open | paddle | turn |
`);

const CYCLES = 10;
const JSR_AND_RTS = 12;

test('the counting macro counts lines until the pot has charged, in the cycles it states', () => {
  const handoff = createHandoff(PADDLES);
  const use = '\nprobe:\n        TS__COUNT_PADDLE TS__INPT0, TS__POSITION_LEFT_A_PADDLE\n        rts\n';
  const text = writeReadAsm(handoff);
  expect(text).toContain(`At most ${CYCLES} cycles`);
  const program = assemble(tool('ca65'), tool('ld65'), [
    {
      defines: {},
      files: { 'controls.inc': writeInclude(handoff), 'read.asm': text + use },
      main: 'read.asm',
    },
  ]);
  program.remove();
  const cpu = createCpu(program.image);
  const cell = handoff.ram.shared.find(({ symbol }) => symbol === 'TS__POSITION_LEFT_A_PADDLE');
  const position = 0x80 + (cell?.offset ?? -1);
  cpu.memory[position] = 0;
  let worst = 0;
  for (let line = 0; line < 200; line++) {
    cpu.memory[0x08] = line < 123 ? 0x35 : 0xb5;
    worst = Math.max(worst, cpu.call(program.labels.get('probe') ?? 0) - JSR_AND_RTS);
  }
  expect(cpu.memory[position]).toBe(123);
  expect(worst).toBe(CYCLES);
});
