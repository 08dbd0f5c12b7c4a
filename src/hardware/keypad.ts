import type { Port, RegisterBit } from './ports.js';
import { fromSource } from './source.js';

const KEY_NAMES = ['1', '2', '3', '4', '5', '6', '7', '8', '9', 'star', '0', 'hash'] as const;
const COLUMNS = 3;

const swcha = (bit: number): RegisterBit => ({ register: 'SWCHA', bit });

/**
 * The 12-key keypad: 4 rows × 3 columns without diodes. The game drives one row low and reads the columns
 * (0 = pressed). Three keys down on three corners of a rectangle read as the fourth as well.
 */
export const KEYPAD = {
  keys: KEY_NAMES.map((key, index) => ({
    key,
    row: Math.floor(index / COLUMNS) + 1,
    column: (index % COLUMNS) + 1,
  })),
  rows: {
    left: [swcha(4), swcha(5), swcha(6), swcha(7)],
    right: [swcha(0), swcha(1), swcha(2), swcha(3)],
  } satisfies Record<Port, readonly RegisterBit[]>,
  columns: {
    left: [
      { register: 'INPT0', bit: 7 },
      { register: 'INPT1', bit: 7 },
      { register: 'INPT4', bit: 7 },
    ],
    right: [
      { register: 'INPT2', bit: 7 },
      { register: 'INPT3', bit: 7 },
      { register: 'INPT5', bit: 7 },
    ],
  } satisfies Record<Port, readonly RegisterBit[]>,
  /** Microseconds between driving a row and reading the columns (figure from memory). */
  settleMicroseconds: 400,
  sources: [fromSource('G', 'PIA 5.5'), fromSource('R'), fromSource('P')],
} as const;
