import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TooManyStatesError } from '../../src/checks/coverage/diagram-store.js';
import { createDiagrams } from '../../src/checks/coverage/diagrams.js';
import type { LevelChange } from '../../src/checks/coverage/level-change.js';

const SIZES = [3, 2, 5, 4, 2];
const ALL = SIZES.reduce<number[][]>(
  (states, size) => states.flatMap(state => Array.from({ length: size }, (_, value) => [...state, value])),
  [[]],
);
const someStates = fc.subarray(ALL);
const aChange = fc
  .tuple(
    ...SIZES.map(size =>
      fc.option(fc.array(fc.integer({ min: -1, max: size - 1 }), { minLength: size, maxLength: size })),
    ),
  )
  .map(next => ({ next, last: next.findLastIndex(each => each !== null) }));

describe('decision diagrams stand for the sets that they are made from', () => {
  test('union, minus, image, before and find', () => {
    fc.assert(
      fc.property(someStates, someStates, aChange, (ones, others, { next, last }) => {
        const diagrams = createDiagrams(SIZES);
        const setOf = (states: readonly (readonly number[])[]) =>
          states.reduce((set, state) => diagrams.union(set, diagrams.single(state)), 0);
        const change: LevelChange = { id: 0, next, last };
        const moved = (state: readonly number[]) =>
          state.map((value, level) => next[level]?.[value] ?? (next[level] ? -1 : value));
        const [one, other] = [setOf(ones), setOf(others)];
        expect(diagrams.union(one, other)).toBe(setOf([...ones, ...others]));
        expect(diagrams.minus(one, other)).toBe(setOf(ones.filter(state => !others.includes(state))));
        expect(diagrams.image(change, one)).toBe(setOf(ones.map(moved).filter(state => !state.includes(-1))));
        const into = ALL.filter(state => ones.some(each => String(each) === String(moved(state))));
        expect(diagrams.before(change, one)).toBe(setOf(into));
        expect(setOf(ALL)).toBe(diagrams.full);
        const masks = SIZES.map((size, level) =>
          level === 2 ? Array.from({ length: size }, (_, value) => value > 1) : null,
        );
        expect(diagrams.find(one, masks)).toEqual(ones.find(([, , third = 0]) => third > 1) ?? null);
      }),
    );
  });

  test('say in one sentence where they would grow too large', () => {
    const diagrams = createDiagrams(
      Array.from({ length: 12 }, () => 4),
      2000,
    );
    const fill = () => {
      let set = 0;
      for (let state = 0; state < 3000; state++)
        set = diagrams.union(
          set,
          diagrams.single(Array.from({ length: 12 }, (_, level) => ((state * 7919) >> level) % 4)),
        );
    };
    expect(fill).toThrow(TooManyStatesError);
  });
});
