import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canFire, judgePair } from '../../src/checks/conflicts/pair.js';
import { type BrutePair, bruteForce, everFires } from '../support/brute-force.js';
import { momentaryPairs, positionPairs, programOf } from '../support/random-pairs.js';

/** Rule, order and length as both methods give them, for random pairs. Independent: tests/support/naive.ts. */
function agree(pairs: fc.Arbitrary<BrutePair>, runs: number, longest: number): ReadonlyMap<string, number> {
  const seen = new Map<string, number>();
  fc.assert(
    fc.property(pairs, pair => {
      const program = programOf(pair);
      const isLive =
        canFire(program) &&
        program.y !== null &&
        canFire({ ...program, x: program.y, y: program.x, holdBacks: swap(program.holdBacks) });
      fc.pre(isLive);
      const result = judgePair(program);
      const brute = bruteForce(pair, longest);
      const rule = result?.rule ?? 'none';
      seen.set(rule, (seen.get(rule) ?? 0) + 1);
      // Only a meeting by chance may take longer than what can be written out.
      if (result?.rule === 'can-coincide' && result.path.length > longest) return brute === null;
      expect(
        result === null
          ? null
          : { rule: result.rule, order: result.isSwapped ? 'yx' : 'xy', length: result.path.length },
      ).toEqual(brute);
      return true;
    }),
    { numRuns: runs },
  );
  return seen;
}

const swap = (holdBacks: ReturnType<typeof programOf>['holdBacks']) =>
  holdBacks.map(hold => ({ ...hold, target: hold.target === 'x' ? ('y' as const) : ('x' as const) }));

describe('the search agrees with writing out every sequence', () => {
  it('on one control', () => {
    const seen = agree(momentaryPairs(1, 4), 1000, 9);
    for (const rule of ['same-moment', 'on-the-way', 'in-passing', 'aftermath', 'none'])
      expect(seen.get(rule), rule).toBeGreaterThan(0);
  });

  it('on chords of two', () => {
    const seen = agree(momentaryPairs(2, 2), 800, 6);
    for (const rule of ['same-moment', 'on-the-way', 'order-matters', 'aftermath', 'none'])
      expect(seen.get(rule), rule).toBeGreaterThan(0);
  });

  it('on chords of three, opposites among them', () => {
    const pairs = momentaryPairs(3, 2).filter(
      ({ x, y }) => x.kind !== 'double tap' && y.kind !== 'double tap',
    );
    agree(pairs, 150, 4);
  });

  it('on what never fires', () => {
    const seen = { dead: 0, live: 0 };
    fc.assert(
      fc.property(momentaryPairs(2, 2), pair => {
        const isLive = canFire(programOf(pair));
        seen[isLive ? 'live' : 'dead']++;
        expect(everFires(pair, 6)).toBe(isLive);
      }),
      { numRuns: 300 },
    );
    expect(seen.dead).toBeGreaterThan(0);
    expect(seen.live).toBeGreaterThan(0);
  });

  it('on switches and knobs', () => {
    agree(positionPairs, 200, 4);
  });
});
