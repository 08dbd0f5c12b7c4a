import type { Element } from 'hast';
import { h } from '../page/elements.js';
import type { RamByte } from './ram-byte.js';
import type { ModeRam } from './ram-view.js';
import type { BitsView } from './view.js';

const BITS = [7, 6, 5, 4, 3, 2, 1, 0] as const;

/** The state byte by byte, and its total. */
export function ramSection({ ram, ramBytes }: BitsView): readonly Element[] {
  const free = ramBytes - ram.total;
  return [
    h('p', [
      `${ram.about} In all `,
      h('strong', `${ram.total} of ${ramBytes} bytes`),
      `; ${free} are left for the game and the stack. Modes use the same bytes one after the other.`,
    ]),
    ramMeter(ram.total, ramBytes),
    ramBlock({ mode: 'In every mode', prefixes: [], bytes: ram.shared }),
    ...(ram.fired ?? []).map(fired => ramBlock({ ...fired, mode: `What fired in ${fired.mode}` })),
    ...ram.modes.filter(({ bytes }) => bytes.length > 0).map(ramBlock),
  ];
}

/** All bytes of the machine as small squares, those in use filled. */
function ramMeter(used: number, all: number): Element {
  return h(
    'div',
    { class: 'meter', role: 'img', 'aria-label': `${used} of ${all} bytes in use` },
    Array.from({ length: all }, (_, index) => h('span', { class: index < used ? 'used' : 'free' })),
  );
}

function ramBlock({ mode, prefixes, bytes }: ModeRam): Element {
  const whole = bytes.filter(({ bits }) => bits.length === 0);
  const split = bytes.filter(({ bits }) => bits.length > 0);
  return h('section', { class: 'ram-block' }, [
    h('h3', mode),
    ...(prefixes.length === 0 ? [] : [h('p', { class: 'note' }, prefixText(prefixes))]),
    ...(whole.length === 0 ? [] : [h('ul', { class: 'bytes' }, whole.map(byteItem))]),
    ...(split.length === 0 ? [] : [bitTable(mode, split)]),
  ]);
}

function prefixText(prefixes: readonly string[]): (Element | string)[] {
  return [
    'Symbols begin with ',
    ...prefixes.flatMap((prefix, index) => [index === 0 ? '' : ' or ', h('code', prefix)]),
    '.',
  ];
}

function byteItem({ offset, name, holds }: RamByte): Element {
  return h('li', [h('span', { class: 'offset' }, String(offset)), h('code', name), ` ${holds}`]);
}

function bitTable(mode: string, bytes: readonly RamByte[]): Element {
  return h('table', { class: 'ram' }, [
    h('caption', { class: 'read-only' }, `${mode}: bytes bit by bit`),
    h('thead', [
      h('tr', [
        h('th', { scope: 'col' }, 'Byte'),
        h('th', { scope: 'col' }, 'Name and use'),
        ...BITS.map(bit => h('th', { scope: 'col', class: 'bit' }, `D${bit}`)),
      ]),
    ]),
    h('tbody', bytes.map(ramRow)),
  ]);
}

function ramRow({ offset, name, holds, bits }: RamByte): Element {
  return h('tr', [
    h('th', { scope: 'row' }, String(offset)),
    h('td', [h('code', name), h('span', { class: 'sub' }, holds)]),
    ...bits.map(text =>
      text === ''
        ? h('td', { class: 'unused' }, h('span', { class: 'read-only' }, 'unused'))
        : h('td', { class: 'bound' }, text),
    ),
  ]);
}
