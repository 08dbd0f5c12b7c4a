import { describe, expect, it } from 'vitest';
import { judgePair } from '../../src/checks/conflicts/pair.js';
import type { Program } from '../../src/checks/conflicts/program.js';

const contact = { type: 'momentary', starts: [0], isFixed: false, isFrozen: false, opposite: null } as const;
const part = (kind: 'hold' | 'tap', reads: number, mask: number) => ({
  kind,
  reads,
  mask,
  wanted: null,
  goesTo: false,
});

describe('long times and large chords', () => {
  it('finds two holds of four controls each that end together', () => {
    // The first chord closes at read 3 and is held 255 reads, to read 257; the other, of 250, closes five reads later.
    const program: Program = {
      contacts: Array.from({ length: 7 }, () => contact),
      x: part('hold', 255, 0b0001111),
      y: part('hold', 250, 0b1110001),
      holdBacks: [],
    };
    const result = judgePair(program);
    expect([result?.rule, result?.path.length]).toEqual(['can-coincide', 258]);
  });

  it('finds nothing between a tap and a hold of 255 reads', () => {
    const program: Program = {
      contacts: [contact],
      x: part('tap', 255, 1),
      y: part('hold', 255, 1),
      holdBacks: [],
    };
    expect(judgePair(program)).toBeNull();
  });
});
