import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createMachine } from '../../src/checks/conflicts/machine.js';
import {
  createSeen,
  edgesFrom,
  type Node,
  nodeFrom,
  pathTo,
  REST,
  standsOf,
  stateNumber,
  stepBits,
} from '../../src/checks/conflicts/search.js';
import type { BrutePair } from '../support/brute-force.js';
import { fires } from '../support/naive.js';
import { mixedPairs, momentaryPairs, programOf } from '../support/random-pairs.js';

/** A random walk of a pair's machine, all contacts allowed: what fires at each read, and what was read. */
function walk(pair: BrutePair, choices: readonly number[]) {
  const machine = createMachine(programOf(pair), 2 ** pair.contacts.length - 1);
  let node: Node = REST;
  const fired: number[] = [];
  const stops: Node[] = [];
  for (const choice of choices) {
    const edges = edgesFrom(machine, node);
    // Every second choice is among the calm ones, so that engagements last and end.
    const edge = edges[choice % Math.max(1, choice % 2 === 0 ? edges.length : Math.min(2, edges.length))];
    if (edge === undefined) break;
    const step = stepBits(machine, node, edge, -1);
    fired.push(step & 3);
    node = nodeFrom(machine, node, edge, standsOf(step), 0);
    stops.push(node);
  }
  return { machine, node, fired, stops };
}

const choices = fc.array(fc.nat(1000), { minLength: 10, maxLength: 10 });
const pairs = fc.oneof(mixedPairs(4), momentaryPairs(2, 5), momentaryPairs(3, 4));

describe('the machine of a program', () => {
  it('fires read by read what looking back over all that was read fires', () => {
    const seen = [0, 0, 0, 0];
    fc.assert(
      fc.property(pairs, choices, (pair, picks) => {
        const { machine, node, fired } = walk(pair, picks);
        const history = pathTo(machine, node).map(bits =>
          pair.contacts.map((_, index) => (bits >> index) & 1),
        );
        expect(history).toHaveLength(fired.length);
        const naive = history.map(
          (_, read) =>
            (fires(history, read, pair.x, pair.holdX) ? 1 : 0) +
            (fires(history, read, pair.y, pair.holdY) ? 2 : 0),
        );
        expect(fired).toEqual(naive);
        for (const bits of fired) seen[bits] = (seen[bits] ?? 0) + 1;
      }),
      { numRuns: 200 },
    );
    for (const count of seen) expect(count).toBeGreaterThan(10);
  });

  it.each(['x', 'y'] as const)(
    'does not count a press of %s that is held back as the first of two',
    target => {
      const tap = { kind: 'double tap', n: 8, parts: [0] } as const;
      const press = { kind: 'press', n: 1, parts: [1] } as const;
      const holds = [{ holder: { ...press, parts: [0, 1] }, until: [0] }];
      const [x, y] = target === 'x' ? [tap, press] : [press, tap];
      const machine = createMachine(
        programOf({
          x,
          y,
          contacts: [0, 1].map(() => ({ type: 'momentary', opposite: null })),
          holdX: target === 'x' ? holds : [],
          holdY: target === 'y' ? holds : [],
          xGoes: false,
          yGoes: false,
        }),
        0b11,
      );
      const firesOn = (path: readonly number[]) => {
        let node: Node = REST;
        return path.map(value => {
          const edge = edgesFrom(machine, node).find(({ to }) => machine.inputs.levels[to] === value);
          if (edge === undefined) throw new Error('not feasible');
          const step = stepBits(machine, node, edge, -1);
          node = nodeFrom(machine, node, edge, standsOf(step), 0);
          return (step & (target === 'x' ? 1 : 2)) !== 0;
        });
      };
      expect(firesOn([0b10, 0b11, 0b00, 0b01, 0b00, 0b01])).toEqual([
        false,
        false,
        false,
        false,
        false,
        true,
      ]);
      expect(firesOn([0b01, 0b00, 0b01])).toEqual([false, false, true]);
    },
  );

  it('knows where everything momentary is let go', () => {
    fc.assert(
      fc.property(pairs, pair => {
        const machine = createMachine(programOf(pair), 2 ** pair.contacts.length - 1);
        for (const { to, isLetGo } of machine.edges.flat()) {
          const value = machine.inputs.levels[to] ?? 0;
          const touched = pair.contacts.some(
            ({ type }, index) => type === 'momentary' && ((value >> index) & 1) === 1,
          );
          expect(isLetGo).toBe(!touched);
        }
      }),
      { numRuns: 50 },
    );
  });

  it('leaves out what holds back on contacts that are not engaged', () => {
    const [button, other] = [
      { type: 'momentary', opposite: null },
      { type: 'momentary', opposite: null },
    ] as const;
    const press = { kind: 'press', n: 1, parts: [0] } as const;
    const program = programOf({
      x: press,
      y: press,
      contacts: [button, other],
      holdX: [{ holder: { ...press, parts: [0, 1] }, until: [0] }],
      holdY: [{ holder: { ...press, parts: [0] }, until: [0] }],
      xGoes: false,
      yGoes: false,
    });
    expect(createMachine(program, 0b01)).toMatchObject({ holdBacks: [1], holds: 2, holdsX: 0, holdsY: 1 });
    expect(createMachine(program, 0b11)).toMatchObject({ holdBacks: [0, 1], holds: 4, holdsX: 1, holdsY: 2 });
  });
});

describe('states', () => {
  it('have a number each, below the count of all', () => {
    fc.assert(
      fc.property(pairs, choices, (pair, picks) => {
        const { machine, stops } = walk(pair, picks);
        const { x, y, holds, inputs } = machine;
        const byNumber = new Map<number, string>();
        for (const { at, x: ofX, y: ofY, holding } of stops)
          for (const flag of [0, 1]) {
            const number = stateNumber(machine, at, (ofX * y.states + ofY) * holds + holding, flag);
            const text = [at, ofX, ofY, holding, flag].join();
            expect(byNumber.get(number) ?? text).toBe(text);
            byNumber.set(number, text);
            expect(number).toBeGreaterThanOrEqual(0);
            expect(number).toBeLessThan(inputs.levels.length * x.states * y.states * holds * 2);
          }
      }),
      { numRuns: 40 },
    );
  });

  it.each([
    ['few', 3],
    ['very many', 255],
  ])('are new once, where there are %s', (_, n) => {
    const hold = { kind: 'hold', n, parts: [0] } as const;
    const contact = { type: 'momentary', opposite: null } as const;
    const machine = createMachine(
      programOf({
        x: hold,
        y: { kind: 'double tap', n, parts: [0, 1] },
        contacts: [contact, contact, contact],
        holdX: [{ holder: { ...hold, parts: [0, 2] }, until: [0] }],
        holdY: [],
        xGoes: false,
        yGoes: false,
      }),
      0b111,
    );
    const hasSeen = createSeen(machine);
    const numbers = [0, 1, 7, 100];
    expect(numbers.map(hasSeen)).toEqual([false, false, false, false]);
    expect([...numbers, 8, 8].map(hasSeen)).toEqual([true, true, true, true, false, true]);
  });
});
