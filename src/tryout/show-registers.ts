import type { Phrases } from '../documents/phrase-book.js';
import type { Contact } from '../gestures/contacts.js';
import type { Play } from '../gestures/play.js';
import { INPUT_REGISTERS, type InputRegister, registersOf } from '../handoff/registers.js';
import { REGISTERS } from '../hardware/registers.js';
import { type Wire, type WireBit, wireOf } from '../hardware/wiring.js';
import { element, partOf, setText } from './dom.js';

const BITS = [7, 6, 5, 4, 3, 2, 1, 0];

interface Cell {
  readonly register: InputRegister;
  readonly mask: number;
  /** The keypad row that is driven while it is read; 0 for none. */
  readonly row: number;
  readonly bit: HTMLElement;
  readonly box: HTMLElement;
}

/** The table of the input registers, bit by bit; keypads add a line for each row that is driven. */
export function createRegisters({
  play,
  levels,
  phrases,
}: {
  play: Play;
  levels: readonly number[];
  phrases: Phrases;
}) {
  const { say, count } = phrases;
  const cells: Cell[] = [];
  const values = new Map<InputRegister, HTMLElement>();
  const head = element(
    'tr',
    {},
    ...[say('try register'), say('try value'), ...BITS.map(bit => `D${bit}`)].map(headCell),
  );
  const keypadRows = [1, 2, 3, 4].filter(row => play.contacts.some(contact => rowOf(contact) === row));
  const lines = INPUT_REGISTERS.map(lineOf);
  partOf('registers').replaceChildren(element('thead', {}, head), element('tbody', {}, ...lines));
  partOf('keypads').replaceChildren(...(keypadRows.length === 0 ? [] : keypadTable()));
  const show = (now: readonly number[]) => {
    const read = registersOf(play.contacts, now);
    const byteOf = (register: InputRegister, row: number) =>
      (row === 0 ? read.values : (read.rows.get(row) ?? read.values))[register];
    for (const [register, target] of values) setText(target, hexByte(byteOf(register, 0)));
    for (const { register, mask, row, bit, box } of cells) {
      setText(bit, (byteOf(register, row) & mask) === 0 ? '0' : '1');
      box.classList.toggle('engaged', isEngaged(play, now, register, mask, row));
    }
    for (const [id, position] of read.paddles) setText(paddleNote(id), count('try lines', position));
  };
  show(levels);
  return { show };

  function lineOf(register: InputRegister): HTMLElement {
    const value = element('td', { class: 'value' });
    values.set(register, value);
    const address = element('small', {}, hexByte(REGISTERS[register].address, 4));
    const title = element('th', { scope: 'row' }, register, ' ', address);
    return element('tr', {}, title, value, ...BITS.map(bit => bitCell(register, 1 << bit, 0)));
  }

  /** What D7 of the columns reads while each row is driven low. */
  function keypadTable(): readonly HTMLElement[] {
    const columns = INPUT_REGISTERS.filter(register =>
      play.contacts.some(contact => rowOf(contact) > 0 && isWired(contact, register, 0x80, rowOf(contact))),
    );
    const heads = [say('try row driven'), ...columns.map(register => `${register} D7`)].map(headCell);
    const rows = keypadRows.map(row => {
      const title = element('th', { scope: 'row' }, say('try row', { number: row }));
      return element('tr', {}, title, ...columns.map(register => bitCell(register, 0x80, row)));
    });
    return [element('thead', {}, element('tr', {}, ...heads)), element('tbody', {}, ...rows)];
  }

  function bitCell(register: InputRegister, mask: number, row: number): HTMLElement {
    const wired = play.contacts.filter(contact => isWired(contact, register, mask, row));
    const bit = element('b');
    const box = element('td', { class: wired.length === 0 ? 'unused' : undefined }, bit);
    box.append(...wired.map(({ id }) => element('span', {}, id)));
    for (const contact of wired)
      if (wireOf(contact).kind === 'pot') box.append(element('em', { 'data-lines': contact.id }));
    cells.push({ register, mask, row, bit, box });
    return box;
  }

  function paddleNote(id: string): HTMLElement {
    const notes = [...partOf('registers').querySelectorAll<HTMLElement>('[data-lines]')];
    return notes.find(note => note.dataset['lines'] === id) ?? element('em');
  }
}

const headCell = (text: string): HTMLElement => element('th', { scope: 'col' }, text);

const hexByte = (value: number, digits = 2): string =>
  `$${value.toString(16).toUpperCase().padStart(digits, '0')}`;

function rowOf(contact: Contact): number {
  const wire = wireOf(contact);
  return wire.kind === 'matrix' ? wire.row : 0;
}

function bitsOf(wire: Wire): readonly WireBit[] {
  return wire.kind === 'gray' ? [wire.high, wire.low] : [wire.bit];
}

function isWired(contact: Contact, register: InputRegister, mask: number, row: number): boolean {
  const wire = wireOf(contact);
  return rowOf(contact) === row && bitsOf(wire).some(bit => bit.register === register && bit.mask === mask);
}

function isEngaged(
  { contacts }: Play,
  levels: readonly number[],
  register: InputRegister,
  mask: number,
  row: number,
): boolean {
  return contacts.some((contact, index) => {
    const { kind } = wireOf(contact);
    const isContact = kind === 'line' || kind === 'matrix';
    return isContact && levels[index] === 1 && isWired(contact, register, mask, row);
  });
}
