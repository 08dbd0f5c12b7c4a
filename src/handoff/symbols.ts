import { type Contact, controlContact, switchContact } from '../gestures/contacts.js';
import { scanSteps } from '../hardware/port-setup.js';
import { PORTS } from '../hardware/ports.js';
import { REGISTERS, VBLANK_BITS } from '../hardware/registers.js';
import { SWITCH_NAMES } from '../hardware/switches.js';
import { type Wire, wireOf } from '../hardware/wiring.js';
import type { Scheme } from '../language/model.js';
import type { UnnamedHandoff as Handoff, SymbolEntry, SymbolGroup } from './model.js';
import { outputList } from './outputs.js';
import { hasPots, uniqueContacts } from './routine/banks.js';
import type { UnitRoutine } from './routine/routine.js';
import { countings } from './times.js';

/** Every symbol that is handed over, in the order of the file. */
export function symbolGroups(handoff: Handoff): readonly SymbolGroup[] {
  return [
    { title: 'Registers', entries: registerEntries(handoff) },
    { title: 'Controls: the mask of each in its register', entries: controlEntries(handoff) },
    { title: 'Data direction of port A and VBLANK', entries: setUpEntries(handoff) },
    { title: 'Modes, seats rows, consoles, actions', entries: numberEntries(handoff) },
    { title: 'Settings and their values', entries: settingEntries(handoff) },
    { title: 'Fired actions: mask in the fired byte, the byte, the bit', entries: outputEntries(handoff) },
    { title: 'Gesture times in reads', entries: timeEntries(handoff) },
    { title: 'RAM of the reading routine: distance from its first byte', entries: ramEntries(handoff) },
  ].filter(({ entries }) => entries.length > 0);
}

function registerEntries({ names }: Handoff): readonly SymbolEntry[] {
  return Object.values(REGISTERS).map(({ symbol, address, holds }) => ({
    name: names.register(symbol),
    value: address,
    about: holds,
  }));
}

/** Every control of every controller that a seats row plugs in, and the panel switches. */
export function contactsOfScheme(scheme: Scheme): readonly Contact[] {
  const controls = scheme.seats.flatMap(seats =>
    PORTS.flatMap(port => {
      const controller = seats[port];
      return controller === null
        ? []
        : controller.controls.map(control => controlContact(port, controller, control));
    }),
  );
  return uniqueContacts([...controls, ...SWITCH_NAMES.map(switchContact)]);
}

function controlEntries({ scheme, names }: Handoff): readonly SymbolEntry[] {
  return contactsOfScheme(scheme).flatMap(contact => {
    const wire = wireOf(contact);
    const name = names.contact(contact);
    const mask = {
      name: names.claim(`${names.prefix}MASK_${name}`),
      value: maskOf(wire),
      about: aboutWire(contact, wire),
    };
    if (wire.kind !== 'matrix') return [mask];
    const about = `${contact.id}: its row, driven low on ${wire.drive.register} D${wire.drive.bit}`;
    return [mask, { name: names.claim(`${names.prefix}ROW_${name}`), value: wire.drive.mask, about }];
  });
}

export function maskOf(wire: Wire): number {
  return wire.kind === 'gray' ? wire.mask : wire.bit.mask;
}

function aboutWire({ id }: Contact, wire: Wire): string {
  switch (wire.kind) {
    case 'line':
      return `${id}: ${wire.bit.register} D${wire.bit.bit}, ${wire.engagedReads} engaged`;
    case 'two-position': {
      const positions = wire.positions.map(({ name, reads }) => `${reads} ${name}`).join(', ');
      return `${id}: ${wire.bit.register} D${wire.bit.bit}, ${positions}`;
    }
    case 'matrix':
      return `${id}: ${wire.bit.register} D${wire.bit.bit}, 0 engaged while its row is driven`;
    case 'pot':
      return `${id}: ${wire.bit.register} D${wire.bit.bit}, 1 when charged`;
    case 'gray':
      return `${id}: ${wire.high.register} D${wire.high.bit} and D${wire.low.bit}, Gray code`;
    default:
      return wire satisfies never;
  }
}

/** What SWACNT must hold while keys are scanned: every row that is driven at some step. */
export function scanDirection({ plan }: UnitRoutine): number {
  const wires = plan.map.banks.flatMap(({ lines }) => lines.map(({ wire }) => wire));
  return scanSteps(wires).reduce((mask, { swacnt }) => mask | swacnt, 0);
}

/** VBLANK while the picture is blanked: D6 by the latch, D7 while pots are dumped. */
export function vblankValue(scheme: Scheme, dumps: boolean, latch: boolean): number {
  const isLatched = latch && scheme.game.latch.value !== 'off';
  return VBLANK_BITS.blank | (isLatched ? VBLANK_BITS.latch : 0) | (dumps ? VBLANK_BITS.dump : 0);
}

function setUpEntries(handoff: Handoff): readonly SymbolEntry[] {
  const { scheme, names, classes } = handoff;
  const p = names.prefix;
  const dumps = scheme.seats.some(hasPots);
  const latch = [
    {
      name: `${p}VBLANK_CLEAR`,
      value: vblankValue(scheme, dumps, false),
      about: 'VBLANK: latches let go, picture blanked',
    },
    {
      name: `${p}VBLANK_ARM`,
      value: vblankValue(scheme, dumps, true),
      about: 'VBLANK: as reads leave it, picture blanked',
    },
  ];
  const units = handoff.routines.filter(({ unit }) => unit.consoles === classes[0]);
  return [
    ...latch.map(entry => ({ ...entry, name: names.claim(entry.name) })),
    ...units.flatMap(routine => [
      {
        name: names.claim(`${p}SWACNT_${routine.tag}`),
        value: scanDirection(routine),
        about: `${routine.unit.mode.name}, ${routine.unit.seats.name}: ${scanDirection(routine) === 0 ? 'port A is all input' : 'rows that the scan drives, one after the other'}`,
      },
      {
        name: names.claim(`${p}VBLANK_${routine.tag}`),
        value: vblankValue(scheme, hasPots(routine.unit.seats), true),
        about: `${routine.unit.mode.name}, ${routine.unit.seats.name}: VBLANK while the picture is blanked`,
      },
    ]),
  ];
}

function numberEntries({ scheme, names, classes }: Handoff): readonly SymbolEntry[] {
  return [
    ...scheme.modes.map((mode, value) => ({ name: names.mode(mode), value, about: mode.name })),
    ...scheme.seats.map((seats, value) => ({ name: names.seats(seats), value, about: seats.name })),
    ...classes.flatMap(({ number, profiles }) =>
      profiles.map(profile => ({ name: names.console(profile), value: number, about: profile.name })),
    ),
    ...scheme.actions.map((action, value) => ({ name: names.action(action), value, about: action.name })),
  ];
}

function settingEntries({ scheme, names }: Handoff): readonly SymbolEntry[] {
  return scheme.settings.flatMap(setting =>
    setting.values.map((text, value) => ({
      name: names.value(setting, value),
      value,
      about: `${setting.name}: ${text}`,
    })),
  );
}

function outputEntries(handoff: Handoff): readonly SymbolEntry[] {
  const { scheme, names } = handoff;
  return scheme.modes.flatMap(mode =>
    outputList(handoff.outputs.get(mode)).flatMap(({ symbol, byte, bit, actionName, player, direction }) => {
      const who = player === 'anyone' ? '' : `, ${player}`;
      const about = `${mode.name}: ${actionName}${who}${direction === null ? '' : `, ${direction}`}`;
      return [
        { name: symbol, value: 1 << bit, about },
        { name: names.claim(`${symbol}__BYTE`), value: byte, about: '' },
        { name: names.claim(`${symbol}__BIT`), value: bit, about: '' },
      ];
    }),
  );
}

function timeEntries({ scheme, times, names }: Handoff): readonly SymbolEntry[] {
  return times.all().flatMap(({ symbol, reads, text }) =>
    countings(scheme).map(counting => ({
      name: names.claim(`${symbol}__${counting}`),
      value: counting === 'NTSC' ? reads.ntsc : reads.pal,
      about: `${text} on ${counting === 'NTSC' ? 'NTSC' : 'PAL and SECAM'}`,
    })),
  );
}

function ramEntries({ ram, names }: Handoff): readonly SymbolEntry[] {
  return [
    ...ram.shared.map(({ symbol, offset, holds }) => ({
      name: names.claim(`${symbol}__AT`),
      value: offset,
      about: holds,
    })),
    { name: names.claim(`${names.prefix}RAM_BYTES`), value: ram.size, about: 'bytes in all' },
  ];
}
