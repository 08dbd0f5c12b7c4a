import type { Control } from './controllers.js';
import { KEYPAD } from './keypad.js';
import { PORT_LINES, type Port, type PortLine, type RegisterBit } from './ports.js';
import { REGISTERS, type RegisterSymbol } from './registers.js';
import type { Source } from './source.js';
import { isTwoPosition, type Position, SWITCHES, type SwitchName } from './switches.js';

/** One bit of a register, with all that a programmer needs to reach it. */
export interface WireBit {
  readonly register: RegisterSymbol;
  /** CPU address of the register. */
  readonly address: number;
  /** 0 to 7. */
  readonly bit: number;
  /** `1 << bit`. */
  readonly mask: number;
}

/** How one contact reaches the CPU. */
export type Wire =
  /** A contact of its own: engaged when the bit reads `engagedReads`. `pin` is null for a panel switch. */
  | {
      readonly kind: 'line';
      readonly bit: WireBit;
      readonly engagedReads: 0 | 1;
      readonly pin: number | null;
      readonly sources: readonly Source[];
    }
  /** A switch with two positions; `reads` tells them apart. */
  | {
      readonly kind: 'two-position';
      readonly bit: WireBit;
      readonly positions: readonly { readonly name: Position; readonly reads: 0 | 1 }[];
      readonly sources: readonly Source[];
    }
  /** A key: engaged when the column reads 0 while its row is driven low. Rows 1 to 4, columns 1 to 3. */
  | {
      readonly kind: 'matrix';
      readonly row: number;
      readonly column: number;
      readonly drive: WireBit;
      readonly drivePin: number;
      readonly bit: WireBit;
      readonly engagedReads: 0;
      readonly pin: number;
      readonly sources: readonly Source[];
    }
  /** A pot: the bit turns 1 when the line has charged. */
  | {
      readonly kind: 'pot';
      readonly bit: WireBit;
      readonly pin: number;
      readonly sources: readonly Source[];
    }
  /** A two-bit Gray code; `mask` covers both bits, `low` is the lower bit of the register. */
  | {
      readonly kind: 'gray';
      readonly high: WireBit;
      readonly low: WireBit;
      readonly mask: number;
      readonly highPin: number;
      readonly lowPin: number;
      readonly sources: readonly Source[];
    };

/** What a contact must tell of itself; `gestures/contacts` has the full type. */
export type WiredContact =
  | { readonly kind: 'control'; readonly port: Port; readonly control: Control }
  | { readonly kind: 'switch'; readonly name: SwitchName };

/** The wire of any contact: a control in a port, or a panel switch. */
export function wireOf(contact: WiredContact): Wire {
  return contact.kind === 'switch' ? switchWire(contact.name) : controlWire(contact.port, contact.control);
}

function switchWire(name: SwitchName): Wire {
  const { bit, positions, source } = SWITCHES[name];
  const wired = { bit: wireBit({ register: 'SWCHB', bit }), sources: [source] };
  if (isTwoPosition(name)) return { kind: 'two-position', ...wired, positions };
  return { kind: 'line', ...wired, engagedReads: 0, pin: null };
}

function controlWire(port: Port, { wiring }: Control): Wire {
  switch (wiring.kind) {
    case 'contact': {
      const { bits, engagedReads, pin, sources } = PORT_LINES[wiring.line];
      return { kind: 'line', bit: wireBit(bits[port]), engagedReads, pin, sources };
    }
    case 'pot': {
      const { bits, pin, sources } = PORT_LINES[wiring.line];
      return { kind: 'pot', bit: wireBit(bits[port]), pin, sources };
    }
    case 'matrix':
      return matrixWire(port, wiring.row, wiring.column);
    case 'gray':
      return grayWire(port, wiring.high, wiring.low);
    default:
      return wiring satisfies never;
  }
}

function matrixWire(port: Port, row: number, column: number): Wire {
  const drive = keypadLine(KEYPAD.rows[port], row);
  const read = keypadLine(KEYPAD.columns[port], column);
  return {
    kind: 'matrix',
    row,
    column,
    drive: wireBit(drive),
    drivePin: pinOf(port, drive),
    bit: wireBit(read),
    engagedReads: 0,
    pin: pinOf(port, read),
    sources: KEYPAD.sources,
  };
}

function keypadLine(lines: readonly RegisterBit[], number: number): RegisterBit {
  const line = lines[number - 1];
  if (line === undefined) throw new RangeError(`The keypad has no line ${number}`);
  return line;
}

function grayWire(port: Port, highLine: PortLine, lowLine: PortLine): Wire {
  const high = wireBit(PORT_LINES[highLine].bits[port]);
  const low = wireBit(PORT_LINES[lowLine].bits[port]);
  return {
    kind: 'gray',
    high,
    low,
    mask: high.mask | low.mask,
    highPin: PORT_LINES[highLine].pin,
    lowPin: PORT_LINES[lowLine].pin,
    sources: PORT_LINES[highLine].sources,
  };
}

export function wireBit({ register, bit }: RegisterBit): WireBit {
  return { register, address: REGISTERS[register].address, bit, mask: 1 << bit };
}

/** The pin of the 9-pin connector that a register's bit is wired to. */
function pinOf(port: Port, { register, bit }: RegisterBit): number {
  const found = Object.values(PORT_LINES).find(
    ({ bits }) => bits[port].register === register && bits[port].bit === bit,
  );
  if (found === undefined) throw new RangeError(`${register} D${bit} is on no pin of the ${port} port`);
  return found.pin;
}
