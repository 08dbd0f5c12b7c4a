import type { Phrases } from '../documents/phrase-book.js';
import type { Contact } from '../gestures/contacts.js';
import type { Play } from '../gestures/play.js';
import { INPUT_REGISTERS, type InputRegister, type ReadValues, registersOf } from '../handoff/registers.js';
import { REGISTERS } from '../hardware/registers.js';
import { element, partOf, setText } from './dom.js';
import { type BitCell, createBitCell, isWired, rowOf } from './register-cell.js';

const BITS = [7, 6, 5, 4, 3, 2, 1, 0];
const D7 = 0x80;
const KEYPAD_ROWS = [1, 2, 3, 4];

/** The input registers bit by bit; keypads have a table of their own, a line for each row that is driven. */
export function createRegisters({ contacts }: Play, phrases: Phrases) {
  const { say } = phrases;
  const cell = (register: InputRegister, mask: number, row: number) =>
    createBitCell({ register, mask, row }, contacts, phrases);
  const registers = INPUT_REGISTERS.map(register => ({
    register,
    value: element('td', { class: 'value' }),
    cells: BITS.map(bit => cell(register, 1 << bit, 0)),
  }));
  const columns = columnsOf(contacts);
  const rows = columns.length === 0 ? [] : KEYPAD_ROWS;
  const keypad = rows.map(row => ({ row, cells: columns.map(register => cell(register, D7, row)) }));
  fillTable(
    'registers',
    [say('try register'), say('try value'), ...BITS.map(bit => `D${bit}`)],
    registers.map(({ register, value, cells }) => {
      const address = element('small', {}, hexByte(REGISTERS[register].address, 4));
      return [element('th', { scope: 'row' }, register, ' ', address), value, ...targetsOf(cells)];
    }),
  );
  fillTable(
    'keypads',
    [say('try row driven'), ...columns.map(register => `${register} D7`)],
    keypad.map(({ row, cells }) => [
      element('th', { scope: 'row' }, say('try row', { number: row })),
      ...targetsOf(cells),
    ]),
  );
  const all = [...registers, ...keypad].flatMap(({ cells }) => cells);
  return {
    show(levels: readonly number[]) {
      const read = registersOf(contacts, levels);
      for (const { register, value } of registers) setText(value, hexByte(read.values[register]));
      for (const each of all) each.show(byteAt(read, each), levels);
    },
  };
}

/** The registers on which keypads are read. */
const columnsOf = (contacts: readonly Contact[]): readonly InputRegister[] =>
  INPUT_REGISTERS.filter(register =>
    contacts.some(
      contact => rowOf(contact) > 0 && isWired(contact, { register, mask: D7, row: rowOf(contact) }),
    ),
  );

const targetsOf = (cells: readonly BitCell[]): readonly HTMLElement[] => cells.map(({ target }) => target);

function byteAt({ values, rows }: ReadValues, { place: { register, row } }: BitCell): number {
  return (row === 0 ? values : (rows.get(row) ?? values))[register];
}

/** Nothing where there are no rows: then the frame in which it scrolls is no stop for Tab. */
function fillTable(name: string, heads: readonly string[], rows: readonly (readonly HTMLElement[])[]): void {
  const head = element('tr', {}, ...heads.map(text => element('th', { scope: 'col' }, text)));
  const body = rows.map(cells => element('tr', {}, ...cells));
  const parts = [element('thead', {}, head), element('tbody', {}, ...body)];
  const table = partOf(name);
  table.replaceChildren(...(rows.length === 0 ? [] : parts));
  table.parentElement?.toggleAttribute('hidden', rows.length === 0);
}

const hexByte = (value: number, digits = 2): string =>
  `$${value.toString(16).toUpperCase().padStart(digits, '0')}`;
