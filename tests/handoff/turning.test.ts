import { expect, test } from 'vitest';
import { createPlay } from '../../src/gestures/play.js';
import { createHandoff } from '../../src/handoff/create.js';
import { registersOf } from '../../src/handoff/registers.js';
import { REGISTERS } from '../../src/hardware/registers.js';
import { createRandom } from '../support/random.js';
import { assemble, type Call, runCalls } from '../support/sim65.js';
import { tool } from '../support/tools.js';
import { partOf, readText } from './schemes.js';

const WHEELS = readText(`# Two potters

Two wheels.

## Game

| Item | Value |
| --- | --- |
| Short name | PW |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Both | 2 | wheel | wheel |

## Actions

| Action | Say it as |
| --- | --- |
| Turn | Turn the clay |

## Mode: Workshop

| Who | Action | Control | Gesture |
| --- | --- | --- | --- |
| each | Turn | wheel | turn |
`);

const RAM = 0x80;

test('the position of each wheel goes up clockwise and down the other way, one a step', () => {
  const handoff = createHandoff(WHEELS);
  const [consoles] = handoff.classes;
  const [standard] = WHEELS.standards;
  const [seats] = WHEELS.seats;
  if (consoles === undefined || standard === undefined || seats === undefined)
    throw new Error('an empty scheme');
  const program = assemble(tool('ca65'), tool('ld65'), [partOf(handoff, consoles, standard)]);
  const { contacts } = createPlay({ scheme: WHEELS, seats, profile: consoles.profile, standard });
  const offsets = contacts.flatMap(contact => {
    const symbol = `${handoff.names.prefix}POSITION_${handoff.names.contact(contact)}`;
    const cell = handoff.ram.shared.find(each => each.symbol === symbol);
    return cell === undefined ? [] : [{ offset: cell.offset, index: contacts.indexOf(contact) }];
  });
  expect(offsets).toHaveLength(2);
  const random = createRandom(7);
  const levels = contacts.map(() => 0);
  const wanted: number[][] = [];
  const calls: Call[] = [];
  const call = (label: string, pokes: Call['pokes']) => {
    const { values } = registersOf(contacts, levels);
    const registers = Object.entries(values).map(([symbol, value]): [number, number] => [
      REGISTERS[symbol as keyof typeof values].address,
      value,
    ]);
    calls.push({ address: program.labels.get(label) ?? 0, pokes: [...registers, ...pokes] });
    wanted.push(offsets.map(({ index }) => (levels[index] ?? 0) & 0xff));
  };
  call(
    'PW__START_WORKSHOP',
    offsets.map(({ offset }): [number, number] => [RAM + offset, 0]),
  );
  for (let read = 0; read < 2000; read++) {
    for (const { index } of offsets) levels[index] = (levels[index] ?? 0) + random.pick([-1, 0, 1, 1]);
    call('PW__READ_WORKSHOP', []);
  }
  const { windows } = runCalls(tool('sim65'), program, calls);
  program.remove();
  const got = windows.map(window => offsets.map(({ offset }) => window[offset]));
  expect(got).toEqual(wanted);
});
