import type { Binding } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import {
  type CpuTest,
  changeTest,
  levelsTest,
  paddleTest,
  type WantedLevel,
  wheelTest,
} from '../../hardware/cpu-test.js';
import type { Instruction } from '../../hardware/instructions.js';
import type { Port } from '../../hardware/ports.js';
import { type Wire, wireOf } from '../../hardware/wiring.js';
import type { Gesture } from '../../language/model.js';
import { positionReads } from './wire-cells.js';

/** The instructions that tell whether a binding's control is engaged (turned, moved) at this read. */
export function testOfBinding({ parts, gesture }: Binding): CpuTest {
  const [only] = parts;
  if (only !== undefined && parts.length === 1) {
    const turned = testOfTurning(only, wireOf(only));
    if (turned !== null) return turned;
    const moved = testOfFlip(wireOf(only), gesture);
    if (moved !== null) return moved;
  }
  const isChord = parts.length > 1;
  return levelsTest(
    parts.flatMap(part => {
      const wire = wireOf(part);
      return isChord && wire.kind === 'matrix' ? [keptKey(part, wire)] : levelOf(wire, gesture);
    }),
  );
}

/** Keys of a chord are in rows read one after the other, so the chord is tested on what the scan has kept. */
function keptKey(contact: Contact, { row, column }: Extract<Wire, { kind: 'matrix' }>): WantedLevel {
  const index = (row - 1) * KEYPAD_COLUMNS + (column - 1);
  const port = contact.kind === 'control' ? contact.port : 'left';
  const bit = { register: keysName(port, index), address: 0, mask: 1 << (index % BITS_PER_BYTE) };
  return { bit, reads: 0 };
}

const KEYPAD_COLUMNS = 3;
const BITS_PER_BYTE = 8;

/** The byte that keeps a key: 1 to 8 in the first (key 1 in D0), 9, star, 0, hash in the second. */
export function keysName(port: Port, keyIndex: number): string {
  return `keys_${port === 'left' ? 'L' : 'R'}${keyIndex < BITS_PER_BYTE ? '1' : '2'}`;
}

function testOfTurning(contact: Contact, wire: Wire): CpuTest | null {
  if (wire.kind === 'gray') return wheelTest(wire, keptName(contact));
  if (wire.kind === 'pot') return paddleTest(countName(contact), keptName(contact));
  return null;
}

function testOfFlip(wire: Wire, gesture: Gesture): CpuTest | null {
  return wire.kind === 'two-position' && gesture.kind === 'flip' ? changeTest(wire.bit, SWITCHES_KEPT) : null;
}

function levelOf(wire: Wire, gesture: Gesture): readonly WantedLevel[] {
  switch (wire.kind) {
    case 'line':
    case 'matrix':
      return [{ bit: wire.bit, reads: wire.engagedReads }];
    case 'two-position':
      return 'position' in gesture ? [{ bit: wire.bit, reads: positionReads(wire, gesture.position) }] : [];
    case 'pot':
    case 'gray':
      return [];
    default:
      return wire satisfies never;
  }
}

/** The byte that keeps the panel switches as they were at the read before. */
export const SWITCHES_KEPT = 'was_SWCHB';

/** The byte that counts a paddle's lines: `count_LA`. */
export function countName(contact: Contact): string {
  return `count_${shortPlace(contact)}`;
}

/** The byte that keeps what a paddle or a wheel read before: `was_LA`, `was_L`. */
export function keptName(contact: Contact): string {
  return `was_${shortPlace(contact)}`;
}

function shortPlace(contact: Contact): string {
  if (contact.kind === 'switch') return contact.name;
  return `${contact.port === 'left' ? 'L' : 'R'}${contact.control.seat}`;
}

/** `BIT INPT4`, as an assembler takes it. */
export function instructionText({ mnemonic, operand }: Instruction): string {
  return `${mnemonic} ${operand}`;
}
