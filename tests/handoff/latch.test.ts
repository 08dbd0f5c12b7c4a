import { expect, test } from 'vitest';
import { createHandoff } from '../../src/handoff/create.js';
import { REGISTERS } from '../../src/hardware/registers.js';
import { createCpu } from '../support/cpu.js';
import { assemble } from '../support/sim65.js';
import { tool } from '../support/tools.js';
import { partOf, readText } from './schemes.js';

const WEIR = readText(`# Two weirs

One with a knob, one with a lever.

## Game

| Item | Value |
| --- | --- |
| Short name | TW |
| Button latch | cleared each read |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Knob | 1 | paddles | joystick |
| Lever | 1 | lever | joystick |

## Controllers

| Controller | Control | Line |
| --- | --- | --- |
| lever | lever | pot A |

## Actions

| Action | Say it as |
| --- | --- |
| Open | Open the weir |
| Lift | Lift the weir |
| Ring | Ring the bell |

## Mode: Weir

| Who | Action | Control | Gesture |
| --- | --- | --- | --- |
| left A | Open | paddle | turn |
| left | Lift | lever | press |
| anyone | Ring | right button | press |
`);

test('clearing the latch goes on dumping the pots of paddles, and never dumps a line that is read', () => {
  const handoff = createHandoff(WEIR);
  const [consoles] = handoff.classes;
  const [standard] = handoff.scheme.standards;
  if (consoles === undefined || standard === undefined) throw new Error('nothing to assemble for');
  const program = assemble(tool('ca65'), tool('ld65'), [partOf(handoff, consoles, standard)]);
  program.remove();
  const vblankAfter = (label: string) => {
    const cpu = createCpu(program.image.slice());
    cpu.call(program.labels.get(label) ?? -1);
    return cpu.memory[REGISTERS.VBLANK.address];
  };
  // D7 dumps, D6 latches, D1 blanks.
  for (const word of ['START', 'READ']) {
    expect(vblankAfter(`TW__${word}_WEIR_KNOB`), word).toBe(0b1100_0010);
    expect(vblankAfter(`TW__${word}_WEIR_LEVER`), word).toBe(0b0100_0010);
  }
});
