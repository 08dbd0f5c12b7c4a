import type { Contact } from '../../gestures/contacts.js';
import type { Position } from '../../hardware/switches.js';
import { type Wire, type WireBit, wireOf } from '../../hardware/wiring.js';
import type { Gesture } from '../../language/model.js';
import { hexAddress, hexByte } from './words.js';

/** Where one contact is read, as the cells of a table. */
export interface WireCells {
  /** `left stick up`, `RESET`. */
  readonly control: string;
  /** Pins of the port; empty for a panel switch. */
  readonly pins: readonly number[];
  readonly register: string;
  readonly address: string;
  /** `D4`; `D5 D4` for a wheel. */
  readonly bit: string;
  readonly mask: string;
  /** What it reads when engaged: `0`, `1`, `count`, `code`, `changed`. */
  readonly engagedReads: string;
  /** What must be driven while it is read: `SWCHA D5 low`. */
  readonly before: string | null;
}

/** @param gesture tells which position of a two-position switch counts as engaged */
export function wireCells(contact: Contact, gesture: Gesture): WireCells {
  const wire = wireOf(contact);
  const where = 'bit' in wire ? bitCells(wire.bit) : grayCells(wire);
  return {
    control: contact.id,
    pins: pinsOf(wire),
    ...where,
    engagedReads: engagedText(wire, gesture),
    before: wire.kind === 'matrix' ? `${wire.drive.register} ${bitName(wire.drive)} low` : null,
  };
}

const bitName = ({ bit }: WireBit): string => `D${bit}`;

const bitCells = (bit: WireBit) => ({
  register: bit.register,
  address: hexAddress(bit.address),
  bit: bitName(bit),
  mask: hexByte(bit.mask),
});

const grayCells = (wire: Extract<Wire, { kind: 'gray' }>) => ({
  register: wire.high.register,
  address: hexAddress(wire.high.address),
  bit: `${bitName(wire.high)} ${bitName(wire.low)}`,
  mask: hexByte(wire.mask),
});

function pinsOf(wire: Wire): readonly number[] {
  switch (wire.kind) {
    case 'two-position':
      return [];
    case 'line':
      return wire.pin === null ? [] : [wire.pin];
    case 'pot':
      return [wire.pin];
    case 'matrix':
      return [wire.drivePin, wire.pin];
    case 'gray':
      return [wire.highPin, wire.lowPin];
    default:
      return wire satisfies never;
  }
}

function engagedText(wire: Wire, gesture: Gesture): string {
  switch (wire.kind) {
    case 'pot':
      return 'count';
    case 'gray':
      return 'code';
    case 'two-position':
      return 'position' in gesture ? String(positionReads(wire, gesture.position)) : 'change';
    case 'line':
    case 'matrix':
      return String(wire.engagedReads);
    default:
      return wire satisfies never;
  }
}

/** What a two-position switch's bit reads in a position. */
export function positionReads(wire: Extract<Wire, { kind: 'two-position' }>, position: Position): 0 | 1 {
  const found = wire.positions.find(({ name }) => name === position);
  if (found === undefined) throw new RangeError(`No position ${position} on ${wire.bit.register}`);
  return found.reads;
}
