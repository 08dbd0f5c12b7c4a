import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canFire, judgePair, type PairResult } from '../../src/checks/conflicts/pair.js';
import { type BrutePair, bruteForce, canFollow, everFires } from '../support/brute-force.js';
import { fires, type NaiveBinding, type NaiveHoldBack } from '../support/naive.js';
import { mixedPairs, momentaryPairs, positionPairs, programOf } from '../support/random-pairs.js';

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
      if (result !== null) expect(shows(pair, result)).toBe(true);
      return true;
    }),
    { numRuns: runs },
  );
  return seen;
}

/** Whether the sequence that is shown can be made, and does what its rule says. */
function shows(pair: BrutePair, { rule, isSwapped, path }: PairResult): boolean {
  const history = path.map(bits => pair.contacts.map((_, index) => (bits >> index) & 1));
  // The search writes 0 for a switch that it leaves alone.
  const contacts = pair.contacts.filter((_, index) => history.some(levels => levels[index] === 1));
  const used = history.map(levels => levels.filter((_, index) => history.some(each => each[index] === 1)));
  const isFeasible = used.every((levels, read) => canFollow(contacts, used[read - 1], levels));
  const firing = (binding: NaiveBinding, holds: readonly NaiveHoldBack[]) =>
    history.map((_, read) => fires(history, read, binding, holds));
  const x = firing(pair.x, pair.holdX);
  const y = firing(pair.y, pair.holdY);
  const [unwanted, wanted] = isSwapped ? [y, x] : [x, y];
  if (rule === 'same-moment' || rule === 'can-coincide')
    return isFeasible && x.at(-1) === true && y.at(-1) === true;
  if (rule === 'aftermath')
    return isFeasible && unwanted.indexOf(true) === path.length - 1 && wanted.at(-2) === true;
  return isFeasible && unwanted.slice(0, -1).includes(true) && wanted.at(-1) === true;
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

  it('on switches beside controls that may be opposites', () => {
    const seen = agree(mixedPairs(2), 500, 4);
    for (const rule of ['same-moment', 'on-the-way', 'order-matters', 'can-coincide', 'none'])
      expect(seen.get(rule), rule).toBeGreaterThan(0);
  });

  it('on what a fixed switch or an opposite lets fire', () => {
    const seen = { dead: 0, live: 0 };
    fc.assert(
      fc.property(mixedPairs(2), pair => {
        const isLive = canFire(programOf(pair));
        seen[isLive ? 'live' : 'dead']++;
        expect(everFires(pair, 4)).toBe(isLive);
      }),
      { numRuns: 400 },
    );
    expect(seen.dead).toBeGreaterThan(0);
    expect(seen.live).toBeGreaterThan(0);
  });

  /** Two contacts of the same two bindings, told apart by what holds one of these back only. */
  it('on a part that holds back and one that does not', () => {
    const y: NaiveBinding = { kind: 'hold', n: 2, parts: [2] };
    const pair: BrutePair = {
      x: { kind: 'press', n: 1, parts: [0, 1, 2] },
      y,
      contacts: [0, 1, 2].map(() => ({ type: 'momentary', opposite: null })),
      holdX: [],
      holdY: [{ holder: { kind: 'press', n: 1, parts: [0] }, until: [2] }],
      xGoes: false,
      yGoes: false,
    };
    expect(bruteForce(pair, 4)).toEqual({ rule: 'order-matters', order: 'yx', length: 3 });
    expect(judgePair(programOf(pair))).toMatchObject({ rule: 'order-matters', isSwapped: true });
  });

  /** Both can only happen once the switch has been moved, at the second read at the earliest. */
  it('on a switch that holds back where it stands at first', () => {
    const pair: BrutePair = {
      x: { kind: 'held', n: 1, parts: [0] },
      y: { kind: 'press', n: 1, parts: [1] },
      contacts: [
        { type: 'momentary', opposite: null },
        { type: 'momentary', opposite: null },
        { type: 'two-position', opposite: null, starts: [0] },
      ],
      holdX: [{ holder: { kind: 'at', n: 1, parts: [2], position: 0 }, until: [0] }],
      holdY: [],
      xGoes: false,
      yGoes: false,
    };
    expect(bruteForce(pair, 4)).toEqual({ rule: 'can-coincide', order: 'xy', length: 4 });
    expect(judgePair(programOf(pair))).toMatchObject({ rule: 'can-coincide', path: { length: 4 } });
  });
});
