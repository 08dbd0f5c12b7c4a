import { describe, expect, it } from 'vitest';
import { KEYPAD } from '../../src/hardware/keypad.js';
import type { Port } from '../../src/hardware/ports.js';
import { citeAll } from './cite.js';

/** Programmer's guide [PIA 5.5]; the lines are common practice, no source. */
describe('the keypad’s matrix', () => {
  it.each([
    [1, ['1', '2', '3']],
    [2, ['4', '5', '6']],
    [3, ['7', '8', '9']],
    [4, ['star', '0', 'hash']],
  ])('has row %i', (wanted, names) => {
    const keys = KEYPAD.keys.filter(({ row }) => row === wanted);
    expect(keys.map(({ key, column }) => [key, column])).toEqual(
      names.map((name, index) => [name, index + 1]),
    );
  });

  it('has twelve keys', () => {
    expect(KEYPAD.keys).toHaveLength(12);
  });

  it.each<[Port, readonly string[], readonly string[]]>([
    ['left', ['SWCHA D4', 'SWCHA D5', 'SWCHA D6', 'SWCHA D7'], ['INPT0 D7', 'INPT1 D7', 'INPT4 D7']],
    ['right', ['SWCHA D0', 'SWCHA D1', 'SWCHA D2', 'SWCHA D3'], ['INPT2 D7', 'INPT3 D7', 'INPT5 D7']],
  ])('of the %s port has its rows and columns on these lines', (port, rows, columns) => {
    expect(KEYPAD.rows[port].map(({ register, bit }) => `${register} D${bit}`)).toEqual(rows);
    expect(KEYPAD.columns[port].map(({ register, bit }) => `${register} D${bit}`)).toEqual(columns);
  });

  it('waits 400 µs between driving a row and reading its columns (figure from memory)', () => {
    expect(KEYPAD.settleMicroseconds).toBe(400);
  });

  it('cites the guide and common practice', () => {
    expect(citeAll(KEYPAD.sources)).toEqual(expect.arrayContaining(['G [PIA 5.5]', 'P']));
  });
});
