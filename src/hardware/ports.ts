import type { RegisterSymbol } from './registers.js';
import { fromSource, type Source } from './source.js';

export type Port = 'left' | 'right';
export const PORTS: readonly Port[] = ['left', 'right'];

/** The input lines of one 9-pin controller port. */
export type PortLine = 'up' | 'down' | 'left' | 'right' | 'button' | 'pot A' | 'pot B';

/** One bit of a register. */
export interface RegisterBit {
  readonly register: RegisterSymbol;
  /** 0 to 7. */
  readonly bit: number;
}

export interface PortLineFacts {
  readonly line: PortLine;
  /** Pin of the 9-pin connector, 1 to 9. */
  readonly pin: number;
  readonly bits: Readonly<Record<Port, RegisterBit>>;
  /** What the bit reads when the line is engaged. A pot line used as a switch is engaged when high. */
  readonly engagedReads: 0 | 1;
  readonly sources: readonly Source[];
}

const pins = fromSource('R');
const direction = (line: PortLine, pin: number, leftBit: number): PortLineFacts => ({
  line,
  pin,
  bits: { left: { register: 'SWCHA', bit: leftBit }, right: { register: 'SWCHA', bit: leftBit - 4 } },
  engagedReads: 0,
  sources: [fromSource('G', 'PIA 5.3'), pins],
});

export const PORT_LINES: Readonly<Record<PortLine, PortLineFacts>> = {
  up: direction('up', 1, 4),
  down: direction('down', 2, 5),
  left: direction('left', 3, 6),
  right: direction('right', 4, 7),
  button: {
    line: 'button',
    pin: 6,
    bits: { left: { register: 'INPT4', bit: 7 }, right: { register: 'INPT5', bit: 7 } },
    engagedReads: 0,
    sources: [fromSource('G', 'TIA 12.2'), fromSource('P'), pins],
  },
  'pot A': {
    line: 'pot A',
    pin: 9,
    bits: { left: { register: 'INPT0', bit: 7 }, right: { register: 'INPT2', bit: 7 } },
    engagedReads: 1,
    sources: [fromSource('G', 'TIA 12.1'), pins],
  },
  'pot B': {
    line: 'pot B',
    pin: 5,
    bits: { left: { register: 'INPT1', bit: 7 }, right: { register: 'INPT3', bit: 7 } },
    engagedReads: 1,
    sources: [fromSource('G', 'TIA 12.1'), pins],
  },
};

export const PORT_LINE_NAMES = Object.keys(PORT_LINES) as readonly PortLine[];

/** Supply pins of the connector (from memory). */
export const SUPPLY_PINS = { '+5 V': 7, ground: 8 } as const;
