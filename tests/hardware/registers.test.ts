import { readdirSync, readFileSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  INPT_MIRROR_OFFSET,
  RAM_BYTES,
  REGISTERS,
  type Register,
  type RegisterSymbol,
  VBLANK_BITS,
} from '../../src/hardware/registers.js';
import { tool } from '../support/tools.js';
import { citeAll } from './cite.js';

type Row = readonly [
  symbol: RegisterSymbol,
  address: number,
  access: Register['access'],
  holds: readonly RegExp[],
  sources: readonly string[],
];

const POT = [/^D7\b/, /pot line/, /dumped to ground while VBLANK D7 is 1/];

/** S. Wright, programmer's guide (1979), in the sections named; for SWACNT also the 6532 data sheet. */
const ROWS: readonly Row[] = [
  ['SWCHA', 0x0280, 'read and write', [/port A/, /hand controllers/], ['G [PIA 5]']],
  [
    'SWACNT',
    0x0281,
    'read and write',
    [/port A data direction/, /bit by bit/, /0 input, 1 output/],
    ['G [PIA 5.1]', 'D'],
  ],
  ['SWCHB', 0x0282, 'read', [/port B/, /console switches/], ['G [PIA 4.1]']],
  ['SWBCNT', 0x0283, 'left alone', [/port B data direction/, /stays all input/], ['G [PIA 4.1]']],
  ['INPT0', 0x0008, 'read', POT, ['G [TIA 12.1]']],
  ['INPT1', 0x0009, 'read', POT, ['G [TIA 12.1]']],
  ['INPT2', 0x000a, 'read', POT, ['G [TIA 12.1]']],
  ['INPT3', 0x000b, 'read', POT, ['G [TIA 12.1]']],
  ['INPT4', 0x000c, 'read', [/^D7\b/, /left button/, /latched while VBLANK D6 is 1/], ['G [TIA 12.2]']],
  ['INPT5', 0x000d, 'read', [/^D7\b/, /right button/, /latched while VBLANK D6 is 1/], ['G [TIA 12.2]']],
  [
    'VBLANK',
    0x0001,
    'write',
    [/D1 blanks/, /D6 enables the button latch/, /D7 dumps the pot/],
    ['G [TIA 12]'],
  ],
];

describe('the registers', () => {
  it('are the eleven that input needs', () => {
    expect(Object.keys(REGISTERS).sort()).toEqual(ROWS.map(([symbol]) => symbol).sort());
  });

  it.each(ROWS)(
    '%s has its address, access, contents and sources',
    (symbol, address, access, holds, sources) => {
      const register = REGISTERS[symbol];
      expect(register.symbol).toBe(symbol);
      expect(register.address).toBe(address);
      expect(register.access).toBe(access);
      for (const words of holds) expect(register.holds).toMatch(words);
      expect(citeAll(register.sources)).toEqual(sources);
    },
  );

  it('of the pots and of the buttons do not name each other’s line', () => {
    for (const symbol of ['INPT0', 'INPT1', 'INPT2', 'INPT3'] as const)
      expect(REGISTERS[symbol].holds).not.toMatch(/button|latch/);
    for (const symbol of ['INPT4', 'INPT5'] as const)
      expect(REGISTERS[symbol].holds).not.toMatch(/pot|ground/);
    expect(REGISTERS.INPT4.holds).not.toContain('right');
    expect(REGISTERS.INPT5.holds).not.toContain('left');
  });

  /** MOS Technology 6532 data sheet, register addressing: A2 low; A1 A0 are 00 ORA, 01 DDRA, 10 ORB, 11 DDRB. */
  it.each([
    ['SWCHA', 0b000],
    ['SWACNT', 0b001],
    ['SWCHB', 0b010],
    ['SWBCNT', 0b011],
  ] as const)('%s is where the data sheet of the 6532 has it', (symbol, low) => {
    expect(REGISTERS[symbol].address & 0b111).toBe(low);
  });

  it('are where the equates that Debian’s cc65 ships have them', () => {
    const equates = equatesOf(tool('ca65'));
    for (const { symbol, address } of Object.values(REGISTERS))
      expect([symbol, equates.get(symbol)]).toEqual([symbol, address]);
  });
});

describe('the bits and offsets beside the registers', () => {
  it('of VBLANK are D1 blank, D6 latch, D7 dump (programmer’s guide [TIA 12])', () => {
    expect(VBLANK_BITS).toEqual({ blank: 1 << 1, latch: 1 << 6, dump: 1 << 7 });
  });

  it('put the second answer of INPT n at $0030 + n (common practice, no source)', () => {
    const { INPT0, INPT1, INPT2, INPT3, INPT4, INPT5 } = REGISTERS;
    const mirrors = [INPT0, INPT1, INPT2, INPT3, INPT4, INPT5].map(
      ({ address }) => address + INPT_MIRROR_OFFSET,
    );
    expect(mirrors).toEqual([0x30, 0x31, 0x32, 0x33, 0x34, 0x35]);
  });

  it('give the machine 128 bytes of RAM (6532 data sheet)', () => {
    expect(RAM_BYTES).toBe(128);
  });
});

/** The register equates for the video chip and the 6532, found by what stands in them. */
function equatesOf(ca65: string): ReadonlyMap<string, number> {
  const folder = join(dirname(realpathSync(ca65)), '..', 'share', 'cc65', 'asminc');
  const texts = readdirSync(folder)
    .filter(name => name.endsWith('.inc'))
    .map(name => readFileSync(join(folder, name), 'utf8'))
    .filter(text => /^CXBLPF\b/m.test(text) || /^SWACNT\b/m.test(text));
  const lines = texts.flatMap(text => [...text.matchAll(/^([A-Z][A-Z0-9]*)\s*:?=\s*\$([0-9A-F]+)/gm)]);
  return new Map(lines.map(([, name = '', hex = '']) => [name, Number.parseInt(hex, 16)]));
}
