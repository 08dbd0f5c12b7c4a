import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeBoth, wrongRecipes } from './both-opinions.js';
import { randomScheme } from './random-scheme.js';
import { wideScheme } from './wide-scheme.js';

/**
 * Agreement with an independent method (plain-rules.ts): the same verdicts, reachable modes and variations,
 * recipe lengths, losses, and the same rules for the same things in the same places; each recipe leads where it should.
 */
describe('coverage agrees with a plain search over explicit states', () => {
  test('on random schemes', () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(randomScheme, text => {
        const { theirs } = compareBoth(text);
        for (const hold of theirs.holds) count(seen, hold.split('|')[0] ?? '');
        for (const cell of theirs.cells.values()) count(seen, cell.replace(/ -?\d+$/, ''));
      }),
      { numRuns: 300 },
    );
    const rare = RULES.filter(rule => (seen.get(rule) ?? 0) < 20);
    expect(rare, 'rules that the random schemes hardly ever break').toEqual([]);
  });

  test('on random schemes with thousands of states', () => {
    let [most, longest] = [0, 0];
    fc.assert(
      fc.property(wideScheme, text => {
        const { theirs } = compareBoth(text);
        most = Math.max(most, theirs.states);
        longest = Math.max(longest, ...theirs.variations.values());
      }),
      { numRuns: 80 },
    );
    expect(most).toBeGreaterThan(2000);
    expect(longest).toBeGreaterThan(8);
  });
});

function compareBoth(text: string): ReturnType<typeof judgeBoth> {
  const both = judgeBoth(text);
  const { scheme, coverage, ours, theirs } = both;
  expect([...ours.cells]).toEqual([...theirs.cells]);
  expect([...ours.variations]).toEqual([...theirs.variations]);
  expect([...ours.losses]).toEqual([...theirs.losses]);
  expect([...ours.holds].sort()).toEqual([...theirs.holds].sort());
  expect(wrongRecipes(scheme, coverage)).toEqual([]);
  return both;
}

const RULES = [
  'unreachable-mode',
  'unreachable-variation',
  'no-way-out',
  'no-fresh-start',
  'lost-action',
  'lost-value',
  'no-fallback',
  'dead-binding',
  'seat-gap',
  'behind-the-console',
  'one-sided',
  'plays',
  'altered',
  'broken',
  'not offered',
];

const count = (seen: Map<string, number>, what: string) => seen.set(what, (seen.get(what) ?? 0) + 1);
