import { describe, expect, it } from 'vitest';
import {
  isTwoPosition,
  type PanelSwitch,
  SWCHB_UNUSED_MASK,
  SWITCH_NAMES,
  SWITCHES,
  type SwitchName,
} from '../../src/hardware/switches.js';
import { cite } from './cite.js';

/** Programmer's guide [PIA 4.1]: the bit of SWCHB, and for two positions what 0 and what 1 means, at rest first. */
const ROWS: readonly (readonly [SwitchName, number, PanelSwitch['positions']])[] = [
  [
    'TV type',
    3,
    [
      { name: 'COLOR', reads: 1 },
      { name: 'B-W', reads: 0 },
    ],
  ],
  [
    'left difficulty',
    6,
    [
      { name: 'B', reads: 0 },
      { name: 'A', reads: 1 },
    ],
  ],
  [
    'right difficulty',
    7,
    [
      { name: 'B', reads: 0 },
      { name: 'A', reads: 1 },
    ],
  ],
  ['SELECT', 1, []],
  ['RESET', 0, []],
];

describe('the panel switches', () => {
  it.each(ROWS)('%s is on D%i of SWCHB', (name, bit, positions) => {
    const panelSwitch = SWITCHES[name];
    expect(panelSwitch.name).toBe(name);
    expect(panelSwitch.bit).toBe(bit);
    expect(panelSwitch.positions).toEqual(positions);
    expect(cite(panelSwitch.source)).toBe('G [PIA 4.1]');
  });

  it('are named in the order of the panel', () => {
    expect(SWITCH_NAMES).toEqual(['TV type', 'left difficulty', 'right difficulty', 'SELECT', 'RESET']);
  });

  it.each(['TV type', 'left difficulty', 'right difficulty'] as const)('%s has two positions', name => {
    expect(isTwoPosition(name)).toBe(true);
  });

  it.each(['SELECT', 'RESET'] as const)('%s springs back', name => {
    expect(isTwoPosition(name)).toBe(false);
  });

  it('leave D5, D4 and D2 unused, and with those fill the byte', () => {
    expect(SWCHB_UNUSED_MASK).toBe((1 << 5) | (1 << 4) | (1 << 2));
    const used = ROWS.reduce((mask, [name]) => mask | (1 << SWITCHES[name].bit), 0);
    expect(used ^ SWCHB_UNUSED_MASK).toBe(0xff);
  });
});
