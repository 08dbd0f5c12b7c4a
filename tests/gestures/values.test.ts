import { describe, expect, it } from 'vitest';
import { valueAfter } from '../../src/gestures/values.js';
import type { Effect } from '../../src/language/model.js';
import { smallPlace } from './small-play.js';

const { scheme, mode } = smallPlace(
  [
    {
      action: 'Hop',
      control: 'button',
      gesture: 'press',
      does: 'Level: next; Level: previous; Level: 3; Lamp: lit; go to Yard',
    },
  ],
  { settings: ['Lamp | out, lit | out | game', 'Level | 1 to 3 | 1 | game'] },
);
const [lamp, level] = scheme.settings;
const [next, previous, set, light, goTo] = mode.rows[0]?.effects ?? [];
const parts = [next, previous, set, light, goTo].filter((effect): effect is Effect => effect !== undefined);
if (lamp === undefined || level === undefined || parts.length < 5) throw new Error('no settings');

describe('a part of Then', () => {
  it('steps round at either end of the values, or sets one of them', () => {
    const after = ['1', '2', '3'].map(value => parts.slice(0, 3).map(part => valueAfter(part, level, value)));
    expect(after).toEqual([
      ['2', '3', '3'],
      ['3', '1', '3'],
      ['1', '2', '3'],
    ]);
  });

  it('leaves every other setting alone', () => {
    expect(parts.map(part => valueAfter(part, lamp, 'out'))).toEqual(['out', 'out', 'out', 'lit', 'out']);
  });
});
