import { describe, expect, it } from 'vitest';
import { scanSteps, vblankSetup } from '../../src/hardware/port-setup.js';
import type { PortLine } from '../../src/hardware/ports.js';
import { type Wire, wireOf } from '../../src/hardware/wiring.js';
import { citeAll } from './cite.js';
import { wireIn, wireOfControl } from './wires.js';

const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', 'star', '0', 'hash'];
const key = (port: 'left' | 'right', name: string): Wire => wireIn(port, 'keypad', `key ${name}`);
const keypad = (port: 'left' | 'right'): readonly Wire[] => KEYS.map(name => key(port, name));
const own = (line: PortLine): Wire =>
  wireOfControl('left', { name: 'pedal', seat: '', wiring: { kind: 'contact', line } });
const fire = wireIn('right', 'joystick', 'button');
const stick = wireIn('left', 'joystick', 'stick up');
const wheel = wireIn('right', 'wheel', 'wheel');
const pot = wireIn('left', 'paddles', 'paddle', 'A');
const tvType = wireOf({ kind: 'switch', name: 'TV type' });
const reset = wireOf({ kind: 'switch', name: 'RESET' });

/** Programmer's guide [PIA 5.5]: the driven row's pin is an output that is low; the rest stay inputs. */
describe('the scan of keypads', () => {
  it.each([
    ['the left keypad', keypad('left'), [0x10, 0x20, 0x40, 0x80]],
    ['the right keypad', keypad('right'), [0x01, 0x02, 0x04, 0x08]],
    [
      'two keypads, a row of each at a time',
      [...keypad('left'), ...keypad('right')],
      [0x11, 0x22, 0x44, 0x88],
    ],
  ])('drives the four rows of %s', (_, wires, masks) => {
    expect(scanSteps(wires)).toEqual(masks.map((swacnt, index) => ({ row: index + 1, swacnt, swcha: 0 })));
  });

  it('never drives two rows of one keypad at once', () => {
    for (const { swacnt } of scanSteps([...keypad('left'), ...keypad('right')]))
      for (const half of [swacnt & 0x0f, swacnt >> 4]) expect([1, 2, 4, 8]).toContain(half);
  });

  it('leaves out the rows that have no key, in the order of the rows', () => {
    expect(scanSteps([key('left', '0'), key('left', '2')])).toEqual([
      { row: 1, swacnt: 0x10, swcha: 0 },
      { row: 4, swacnt: 0x80, swcha: 0 },
    ]);
  });

  it('drives only the port that has a key in the row', () => {
    expect(scanSteps([key('left', '5'), key('right', '6'), key('right', '9')])).toEqual([
      { row: 2, swacnt: 0x22, swcha: 0 },
      { row: 3, swacnt: 0x04, swcha: 0 },
    ]);
  });

  it('passes over what is no key', () => {
    expect(scanSteps([stick, pot, reset, tvType, key('right', '3'), fire])).toEqual([
      { row: 1, swacnt: 0x01, swcha: 0 },
    ]);
  });

  it('has no step where there is no key', () => {
    expect(scanSteps([])).toEqual([]);
    expect(scanSteps([stick, fire, wheel, pot])).toEqual([]);
  });
});

/** Programmer's guide [TIA 12]: D6 the latch, D7 the dump. */
describe('the set-up of VBLANK', () => {
  it.each([
    [true, 1],
    [false, 0],
  ] as const)('with the latch in use (%s) has D6 = %i', (isLatched, latch) => {
    expect(vblankSetup([fire], isLatched).latch).toBe(latch);
  });

  it('cites the guide', () => {
    expect(citeAll(vblankSetup([], false).sources)).toEqual(['G [TIA 12]']);
  });

  it.each<[string, readonly Wire[], 'toggled' | 0 | 'free']>([
    ['free where nothing is read', [], 'free'],
    ['free for sticks, buttons, wheels and switches', [stick, fire, wheel, tvType, reset], 'free'],
    ['free for an own contact on the button’s line', [own('button')], 'free'],
    [
      'free for a keypad’s third column, on the button’s line',
      [key('left', '3'), key('right', 'hash')],
      'free',
    ],
    ['toggled for a paddle', [pot], 'toggled'],
    ['toggled for a paddle among others', [stick, pot, key('left', '1')], 'toggled'],
    ['0 for an own contact on pot A', [own('pot A')], 0],
    ['0 for an own contact on pot B, among others', [fire, own('pot B'), reset], 0],
    ['0 for the left keypad’s first column', [key('left', '1')], 0],
    ['0 for the left keypad’s second column', [key('left', '2')], 0],
    ['0 for the right keypad’s first column', [wheel, key('right', '1')], 0],
    ['0 for the right keypad’s second column', [key('right', '2')], 0],
  ])('has D7 %s', (_, wires, dump) => {
    expect(vblankSetup(wires, false).dump).toBe(dump);
  });
});
