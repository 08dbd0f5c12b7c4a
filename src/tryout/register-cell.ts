import type { Phrases } from '../documents/phrase-book.js';
import { type Contact, contactType } from '../gestures/contacts.js';
import type { InputRegister } from '../handoff/registers.js';
import { type Wire, type WireBit, wireOf } from '../hardware/wiring.js';
import { element, setText } from './dom.js';
import { keypadLineWords, wireWords } from './words.js';

/** One bit of a register as it is shown. */
export interface BitCell {
  readonly place: BitPlace;
  readonly target: HTMLElement;
  /**
   * @param byte what the register reads
   * @param levels by contact of the play
   */
  show(byte: number, levels: readonly number[]): void;
}

export interface BitPlace {
  readonly register: InputRegister;
  readonly mask: number;
  /** The keypad row that is driven while it is read; 0 for none. */
  readonly row: number;
}

export function createBitCell(place: BitPlace, contacts: readonly Contact[], phrases: Phrases): BitCell {
  const wired = contacts
    .map((contact, index) => ({ contact, index }))
    .filter(at => isWired(at.contact, place));
  const bit = element('b');
  const lines = keypadLinesOn(place, contacts, phrases);
  const names = [...wired.map(({ contact }) => wireWords(contact, phrases)), ...lines].map(words =>
    element('span', {}, words),
  );
  const pots = wired.filter(({ contact }) => wireOf(contact).kind === 'pot');
  const notes = pots.map(({ contact }) => element('em', { 'data-lines': contact.id }));
  const target = element('td', { class: names.length === 0 ? 'unused' : undefined }, bit, ...names, ...notes);
  const momentary = wired.filter(({ contact }) => contactType(contact) === 'momentary');
  return {
    place,
    target,
    show(byte, levels) {
      setText(bit, (byte & place.mask) === 0 ? '0' : '1');
      target.classList.toggle(
        'engaged',
        momentary.some(({ index }) => levels[index] === 1),
      );
      notes.forEach((note, at) => {
        setText(note, phrases.count('try lines', levels[pots[at]?.index ?? -1] ?? 0));
      });
    },
  };
}

/** The rows and columns of keypads on a bit; what the columns read is told row by row elsewhere. */
function keypadLinesOn(place: BitPlace, contacts: readonly Contact[], phrases: Phrases): readonly string[] {
  if (place.row !== 0) return [];
  const lines = contacts.flatMap(contact => {
    const wire = wireOf(contact);
    if (contact.kind === 'switch' || wire.kind !== 'matrix') return [];
    if (isAt(wire.drive, place)) return [keypadLineWords(contact.port, 'row', wire.row, phrases)];
    return isAt(wire.bit, place) ? [keypadLineWords(contact.port, 'column', wire.column, phrases)] : [];
  });
  return [...new Set(lines)];
}

/** The keypad row that a contact is read on; 0 for what is on none. */
export function rowOf(contact: Contact): number {
  const wire = wireOf(contact);
  return wire.kind === 'matrix' ? wire.row : 0;
}

export function isWired(contact: Contact, place: BitPlace): boolean {
  return rowOf(contact) === place.row && bitsOf(wireOf(contact)).some(bit => isAt(bit, place));
}

const isAt = (bit: WireBit, { register, mask }: BitPlace): boolean =>
  bit.register === register && bit.mask === mask;

const bitsOf = (wire: Wire): readonly WireBit[] =>
  wire.kind === 'gray' ? [wire.high, wire.low] : [wire.bit];
