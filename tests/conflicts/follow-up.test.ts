import { describe, expect, it } from 'vitest';
import { checkConflicts } from '../../src/checks/conflicts.js';
import type { Finding } from '../../src/findings/finding.js';
import { createReport } from '../../src/findings/report.js';
import { type SmallRow, smallScheme } from '../support/small-scheme.js';

/** What is found of one action that makes another possible, in these rows with this setting. */
function knockOns(rows: readonly SmallRow[], setting = 'Lamp | out, lit | out | game'): readonly Finding[] {
  const { report, findings } = createReport();
  checkConflicts(smallScheme(rows, { settings: [setting] }), report);
  return findings.filter(({ rule }) => rule === 'knock-on');
}

/** What fires at each read of what is shown. */
const firesOf = ([finding]: readonly Finding[]): readonly (readonly string[])[] | undefined =>
  finding?.witness?.steps.map(({ fires }) => fires);

const LIGHT: SmallRow = {
  action: 'Light',
  control: 'button',
  gesture: 'press',
  when: 'Lamp is out',
  does: 'Lamp: lit',
};
const SWING: SmallRow = { action: 'Swing', control: 'button', gesture: 'release', when: 'Lamp is lit' };
const THREE = 'Lamp | out, low, lit | out | game';

describe('a third row that holds the second back', () => {
  const chord = { ...LIGHT, control: 'button + stick down' };
  const hush: SmallRow = { action: 'Hush', control: 'stick down', gesture: 'held', insteadOf: 'Swing' };

  it('does so from before the lamp is lit, where it does so while it is out', () => {
    expect(knockOns([chord, SWING])).toHaveLength(1);
    expect(knockOns([chord, SWING, { ...hush, when: 'Lamp is out' }])).toEqual([]);
  });

  it('comes too late where it does so while it is lit', () => {
    const found = knockOns([chord, SWING, { ...hush, when: 'Lamp is lit' }]);
    expect(firesOf(found)).toEqual([[], ['Light'], ['Swing']]);
  });

  it('does nothing in other values than those that it asks for', () => {
    const brighten: SmallRow = { ...LIGHT, control: 'button + stick down', when: '', does: 'Lamp: next' };
    const rows = [brighten, SWING, { ...hush, when: 'Lamp is out' }];
    expect(firesOf(knockOns(rows, THREE))).toEqual([[], ['Light'], ['Swing']]);
    const elsewhere: SmallRow = { action: 'Hum', control: 'stick left', gesture: 'held', insteadOf: 'Swing' };
    expect(firesOf(knockOns([...rows, elsewhere], THREE))).toEqual([[], ['Light'], ['Swing']]);
    expect(firesOf(knockOns([elsewhere, ...rows], THREE))).toEqual([[], ['Light'], ['Swing']]);
  });
});

describe('values before and after', () => {
  it('are those that the first asks for', () => {
    expect(firesOf(knockOns([LIGHT, SWING]))).toEqual([['Light'], ['Swing']]);
    expect(knockOns([{ ...LIGHT, when: 'Lamp is lit' }, SWING])).toEqual([]);
    expect(knockOns([{ ...LIGHT, when: 'Lamp is low' }, SWING], THREE)).toHaveLength(1);
    expect(knockOns([{ ...LIGHT, when: 'Lamp is out', does: 'Lamp: next' }, SWING], THREE)).toEqual([]);
  });

  it('are told apart where the game begins with the lamp lit', () => {
    const lit = 'Lamp | out, lit | lit | game';
    expect(firesOf(knockOns([LIGHT, SWING], lit))).toEqual([['Light'], ['Swing']]);
  });

  it('are not those under which the second could be done anyway', () => {
    const relight: SmallRow = { ...LIGHT, when: '' };
    const glow: SmallRow = {
      action: 'Glow',
      control: 'button',
      gesture: 'press',
      when: 'Lamp is out',
      alongWith: 'Light; Swing',
    };
    const found = knockOns([relight, SWING, glow], 'Lamp | out, lit | lit | game');
    expect(firesOf(found)).toEqual([['Light', 'Glow'], ['Swing']]);
  });

  it('are looked at again at the read at which the second comes', () => {
    const toggle: SmallRow = { ...LIGHT, gesture: 'held', when: '', does: 'Lamp: next' };
    const rest: SmallRow = {
      action: 'Rest',
      control: 'button',
      gesture: 'hold 3 frames',
      when: 'Lamp is lit',
    };
    // From out it is lit, out, lit: out again before the third read. From lit it is lit there.
    const found = knockOns([toggle, rest]);
    expect(firesOf(found)).toEqual([['Light'], ['Light'], ['Light', 'Rest']]);
  });

  it('count only until the control has been let go', () => {
    expect(knockOns([LIGHT, { ...SWING, gesture: 'press' }])).toEqual([]);
    expect(knockOns([LIGHT, { ...SWING, gesture: 'double tap within 1 s' }])).toEqual([]);
  });

  it('are not mixed up between pairs that make the same gestures', () => {
    const rows: readonly SmallRow[] = [
      { ...LIGHT, action: 'Dim', when: 'Lamp is lit', does: 'Lamp: out' },
      { ...LIGHT, control: 'stick up' },
      { ...SWING, action: 'Sway', control: 'button', when: 'Lamp is lit' },
      { ...SWING, control: 'stick up' },
      { ...LIGHT, action: 'Kindle', control: 'stick down', when: 'Lamp is lit' },
      { ...SWING, action: 'Sing', control: 'stick down', when: 'Lamp is not lit' },
    ];
    expect(knockOns(rows).map(({ actions }) => actions)).toEqual([['Light', 'Swing']]);
    const turned = [rows[4], rows[5], rows[0], rows[2], rows[1], rows[3]].flatMap(row => row ?? []);
    expect(knockOns(turned).map(({ actions }) => actions)).toEqual([['Light', 'Swing']]);
  });

  it('are not mixed up between pairs that differ in what they ask for', () => {
    const rows: readonly SmallRow[] = [
      { ...LIGHT, when: 'Lamp is out', does: 'Lamp: next' },
      { ...SWING, when: 'Lamp is low' },
      { ...LIGHT, action: 'Kindle', control: 'stick up', when: 'Lamp is low', does: 'Lamp: next' },
      { ...SWING, action: 'Sway', control: 'stick up', gesture: 'press', when: 'Lamp is lit' },
      { ...LIGHT, action: 'Stoke', control: 'stick down', when: 'Lamp is low', does: 'Lamp: next' },
      { ...SWING, action: 'Sing', control: 'stick down', when: 'Lamp is lit' },
    ];
    const expected = [
      ['Light', 'Swing'],
      ['Stoke', 'Sing'],
    ];
    expect(knockOns(rows, THREE).map(({ actions }) => actions)).toEqual(expected);
  });
});

describe('a third row that is done first', () => {
  const light = { ...LIGHT, control: 'button + stick down' };
  const hush: SmallRow = {
    action: 'Hush',
    control: 'button + stick left',
    gesture: 'held',
    insteadOf: 'Pant',
  };

  it('can keep a repeat from coming due before it is possible', () => {
    const pant: SmallRow = {
      ...SWING,
      action: 'Pant',
      control: 'button + stick down',
      gesture: 'repeat every 20 frames',
    };
    expect(firesOf(knockOns([light, pant]))).toHaveLength(22);
    const found = firesOf(knockOns([light, pant, hush]));
    expect(found?.length).toBeLessThan(10);
    expect(found?.at(-1)).toContain('Pant');
  });

  it('can keep a second tap from being used up', () => {
    const lightTwice: SmallRow = { ...light, gesture: 'double tap within 20 frames' };
    const pant: SmallRow = {
      ...SWING,
      action: 'Pant',
      control: 'button + stick down',
      gesture: 'double tap within 20 frames',
    };
    expect(firesOf(knockOns([lightTwice, pant]))?.length).toBe(8);
    expect(firesOf(knockOns([lightTwice, pant, hush]))?.length).toBe(6);
  });
});
