import { describe, expect, it } from 'vitest';
import type { Control } from '../../src/hardware/controllers.js';
import type { Port } from '../../src/hardware/ports.js';
import type { RegisterSymbol } from '../../src/hardware/registers.js';
import { wireBit, wireOf } from '../../src/hardware/wiring.js';
import { citeAll } from './cite.js';
import { wireIn, wireOfControl } from './wires.js';

const at = (register: RegisterSymbol, address: number, bit: number) => ({
  register,
  address,
  bit,
  mask: 2 ** bit,
});
const swcha = (bit: number) => at('SWCHA', 0x0280, bit);
const swchb = (bit: number) => at('SWCHB', 0x0282, bit);
const inpt = (n: 0 | 1 | 2 | 3 | 4 | 5) => at(`INPT${n}`, 8 + n, 7);

describe('a bit of a register', () => {
  it.each([
    [0, 0x01],
    [3, 0x08],
    [7, 0x80],
  ])('D%i has its address and mask', (bit, mask) => {
    expect(wireBit({ register: 'SWCHA', bit })).toStrictEqual({
      register: 'SWCHA',
      address: 0x0280,
      bit,
      mask,
    });
  });
});

/** Programmer's guide [PIA 5.3]: 0 is engaged. Pins: from memory. */
describe('a joystick', () => {
  it.each<[Port, string, ReturnType<typeof at>, number]>([
    ['left', 'stick up', swcha(4), 1],
    ['left', 'stick down', swcha(5), 2],
    ['left', 'stick left', swcha(6), 3],
    ['left', 'stick right', swcha(7), 4],
    ['left', 'button', inpt(4), 6],
    ['right', 'stick up', swcha(0), 1],
    ['right', 'stick down', swcha(1), 2],
    ['right', 'stick left', swcha(2), 3],
    ['right', 'stick right', swcha(3), 4],
    ['right', 'button', inpt(5), 6],
  ])('in the %s port has %s on its bit and pin', (port, name, bit, pin) => {
    expect(wireIn(port, 'joystick', name)).toEqual({
      kind: 'line',
      bit,
      engagedReads: 0,
      pin,
      sources: expect.anything(),
    });
  });

  it('cites the guide for its stick and for its button', () => {
    expect(citeAll(wireIn('left', 'joystick', 'stick up').sources)).toContain('G [PIA 5.3]');
    expect(citeAll(wireIn('left', 'joystick', 'button').sources)).toContain('G [TIA 12.2]');
  });
});

/** Programmer's guide [PIA 5.4], [TIA 12.1]. Pins: from memory. */
describe('paddles', () => {
  it.each<[Port, string, ReturnType<typeof at>, number]>([
    ['left', 'A', inpt(0), 9],
    ['left', 'B', inpt(1), 5],
    ['right', 'A', inpt(2), 9],
    ['right', 'B', inpt(3), 5],
  ])('have the pot %s %s on its own register', (port, seat, bit, pin) => {
    const wire = wireIn(port, 'paddles', 'paddle', seat);
    expect(wire).toEqual({ kind: 'pot', bit, pin, sources: expect.anything() });
    expect(citeAll(wire.sources)).toEqual(['G [TIA 12.1]', 'R']);
  });

  it.each<[Port, string, number, number]>([
    ['left', 'A', 7, 4],
    ['left', 'B', 6, 3],
    ['right', 'A', 3, 4],
    ['right', 'B', 2, 3],
  ])('have the button %s %s on D%i of SWCHA, 0 when pressed', (port, seat, bit, pin) => {
    expect(wireIn(port, 'paddles', 'paddle button', seat)).toEqual({
      kind: 'line',
      bit: swcha(bit),
      engagedReads: 0,
      pin,
      sources: expect.anything(),
    });
  });
});

/** Programmer's guide [PIA 5.5]; lines by common practice, no source. Pins: from memory. */
describe('a keypad', () => {
  type Key = readonly [string, number, number];
  const keys: readonly Key[] = [
    ['key 1', 1, 1],
    ['key 2', 1, 2],
    ['key 3', 1, 3],
    ['key 4', 2, 1],
    ['key 5', 2, 2],
    ['key 6', 2, 3],
    ['key 7', 3, 1],
    ['key 8', 3, 2],
    ['key 9', 3, 3],
    ['key star', 4, 1],
    ['key 0', 4, 2],
    ['key hash', 4, 3],
  ];
  const lines = {
    left: { rowBits: [4, 5, 6, 7], columns: [inpt(0), inpt(1), inpt(4)] },
    right: { rowBits: [0, 1, 2, 3], columns: [inpt(2), inpt(3), inpt(5)] },
  };
  const cases = (['left', 'right'] as const).flatMap(port => keys.map(key => [port, ...key] as const));

  it.each(cases)('in the %s port has %s in row %i, column %i', (port, name, row, column) => {
    const { rowBits, columns } = lines[port];
    const wire = wireIn(port, 'keypad', name);
    expect(wire).toEqual({
      kind: 'matrix',
      row,
      column,
      drive: swcha(rowBits[row - 1] ?? -1),
      drivePin: row,
      bit: columns[column - 1],
      engagedReads: 0,
      pin: [9, 5, 6][column - 1],
      sources: expect.anything(),
    });
    expect(citeAll(wire.sources)).toEqual(expect.arrayContaining(['G [PIA 5.5]', 'P']));
  });

  it.each([
    ['row', 0, 1, 0],
    ['row', 5, 1, 5],
    ['column', 1, 0, 0],
    ['column', 1, 4, 4],
  ])('has no %s beyond its matrix (row %i, column %i)', (_, row, column, wrong) => {
    const control: Control = { name: 'key ?', seat: '', wiring: { kind: 'matrix', row, column } };
    expect(() => wireOfControl('left', control)).toThrow(RangeError);
    expect(() => wireOfControl('left', control)).toThrow(new RegExp(`no line ${wrong}$`));
  });
});

/** From memory: high bit then low bit, left D5 D4, right D1 D0. */
describe('a wheel', () => {
  it.each<[Port, number, number, number]>([
    ['left', 5, 4, 0b0011_0000],
    ['right', 1, 0, 0b0000_0011],
  ])('in the %s port has its code on D%i D%i of SWCHA', (port, high, low, mask) => {
    const wire = wireIn(port, 'wheel', 'wheel');
    expect(wire).toEqual({
      kind: 'gray',
      high: swcha(high),
      low: swcha(low),
      mask,
      highPin: 2,
      lowPin: 1,
      sources: expect.anything(),
    });
    expect(citeAll(wire.sources)).toContain('R');
  });

  it.each<[Port, 4 | 5]>([
    ['left', 4],
    ['right', 5],
  ])('in the %s port has its button on INPT%i', (port, n) => {
    expect(wireIn(port, 'wheel', 'button')).toMatchObject({ kind: 'line', bit: inpt(n), engagedReads: 0 });
  });
});

/** A pot line used as a switch is engaged when high. */
describe('an own contact on a pot line', () => {
  it.each<[Port, 'pot A' | 'pot B', 0 | 1 | 2 | 3]>([
    ['left', 'pot A', 0],
    ['left', 'pot B', 1],
    ['right', 'pot A', 2],
    ['right', 'pot B', 3],
  ])('in the %s port, %s, is read on INPT%i and is 1 when engaged', (port, line, n) => {
    const control: Control = { name: 'pedal', seat: '', wiring: { kind: 'contact', line } };
    expect(wireOfControl(port, control)).toMatchObject({ kind: 'line', bit: inpt(n), engagedReads: 1 });
  });
});

/** Programmer's guide [PIA 4.1]. */
describe('a panel switch', () => {
  it.each([
    ['SELECT', 1],
    ['RESET', 0],
  ] as const)('%s is a contact on D%i of SWCHB, 0 when pressed, on no pin', (name, bit) => {
    expect(wireOf({ kind: 'switch', name })).toStrictEqual({
      kind: 'line',
      bit: swchb(bit),
      engagedReads: 0,
      pin: null,
      sources: [{ key: 'G', section: 'PIA 4.1' }],
    });
  });

  it.each([
    ['left difficulty', 6, 'B', 'A'],
    ['right difficulty', 7, 'B', 'A'],
    ['TV type', 3, 'B-W', 'COLOR'],
  ] as const)('%s has two positions on D%i of SWCHB: 0 is %s, 1 is %s', (name, bit, zero, one) => {
    const wire = wireOf({ kind: 'switch', name });
    if (wire.kind !== 'two-position') throw new Error(`${name} is a ${wire.kind}`);
    expect(wire).toStrictEqual({
      kind: 'two-position',
      bit: swchb(bit),
      positions: expect.anything(),
      sources: [{ key: 'G', section: 'PIA 4.1' }],
    });
    const byLevel = [...wire.positions].sort((a, b) => a.reads - b.reads);
    expect(byLevel).toEqual([
      { name: zero, reads: 0 },
      { name: one, reads: 1 },
    ]);
  });
});
