import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createDiagrams, type Diagrams } from '../../src/checks/coverage/diagrams.js';
import type { LevelChange, Masks } from '../../src/checks/coverage/level-change.js';

/**
 * Many sets and many changes in one diagram, as an exploration has them: nothing that is remembered of one may be
 * taken for another. Sets are made of boxes (some values of each level), so that their nodes are shared.
 */

/** Levels of equal sizes above the leaves (the last two), so that a node of one could be taken for one of another. */
const SIZES = [2, 2, 2, 2, 5, 6];

type State = readonly number[];

const ALL = SIZES.reduce<State[]>(
  (states, size) => states.flatMap(state => Array.from({ length: size }, (_, value) => [...state, value])),
  [[]],
);

/** Often the first few only: they are small numbers, as the nodes are. */
const someValues = (size: number) =>
  fc.oneof(
    fc.array(fc.boolean(), { minLength: size, maxLength: size }),
    fc.constantFrom(1, 2).map(few => Array.from({ length: size }, (_, value) => value < few)),
  );
const aBox = fc.tuple(...SIZES.map(size => fc.option(someValues(size))));
const aSet = fc.array(aBox, { minLength: 1, maxLength: 3 });
const aMap = (size: number) =>
  fc.array(fc.integer({ min: -1, max: size - 1 }), { minLength: size, maxLength: size });
const someMaps = fc.tuple(...SIZES.map(size => fc.option(aMap(size), { freq: 2 })));

const isIn = (state: State, box: Masks): boolean =>
  state.every((value, level) => box[level]?.[value] ?? true);

const statesOf = (boxes: readonly Masks[]): readonly State[] =>
  ALL.filter(state => boxes.some(box => isIn(state, box)));

/** Where each state is led; null where nowhere. */
const move = (state: State, next: LevelChange['next']): State | null => {
  const moved = state.map((value, level) => next[level]?.[value] ?? (next[level] ? -1 : value));
  return moved.includes(-1) ? null : moved;
};

const setOf = (states: readonly State[], diagrams: Diagrams): number =>
  states.reduce((set, state) => diagrams.union(set, diagrams.single(state)), 0);

const changesOf = (maps: readonly LevelChange['next'][]): readonly LevelChange[] =>
  maps.map((next, id) => ({ id, next, last: next.findLastIndex(each => each !== null) }));

interface Question {
  readonly ask: () => number;
  readonly answer: number;
}

/** Every question about some sets and changes, with the set that the states themselves give as its answer. */
function questionsOf(
  sets: readonly (readonly State[])[],
  changes: readonly LevelChange[],
  diagrams: Diagrams,
): readonly Question[] {
  const of = (states: readonly State[]) => setOf(states, diagrams);
  return sets.flatMap(own => {
    const [set, keys] = [of(own), new Set(own.map(String))];
    const led = changes.flatMap((change): Question[] => {
      const images = own.map(state => move(state, change.next)).filter(state => state !== null);
      const leading = ALL.filter(state => keys.has(String(move(state, change.next))));
      return [
        { ask: () => diagrams.before(change, set), answer: of(leading) },
        { ask: () => diagrams.image(change, set), answer: of(images) },
      ];
    });
    const joined = [ALL, ...sets].flatMap((others): Question[] => {
      const other = of(others);
      const left = others.filter(state => !keys.has(String(state)));
      return [
        { ask: () => diagrams.minus(other, set), answer: of(left) },
        { ask: () => diagrams.union(other, set), answer: of([...own, ...others]) },
      ];
    });
    return [...led, ...joined];
  });
}

describe('sets and changes that share a diagram', () => {
  it('are each what they are by themselves, in whatever order they are asked about', () => {
    fc.assert(
      fc.property(
        fc.array(aSet, { minLength: 2, maxLength: 3 }),
        fc.array(someMaps, { minLength: 3, maxLength: 3 }),
        (sets, maps) => {
          const diagrams = createDiagrams(SIZES);
          const questions = questionsOf(sets.map(statesOf), changesOf(maps), diagrams);
          const answers = questions.map(({ answer }) => answer);
          expect(questions.map(({ ask }) => ask())).toEqual(answers);
          expect(questions.toReversed().map(({ ask }) => ask())).toEqual(answers.toReversed());
        },
      ),
      { numRuns: 40 },
    );
  });

  it('are searched for the lowest values that are let through', () => {
    fc.assert(
      fc.property(aSet, aBox, (boxes, masks) => {
        const diagrams = createDiagrams(SIZES);
        const states = statesOf(boxes);
        const found = states.find(state => isIn(state, masks)) ?? null;
        expect(diagrams.find(setOf(states, diagrams), masks)).toEqual(found);
      }),
      { numRuns: 60 },
    );
  });
});
