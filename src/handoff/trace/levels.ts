import type { Contact } from '../../gestures/contacts.js';
import { WHEEL } from '../../hardware/turning.js';
import { type WireBit, wireOf } from '../../hardware/wiring.js';
import { INPUT_REGISTERS, type RegisterValues } from '../registers.js';
import type { LogRead } from './log.js';

/** What a log's registers say of each contact, as levels of the gesture engine. */
export function levelsOfRead(
  contacts: readonly Contact[],
  read: LogRead,
  before: readonly number[],
): readonly number[] {
  return contacts.map((contact, index) => levelOf(contact, read, before[index] ?? 0));
}

function levelOf(contact: Contact, read: LogRead, before: number): number {
  const wire = wireOf(contact);
  switch (wire.kind) {
    case 'line':
      return bitOf(read.values, wire.bit) === wire.engagedReads ? 1 : 0;
    case 'two-position':
      return Math.max(
        0,
        wire.positions.findIndex(({ reads }) => reads === bitOf(read.values, wire.bit)),
      );
    case 'matrix': {
      const driven = read.rows.get(wire.row);
      if (driven === undefined) return 0;
      return bitOf({ ...read.values, ...driven }, wire.bit) === wire.engagedReads ? 1 : 0;
    }
    case 'pot':
      return read.paddles.get(contact.id) ?? before;
    case 'gray':
      return turnedBy(before, 2 * bitOf(read.values, wire.high) + bitOf(read.values, wire.low));
    default:
      return wire satisfies never;
  }
}

function bitOf(values: RegisterValues, { register, mask }: WireBit): 0 | 1 {
  const symbol = INPUT_REGISTERS.find(name => name === register);
  return symbol !== undefined && (values[symbol] & mask) !== 0 ? 1 : 0;
}

const CODES = 4;

/** A wheel's position goes the nearest way to one with this code. */
function turnedBy(before: number, code: number): number {
  const wanted = WHEEL.clockwise.indexOf(code as 0 | 1 | 2 | 3);
  const steps = (((wanted - before) % CODES) + CODES) % CODES;
  return before + (steps === CODES - 1 ? -1 : steps);
}
