import type { Contact } from '../gestures/contacts.js';
import type { RegisterSymbol } from '../hardware/registers.js';
import { SWCHB_UNUSED_MASK } from '../hardware/switches.js';
import { WHEEL } from '../hardware/turning.js';
import { wireOf } from '../hardware/wiring.js';

/** The registers that inputs are read from. */
export const INPUT_REGISTERS = [
  'SWCHA',
  'SWCHB',
  'INPT0',
  'INPT1',
  'INPT2',
  'INPT3',
  'INPT4',
  'INPT5',
] as const;
export type InputRegister = (typeof INPUT_REGISTERS)[number];
export type RegisterValues = Readonly<Record<InputRegister, number>>;

/** What is read at one read. */
export interface ReadValues {
  /** With no keypad row driven. */
  readonly values: RegisterValues;
  /** By row, 1 to 4: while that row of each keypad is driven. Empty where no keypad is plugged in. */
  readonly rows: ReadonlyMap<number, RegisterValues>;
  /** Positions of paddles, by contact id: what counting their lines gave. */
  readonly paddles: ReadonlyMap<string, number>;
}

const AT_REST: RegisterValues = {
  SWCHA: 0xff,
  SWCHB: 0xff,
  INPT0: 0x00,
  INPT1: 0x00,
  INPT2: 0x00,
  INPT3: 0x00,
  INPT4: 0x80,
  INPT5: 0x80,
};

/**
 * Register values for levels as the gesture engine has them. Bits that nothing drives read 1 here, those of
 * SWCHB that are not wired 0.
 *
 * @param contacts everything that is plugged in, and the switches
 * @param levels by contact, as `Engine` counts them
 */
export function registersOf(contacts: readonly Contact[], levels: readonly number[]): ReadValues {
  const values: Record<InputRegister, number> = { ...AT_REST, SWCHB: AT_REST.SWCHB & ~SWCHB_UNUSED_MASK };
  const paddles = new Map<string, number>();
  contacts.forEach((contact, index) => {
    const level = levels[index] ?? 0;
    const wire = wireOf(contact);
    if (wire.kind === 'line')
      setBit(values, wire.bit, level === 1 ? wire.engagedReads : 1 - wire.engagedReads);
    if (wire.kind === 'two-position') setBit(values, wire.bit, wire.positions[level]?.reads ?? 0);
    if (wire.kind === 'pot') paddles.set(contact.id, level);
    if (wire.kind === 'gray') {
      const code = WHEEL.clockwise[((level % 4) + 4) % 4] ?? 0;
      setBit(values, wire.high, code >> 1);
      setBit(values, wire.low, code & 1);
    }
  });
  return { values, rows: keypadRows(contacts, levels, values), paddles };
}

interface Bit {
  readonly register: RegisterSymbol;
  readonly mask: number;
}

function setBit(values: Record<InputRegister, number>, { register, mask }: Bit, level: number): void {
  const symbol = INPUT_REGISTERS.find(name => name === register);
  if (symbol !== undefined) values[symbol] = level === 1 ? values[symbol] | mask : values[symbol] & ~mask;
}

/** The columns of each row; a column reads 1 unless a pressed key pulls it down. */
function keypadRows(
  contacts: readonly Contact[],
  levels: readonly number[],
  base: RegisterValues,
): ReadonlyMap<number, RegisterValues> {
  const rows = new Map<number, Record<InputRegister, number>>();
  contacts.forEach((contact, index) => {
    const wire = wireOf(contact);
    if (wire.kind !== 'matrix') return;
    const row = rows.get(wire.row) ?? { ...base };
    rows.set(wire.row, row);
    setBit(row, wire.bit, levels[index] === 1 ? 0 : 1);
  });
  return rows;
}
