import { fromSource, type Source } from './source.js';

export type RegisterSymbol =
  | 'VBLANK'
  | 'INPT0'
  | 'INPT1'
  | 'INPT2'
  | 'INPT3'
  | 'INPT4'
  | 'INPT5'
  | 'SWCHA'
  | 'SWACNT'
  | 'SWCHB'
  | 'SWBCNT';

export interface Register {
  readonly symbol: RegisterSymbol;
  /** CPU address, 0 to $1FFF. */
  readonly address: number;
  readonly access: 'read' | 'write' | 'read and write' | 'left alone';
  readonly holds: string;
  readonly sources: readonly Source[];
}

const inpt = (n: 0 | 1 | 2 | 3 | 4 | 5): Register => ({
  symbol: `INPT${n}`,
  address: 0x08 + n,
  access: 'read',
  holds:
    n < 4
      ? 'D7: pot line, dumped to ground while VBLANK D7 is 1'
      : `D7: ${n === 4 ? 'left' : 'right'} button, latched while VBLANK D6 is 1`,
  sources: [fromSource('G', n < 4 ? 'TIA 12.1' : 'TIA 12.2')],
});

/** The registers that input needs, by symbol. */
export const REGISTERS: Readonly<Record<RegisterSymbol, Register>> = {
  VBLANK: {
    symbol: 'VBLANK',
    address: 0x01,
    access: 'write',
    holds: 'D1 blanks the picture, D6 enables the button latch, D7 dumps the pot lines',
    sources: [fromSource('G', 'TIA 12')],
  },
  INPT0: inpt(0),
  INPT1: inpt(1),
  INPT2: inpt(2),
  INPT3: inpt(3),
  INPT4: inpt(4),
  INPT5: inpt(5),
  SWCHA: {
    symbol: 'SWCHA',
    address: 0x280,
    access: 'read and write',
    holds: 'port A: hand controllers',
    sources: [fromSource('G', 'PIA 5')],
  },
  SWACNT: {
    symbol: 'SWACNT',
    address: 0x281,
    access: 'read and write',
    holds: 'port A data direction, bit by bit: 0 input, 1 output',
    sources: [fromSource('G', 'PIA 5.1'), fromSource('D')],
  },
  SWCHB: {
    symbol: 'SWCHB',
    address: 0x282,
    access: 'read',
    holds: 'port B: console switches',
    sources: [fromSource('G', 'PIA 4.1')],
  },
  SWBCNT: {
    symbol: 'SWBCNT',
    address: 0x283,
    access: 'left alone',
    holds: 'port B data direction: stays all input',
    sources: [fromSource('G', 'PIA 4.1')],
  },
};

/** The INPT registers answer at this offset as well (common practice, no source). */
export const INPT_MIRROR_OFFSET = 0x28;

/** VBLANK bits, as masks. G [TIA 12]. Writing 0 to the latch bit clears both latches (G [TIA 12.2]). */
export const VBLANK_BITS = { blank: 0x02, latch: 0x40, dump: 0x80 } as const;

/** Bytes of RAM in the machine (D). */
export const RAM_BYTES = 128;
