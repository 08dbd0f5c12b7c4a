import type { Binding } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import type { RegisterSymbol } from '../../hardware/registers.js';
import { type Wire, wireOf } from '../../hardware/wiring.js';
import type { SeatsRow } from '../../language/model.js';

/**
 * A byte of lines as the routine holds them after reading: 1 where a line is engaged; for a two-position switch
 * 1 in the position that reads 1; for a wheel its code inverted. Bits no line has mean nothing.
 *
 * `A` SWCHA, `B` SWCHB (both with the register's own bits), `I` the INPT lines, `K0`, `K1`, … the keys. A bank
 * named by its register (`INPT4`) is one line that is tested where it is read, and is never held.
 */
export interface Bank {
  readonly id: string;
  readonly lines: readonly BankLine[];
}

export interface BankLine {
  readonly contact: Contact;
  readonly wire: Wire;
  /** One bit; two for a wheel. */
  readonly mask: number;
}

/** Where a contact lies: null for a paddle, whose position is a byte of its own. */
export interface Spot {
  readonly bank: string;
  readonly mask: number;
}

const BYTE_BITS = 8;
const TOP_BIT = 0x80;

export interface BankMap {
  readonly banks: readonly Bank[];
  readonly spotOf: (contact: Contact) => Spot;
  readonly lineOf: (spot: Spot) => BankLine | undefined;
}

/**
 * @param contacts the unit's own
 * @param keys every key that a mode of the seats row uses, in scan order: all its modes scan them
 * @param direct lines on INPT registers that need no bank
 */
export function createBanks(
  contacts: readonly Contact[],
  keys: readonly Contact[],
  direct: readonly Contact[],
): BankMap {
  const wired = uniqueContacts(contacts)
    .filter(({ id }) => direct.every(contact => contact.id !== id))
    .map(contact => ({ contact, wire: wireOf(contact) }));
  const banks = [
    registerBank('A', wired, 'SWCHA'),
    registerBank('B', wired, 'SWCHB'),
    inptBank(wired),
    ...keyBanks(keys),
    ...uniqueContacts(direct).map(directBank),
  ].filter(({ lines }) => lines.length > 0);
  const spots = new Map(
    banks.flatMap(({ id, lines }) => lines.map(({ contact, mask }) => [contact.id, { bank: id, mask }])),
  );
  return {
    banks,
    spotOf: contact => {
      const spot = spots.get(contact.id);
      if (spot === undefined) throw new RangeError(`${contact.id} has no bank`);
      return spot;
    },
    lineOf: ({ bank, mask }) =>
      banks.find(({ id }) => id === bank)?.lines.find(line => (line.mask & mask) !== 0),
  };
}

interface Wired {
  readonly contact: Contact;
  readonly wire: Wire;
}

/** Lines on one register, each on its own bit there. */
function registerBank(id: string, wired: readonly Wired[], register: RegisterSymbol): Bank {
  const lines = wired.flatMap(({ contact, wire }): readonly BankLine[] => {
    if (wire.kind === 'gray' && wire.high.register === register) return [{ contact, wire, mask: wire.mask }];
    if (wire.kind !== 'line' && wire.kind !== 'two-position') return [];
    return wire.bit.register === register ? [{ contact, wire, mask: wire.bit.mask }] : [];
  });
  return { id, lines };
}

/** Two lines lie in D7 and D6, as reading them leaves them; more are shifted in, the last one to D0. */
function inptBank(wired: readonly Wired[]): Bank {
  const found = wired
    .filter(({ wire }) => wire.kind === 'line' && wire.bit.register.startsWith('INPT'))
    .sort((a, b) => (inptRegister(a.wire) < inptRegister(b.wire) ? -1 : 1));
  const lines = found.map(({ contact, wire }, index) => ({
    contact,
    wire,
    mask: found.length <= 2 ? TOP_BIT >> index : 1 << (found.length - 1 - index),
  }));
  return { id: 'I', lines };
}

function directBank(contact: Contact): Bank {
  const wire = wireOf(contact);
  return { id: inptRegister(wire), lines: [{ contact, wire, mask: TOP_BIT }] };
}

export function inptRegister(wire: Wire): RegisterSymbol {
  if (wire.kind !== 'line' && wire.kind !== 'matrix') throw new RangeError(`${wire.kind} is on no INPT line`);
  return wire.bit.register;
}

/** Eight keys a byte, shifted in as they are scanned. */
function keyBanks(keys: readonly Contact[]): readonly Bank[] {
  const count = Math.ceil(keys.length / BYTE_BITS);
  return Array.from({ length: count }, (_, number) => {
    const own = keys.slice(number * BYTE_BITS, (number + 1) * BYTE_BITS);
    const lines = own.map((contact, index) => ({
      contact,
      wire: wireOf(contact),
      mask: 1 << (own.length - 1 - index),
    }));
    return { id: `K${number}`, lines };
  });
}

/** Keys in the order of the scan: by row, the left port first, by column. */
export function keysOf(bindings: readonly Binding[]): readonly Contact[] {
  const keys = uniqueContacts(bindings.flatMap(({ parts }) => parts)).filter(isKey);
  return keys.toSorted((a, b) => scanPlace(a) - scanPlace(b));
}

export function isKey(contact: Contact): boolean {
  return contact.kind === 'control' && contact.control.wiring.kind === 'matrix';
}

function scanPlace(contact: Contact): number {
  if (contact.kind !== 'control' || contact.control.wiring.kind !== 'matrix') return -1;
  const { row, column } = contact.control.wiring;
  return row * 100 + (contact.port === 'left' ? 0 : 10) + column;
}

export function uniqueContacts(contacts: readonly Contact[]): readonly Contact[] {
  return [...new Map(contacts.map(contact => [contact.id, contact])).values()];
}

/** True where the seats row has a paddle in use: pots are dumped while the routine runs. */
export function hasPots(seats: SeatsRow): boolean {
  return [seats.left, seats.right].some(
    controller => controller?.controls.some(({ wiring }) => wiring.kind === 'pot') === true,
  );
}
