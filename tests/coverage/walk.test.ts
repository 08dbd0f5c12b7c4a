import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createDiagrams } from '../../src/checks/coverage/diagrams.js';
import type { LevelChange } from '../../src/checks/coverage/level-change.js';
import type { Projection } from '../../src/checks/coverage/projection.js';
import { reach } from '../../src/checks/coverage/reach.js';
import { createWalk, type Goal, type Route } from '../../src/checks/coverage/walk.js';

const SIZES = [2, 3, 2];
const MODES = 3;

type Step = Pick<LevelChange, 'next'> & { readonly to: number };
type State = { readonly mode: number; readonly values: readonly number[] };

const someStep: fc.Arbitrary<Step> = fc.record({
  next: fc.tuple(
    ...SIZES.map(size =>
      fc.option(fc.array(fc.integer({ min: -1, max: size - 1 }), { minLength: size, maxLength: size }), {
        freq: 2,
      }),
    ),
  ),
  to: fc.nat({ max: MODES - 1 }),
});

const someGraph = fc.record({
  startMode: fc.nat({ max: MODES - 1 }),
  start: fc.tuple(...SIZES.map(size => fc.nat({ max: size - 1 }))),
  steps: fc.array(fc.array(someStep, { maxLength: 3 }), { minLength: MODES, maxLength: MODES }),
});

type Graph = typeof someGraph extends fc.Arbitrary<infer Each> ? Each : never;

test('the walk finds a shortest way wherever a breadth-first search gets, and says where there is none', () => {
  let [missed, longest] = [0, 0];
  fc.assert(
    fc.property(someGraph, fc.nat({ max: 2 }), (graph, value) => {
      const projection = projectionOf(graph);
      const diagrams = createDiagrams(SIZES);
      const walk = createWalk(projection, diagrams);
      const distances = search(graph);
      for (const modes of [[0], [1], [2], [0, 2], [2, 1, 0]]) {
        const goal: Goal = { modes, masks: [null, [0, 1, 2].map(each => each === value), null] };
        const fits = ({ mode, values }: State) => modes.includes(mode) && values[1] === value;
        const near = [...distances.values()].find(({ state }) => fits(state));
        const route = walk.routeTo(goal);
        expect(route?.length).toBe(near?.distance);
        if (route !== null) expect(fits(follow(route, graph))).toBe(true);
        expect(walk.routeTo(goal)).toEqual(route);
        if (route === null) missed++;
        longest = Math.max(longest, route?.length ?? 0);
      }
      const reached = reach(projection, diagrams);
      for (let mode = 0; mode < MODES; mode++)
        expect(reached[mode]).toBe(
          [...distances.values()]
            .filter(({ state }) => state.mode === mode)
            .reduce((set, { state }) => diagrams.union(set, diagrams.single(state.values)), 0),
        );
    }),
    { numRuns: 300 },
  );
  expect(missed).toBeGreaterThan(100);
  expect(longest).toBeGreaterThan(3);
});

function projectionOf({ startMode, start, steps }: Graph): Projection {
  let id = 0;
  const modes = steps.map(list =>
    list.map(({ next, to }) => ({
      change: { id: id++, next, last: next.findLastIndex(each => each !== null) },
      to,
      edge: { change: { id, touches: new Map() }, to, step: NO_STEP },
    })),
  );
  return { key: '', levels: [0, 1, 2], sizes: SIZES, start, startMode, modes };
}

/** How a recipe would tell it: nothing here asks for that. */
const NO_STEP = null as never;

function take({ next, to }: Step, { values }: State): State | null {
  const moved = values.map((value, level) => next[level]?.[value] ?? value);
  return moved.includes(-1) ? null : { mode: to, values: moved };
}

/** Every reachable state with its distance, the nearest first. */
function search({ startMode, start, steps }: Graph) {
  const keyOf = ({ mode, values }: State) => `${mode}: ${values.join()}`;
  const first: State = { mode: startMode, values: start };
  const found = new Map([[keyOf(first), { state: first, distance: 0 }]]);
  for (const { state, distance } of found.values())
    for (const step of steps[state.mode] ?? []) {
      const next = take(step, state);
      if (next !== null && !found.has(keyOf(next)))
        found.set(keyOf(next), { state: next, distance: distance + 1 });
    }
  return found;
}

/** Where a route ends; an error where one of its steps can't be taken. */
function follow(route: Route, { startMode, start, steps }: Graph): State {
  let state: State = { mode: startMode, values: start };
  for (const { mode, edge } of route) {
    const step = steps[mode]?.[edge];
    const next = step === undefined || mode !== state.mode ? null : take(step, state);
    if (next === null) throw new Error('a step of the route can’t be taken');
    state = next;
  }
  return state;
}
