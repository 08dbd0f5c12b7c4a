import { describe, expect, it } from 'vitest';
import { PORT_LINE_NAMES, PORT_LINES, PORTS, type PortLine, SUPPLY_PINS } from '../../src/hardware/ports.js';
import type { RegisterSymbol } from '../../src/hardware/registers.js';
import { citeAll } from './cite.js';

type Row = readonly [
  line: PortLine,
  pin: number,
  left: readonly [RegisterSymbol, number],
  right: readonly [RegisterSymbol, number],
  engagedReads: 0 | 1,
  sources: readonly string[],
];

/**
 * Directions: programmer's guide [PIA 5.3]. Buttons: [TIA 12.2], 0 when pressed by common practice, no source.
 * Pots: [TIA 12.1]; high when used as a switch. Pins: from memory.
 */
const ROWS: readonly Row[] = [
  ['up', 1, ['SWCHA', 4], ['SWCHA', 0], 0, ['G [PIA 5.3]', 'R']],
  ['down', 2, ['SWCHA', 5], ['SWCHA', 1], 0, ['G [PIA 5.3]', 'R']],
  ['left', 3, ['SWCHA', 6], ['SWCHA', 2], 0, ['G [PIA 5.3]', 'R']],
  ['right', 4, ['SWCHA', 7], ['SWCHA', 3], 0, ['G [PIA 5.3]', 'R']],
  ['button', 6, ['INPT4', 7], ['INPT5', 7], 0, ['G [TIA 12.2]', 'P', 'R']],
  ['pot A', 9, ['INPT0', 7], ['INPT2', 7], 1, ['G [TIA 12.1]', 'R']],
  ['pot B', 5, ['INPT1', 7], ['INPT3', 7], 1, ['G [TIA 12.1]', 'R']],
];

describe('the lines of a controller port', () => {
  it.each(ROWS)('%s is on pin %i', (name, pin, left, right, engagedReads, sources) => {
    const line = PORT_LINES[name];
    expect(line.line).toBe(name);
    expect(line.pin).toBe(pin);
    expect([line.bits.left.register, line.bits.left.bit]).toEqual(left);
    expect([line.bits.right.register, line.bits.right.bit]).toEqual(right);
    expect(line.engagedReads).toBe(engagedReads);
    expect(citeAll(line.sources)).toEqual(sources);
  });

  it('are named in this order', () => {
    expect(PORT_LINE_NAMES).toEqual(ROWS.map(([name]) => name));
  });

  it('and the supply share out the nine pins: 7 is +5 V, 8 is ground (from memory)', () => {
    expect(SUPPLY_PINS).toEqual({ '+5 V': 7, ground: 8 });
    const pins = [...Object.values(PORT_LINES).map(({ pin }) => pin), ...Object.values(SUPPLY_PINS)];
    expect(pins.sort()).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  it('are on a bit of their own, in both ports', () => {
    const bits = Object.values(PORT_LINES).flatMap(({ bits }) => [bits.left, bits.right]);
    expect(new Set(bits.map(({ register, bit }) => `${register} D${bit}`)).size).toBe(14);
  });
});

it('there are two ports, left before right', () => {
  expect(PORTS).toEqual(['left', 'right']);
});
