import type { Element } from 'hast';
import { INPT_MIRROR_OFFSET, REGISTERS, type RegisterSymbol } from '../../hardware/registers.js';
import { h, table } from '../page/elements.js';
import type { BitsView } from './view.js';
import { hexAddress } from './words.js';

const MIRROR_TEXT = `INPT0 to INPT5 answer at ${mirrorOf('INPT0')} to ${mirrorOf('INPT5')} as well (common practice, no source).`;

function mirrorOf(register: RegisterSymbol): string {
  return hexAddress(REGISTERS[register].address + INPT_MIRROR_OFFSET);
}

/** SWACNT and VBLANK for each mode and seats row. */
export function setupSection({ setups }: BitsView): readonly Element[] {
  return [
    h('p', [
      'What must stand in ',
      h('code', 'SWACNT'),
      ' ($0281) and ',
      h('code', 'VBLANK'),
      ' ($0001) while the inputs of a mode are read. ',
      h('code', 'SWBCNT'),
      ` ($0283) is left alone: port B stays all input. VBLANK D1 blanks the picture and is written with the other two. ${MIRROR_TEXT}`,
    ]),
    table({
      className: 'setups',
      caption: 'SWACNT and VBLANK',
      captionHidden: true,
      head: ['Mode', 'Seats', 'SWACNT', 'VBLANK D7', 'VBLANK D6', 'Reads'],
      rows: setups.map(row => [
        row.mode,
        row.seats,
        [h('code', row.swacnt.join(', ')), h('span', { class: 'sub' }, row.swacntWhy)],
        row.vblankD7,
        row.vblankD6,
        h('code', row.reads.join(' ')),
      ]),
    }),
  ];
}

/** What the switch lines read on each console, and what decides each setting there. */
export function consoleSection({ consoles, settings }: BitsView): readonly Element[] {
  return [
    table({
      className: 'consoles',
      caption: 'SWCHB on each console',
      head: ['Switch', 'Bit', 'Mask', 'Reads', ...consoles.consoles],
      rows: consoles.rows.map(({ name, bit, mask, reads, cells }) => [
        name,
        h('code', bit),
        h('code', mask),
        reads,
        ...cells,
      ]),
    }),
    h(
      'p',
      { class: 'note' },
      'D5, D4 and D2 of SWCHB are not used and read as nothing in particular: mask them out before comparing the whole byte.',
    ),
    ...(settings.length === 0
      ? []
      : [
          table({
            className: 'settings',
            caption: 'Settings',
            head: ['Setting', 'Values', 'Starts as', ...consoles.consoles],
            rows: settings.map(({ name, values, startsAs, cells }) => [name, values, startsAs, ...cells]),
          }),
        ]),
  ];
}

/** Every fact with its source, and the usual cautions. */
export function sourcesSection({ sources }: BitsView): readonly Element[] {
  return [
    table({
      className: 'sources',
      caption: 'Sources',
      captionHidden: true,
      head: ['Fact', 'Source'],
      rows: sources.map(({ fact, source }) => [fact, source]),
    }),
    h(
      'p',
      { class: 'caution' },
      'Switch the console off before a controller or a cartridge is plugged in or pulled out. Check what is marked “from memory” on the bench before you rely on it, and ask somebody qualified before opening a console.',
    ),
  ];
}
