import { controlContact } from '../../gestures/contacts.js';
import { vblankSetup } from '../../hardware/port-setup.js';
import { PORTS } from '../../hardware/ports.js';
import { REGISTERS, type RegisterSymbol } from '../../hardware/registers.js';
import { SWITCH_NAMES, SWITCHES } from '../../hardware/switches.js';
import { type Wire, type WireBit, wireBit, wireOf } from '../../hardware/wiring.js';
import type { Scheme, SeatsRow } from '../../language/model.js';
import { contactsOf } from './setup-view.js';
import { hexAddress } from './words.js';

/** All eight bits of one register in one seats row. */
export interface RegisterMap {
  readonly register: RegisterSymbol;
  readonly address: string;
  readonly access: string;
  /** From D7 down to D0: always eight. */
  readonly bits: readonly MapBit[];
}

export interface MapBit {
  /** 7 to 0. */
  readonly bit: number;
  /** `bound`: the scheme uses it. `wired`: something is connected, nothing uses it. `unused`: mask it out. */
  readonly use: 'bound' | 'wired' | 'unused';
  /** What is there; empty where nothing is. */
  readonly names: readonly string[];
  /** What the bit reads when engaged, or in each position; what it is set to, where it is written. */
  readonly levels: readonly string[];
}

/** The registers of the inputs, in the order in which they are printed. */
const MAPPED: readonly RegisterSymbol[] = [
  'SWCHA',
  'SWCHB',
  'INPT0',
  'INPT1',
  'INPT2',
  'INPT3',
  'INPT4',
  'INPT5',
  'VBLANK',
  'SWACNT',
];

const BITS = [7, 6, 5, 4, 3, 2, 1, 0] as const;

interface Mark {
  readonly bit: WireBit;
  readonly name: string;
  readonly levels: readonly string[];
  readonly id: string;
}

/** One map for each input register: what hangs on each bit, and whether the scheme uses it. */
export function viewRegisterMaps(scheme: Scheme, seats: SeatsRow): readonly RegisterMap[] {
  const marks = [...portMarks(seats), ...switchMarks(), ...writtenMarks(scheme)];
  const bound = boundIds(scheme, seats);
  return MAPPED.map(register => ({
    register,
    address: hexAddress(REGISTERS[register].address),
    access: REGISTERS[register].access,
    bits: BITS.map(bit => {
      const own = marks.filter(mark => isAt(mark, register, bit));
      return own.length === 0 && register === 'SWACNT' ? inputBit(bit) : viewBit(bit, own, bound);
    }),
  }));
}

/** A direction bit that is left alone. */
const inputBit = (bit: number): MapBit => ({ bit, use: 'wired', names: ['input'], levels: ['0'] });

const isAt = ({ bit }: Mark, register: RegisterSymbol, number: number): boolean =>
  bit.register === register && bit.bit === number;

function viewBit(bit: number, marks: readonly Mark[], bound: ReadonlySet<string>): MapBit {
  const names = [...new Set(marks.map(({ name }) => name))];
  const levels = [...new Set(marks.flatMap(mark => mark.levels))];
  const use = marks.length === 0 ? 'unused' : marks.some(({ id }) => bound.has(id)) ? 'bound' : 'wired';
  return { bit, use, names, levels };
}

function portMarks(seats: SeatsRow): readonly Mark[] {
  return PORTS.flatMap(port => {
    const controller = seats[port];
    if (controller === null) return [];
    return controller.controls.flatMap(control => {
      const { id } = controlContact(port, controller, control);
      return marksOf(wireOf({ kind: 'control', port, control }), id, port);
    });
  });
}

/** The registers that are written: what each bit does, and whether this scheme needs it. */
function writtenMarks({ game }: Scheme): readonly Mark[] {
  const at = (register: RegisterSymbol, bit: number, name: string, level: string, id: string): Mark => ({
    bit: wireBit({ register, bit }),
    name,
    levels: [level],
    id,
  });
  return [
    at('VBLANK', 7, 'dump the pot lines', '1 dumps', DUMP_ID),
    at('VBLANK', 6, 'latch the buttons', '1 latches', game.latch.value === 'off' ? '' : LATCH_ID),
    at('VBLANK', 1, 'blank the picture', '1 blanks', ''),
  ];
}

/** The direction bit of a line of port A. */
const swacnt = (bit: number): WireBit => wireBit({ register: 'SWACNT', bit });

const DUMP_ID = 'VBLANK D7';
const LATCH_ID = 'VBLANK D6';

function switchMarks(): readonly Mark[] {
  return SWITCH_NAMES.flatMap(name => marksOf(wireOf({ kind: 'switch', name }), name, ''));
}

function marksOf(wire: Wire, id: string, port: string): readonly Mark[] {
  switch (wire.kind) {
    case 'line':
      return [{ bit: wire.bit, name: id, levels: [String(wire.engagedReads)], id }];
    case 'two-position': {
      const levels = wire.positions.map(({ name, reads }) => `${reads} ${name}`);
      return [{ bit: wire.bit, name: id, levels, id }];
    }
    case 'pot':
      return [{ bit: wire.bit, name: id, levels: ['1 charged'], id }];
    case 'matrix':
      return [
        { bit: wire.drive, name: `${port} keys row ${wire.row}`, levels: ['out'], id },
        { bit: swacnt(wire.drive.bit), name: `${port} keys row ${wire.row}`, levels: ['1 in turn'], id },
        { bit: wire.bit, name: `${port} keys column ${wire.column}`, levels: ['0'], id },
      ];
    case 'gray':
      return [
        { bit: wire.high, name: `${id} high`, levels: ['code'], id },
        { bit: wire.low, name: `${id} low`, levels: ['code'], id },
      ];
    default:
      return wire satisfies never;
  }
}

/** True where VBLANK D7 matters: pots, or contacts on the pot lines. */
function needsDumpBit(scheme: Scheme, seats: SeatsRow): boolean {
  return scheme.modes.some(mode => {
    if (!mode.seats.includes(seats)) return false;
    const wires = contactsOf(scheme, mode, seats).map(contact => wireOf(contact));
    return vblankSetup(wires, false).dump !== 'free';
  });
}

/** What the scheme uses in a seats row: bound in a mode that is played with it, or setting a setting. */
function boundIds(scheme: Scheme, seats: SeatsRow): ReadonlySet<string> {
  const bound = scheme.modes
    .filter(mode => mode.seats.includes(seats))
    .flatMap(mode => contactsOf(scheme, mode, seats).map(({ id }) => id));
  const setting = scheme.settings.flatMap(({ setBy }) =>
    setBy.kind === 'switch' ? [SWITCHES[setBy.name].name] : [],
  );
  const dump = needsDumpBit(scheme, seats) ? [DUMP_ID] : [];
  return new Set([...bound, ...setting, ...dump, LATCH_ID]);
}
