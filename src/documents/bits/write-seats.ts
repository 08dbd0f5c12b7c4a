import type { Element } from 'hast';
import { h, table } from '../page/elements.js';
import { portFigure } from './port-figure.js';
import type { PortView } from './port-view.js';
import type { MapBit, RegisterMap } from './register-maps.js';
import type { SeatsView } from './view.js';

/** One seats row: both ports pin by pin, and every input register bit by bit. */
export function seatsSection({ row, players, ports, maps }: SeatsView, id: string): readonly Element[] {
  return [
    h('section', { class: 'seats', id }, [
      h('h3', [`${row.name} `, h('span', { class: 'of' }, players)]),
      h('div', { class: 'ports' }, ports.map(portBlock)),
      h(
        'p',
        { class: 'note' },
        'Looking at the console’s connectors. Filled: in use; broken line: supply. Pin numbers are from memory: check them on the bench.',
      ),
      registerTable(maps, row.name),
    ]),
  ];
}

function portBlock(view: PortView): Element {
  return h('div', { class: 'port' }, [
    h('h4', [
      `${view.port === 'left' ? 'Left' : 'Right'} port: `,
      h('span', { class: 'plugged' }, view.controller),
    ]),
    portFigure(view),
    table({
      className: 'pins',
      caption: `Pins of the ${view.port} port`,
      captionHidden: true,
      head: ['Pin', 'Line', 'Bit', 'Carries'],
      rows: view.pins.map(({ pin, line, bit, carries }) => [
        String(pin),
        line,
        h('code', bit),
        carries.length === 0 ? '—' : carries.join('; '),
      ]),
    }),
  ]);
}

function registerTable(maps: readonly RegisterMap[], seats: string): Element {
  return h('table', { class: 'registers' }, [
    h('caption', [`Registers, ${seats}. `, ...legend()]),
    h('thead', [
      h('tr', [
        h('th', { scope: 'col' }, 'Register'),
        ...(maps[0]?.bits ?? []).map(({ bit }) =>
          h('th', { scope: 'col', class: 'bit' }, [`D${bit}`, h('span', { class: 'mask' }, maskOf(bit))]),
        ),
      ]),
    ]),
    h('tbody', maps.map(registerRow)),
  ]);
}

const maskOf = (bit: number): string => `$${(1 << bit).toString(16).toUpperCase().padStart(2, '0')}`;

const legend = () => [
  h('span', { class: 'key' }, [h('span', { class: 'swatch bound' }), ' used by the scheme']),
  h('span', { class: 'key' }, [h('span', { class: 'swatch wired' }), ' connected, not used']),
  h('span', { class: 'key' }, [h('span', { class: 'swatch unused' }), ' nothing there: mask it out']),
];

function registerRow({ register, address, access, bits }: RegisterMap): Element {
  return h('tr', [
    h('th', { scope: 'row' }, [
      h('code', register),
      h('span', { class: 'sub' }, [h('code', address), ` ${access}`]),
    ]),
    ...bits.map(bitCell),
  ]);
}

function bitCell({ use, names, levels }: MapBit): Element {
  if (use === 'unused') return h('td', { class: use }, h('span', { class: 'read-only' }, 'unused'));
  return h('td', { class: use }, [
    ...names.map(name => h('span', { class: 'part' }, name)),
    ...levels.map(level => h('span', { class: 'sub level-of' }, level)),
  ]);
}
