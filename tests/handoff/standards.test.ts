import { expect, test } from 'vitest';
import { createHandoff } from '../../src/handoff/create.js';
import { writeInclude } from '../../src/handoff/include.js';
import { writeReadAsm } from '../../src/handoff/read-asm.js';
import { createCpu } from '../support/cpu.js';
import { assemble } from '../support/sim65.js';
import { tool } from '../support/tools.js';
import { partOf, readText } from './schemes.js';

const lighthouse = (standards: string) =>
  createHandoff(
    readText(`# Lamp room

One lamp.

## Game

| Item | Value |
| --- | --- |
| Short name | LR |
| TV standards | ${standards} |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Solo | 1 | joystick | empty |

## Actions

| Action | Say it as |
| --- | --- |
| Trim | Trim the lamp |

## Mode: Lamp

| Who | Action | Control | Gesture |
| --- | --- | --- | --- |
| each | Trim | button | hold 2 s |
`),
  );

// SEMANTICS, Time: 2 s is 120 reads on NTSC and 100 on PAL.
const COUNTS = { NTSC: 120, PAL: 100 } as const;

test.each([
  ['NTSC', ['NTSC']],
  ['PAL', ['PAL']],
  ['SECAM', ['PAL']],
  ['PAL, SECAM', ['PAL']],
  ['NTSC, SECAM', ['NTSC', 'PAL']],
] as const)('%s: only what its standards count is handed over', (standards, ways) => {
  const handoff = lighthouse(standards);
  const counts = [...writeInclude(handoff).matchAll(/__HOLD__(\w+) = \$(\w+)/g)];
  expect(counts.map(([, way, value]) => [way, Number.parseInt(value ?? '', 16)])).toEqual(
    ways.map(way => [way, COUNTS[way]]),
  );
  expect(writeReadAsm(handoff).includes('LR__PAL')).toBe(ways.length === 2);
});

test.each(['NTSC', 'PAL', 'NTSC, PAL'])('%s: the routine holds for as many reads', standards => {
  const handoff = lighthouse(standards);
  const [consoles] = handoff.classes;
  if (consoles === undefined) throw new Error('nothing to assemble for');
  for (const standard of handoff.scheme.standards) {
    const program = assemble(tool('ca65'), tool('ld65'), [partOf(handoff, consoles, standard)]);
    program.remove();
    const cpu = createCpu(program.image);
    const call = (word: string) => cpu.call(program.labels.get(`LR__${word}_LAMP`) ?? -1);
    const INPT4 = 0x0c;
    cpu.memory[INPT4] = 0x80;
    call('START');
    cpu.memory[INPT4] = 0;
    const fired = Array.from({ length: 130 }, () => {
      call('READ');
      return cpu.memory[0x80] !== 0;
    });
    expect(fired.indexOf(true) + 1, standard.name).toBe(COUNTS[standard.name === 'NTSC' ? 'NTSC' : 'PAL']);
  }
});
