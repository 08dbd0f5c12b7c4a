import type { Spot } from './banks.js';

/** Bits of a byte that things are shifted into one after the other. */
export const CHANNELS_IN_BANK = 8;

/** The bank and bit of the nth channel, happening or hold-back: eight a byte, the first at D0. */
export function serialSpot(letter: 'D' | 'T' | 'H', index: number): Spot {
  return {
    bank: `${letter}${Math.floor(index / CHANNELS_IN_BANK)}`,
    mask: 1 << (index % CHANNELS_IN_BANK),
  };
}
