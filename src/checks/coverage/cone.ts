import type { Graph } from './graph.js';
import { type Change, isAsked, isChanged } from './moves.js';

/** Finds which variables can matter to a question. */
export interface Cones {
  /**
   * The variables on which modes depend, those asked about, and those on which these depend in turn, in rising
   * order. What all others do changes nothing about the answer, so they can be left out of the states.
   */
  coneOf(asked: Iterable<number>): readonly number[];
}

interface Influence {
  /** It leads to another mode. */
  readonly leaves: boolean;
  readonly asks: readonly number[];
  readonly changes: readonly number[];
}

export function createCones(graph: Graph): Cones {
  const influences = influencesOf(graph);
  const known = new Map<string, readonly number[]>();
  return {
    coneOf: asked => {
      const cone = new Set(asked);
      const key = [...cone].sort((a, b) => a - b).join();
      const before = known.get(key);
      if (before !== undefined) return before;
      close(cone, influences);
      const found = [...cone].sort((a, b) => a - b);
      known.set(key, found);
      return found;
    },
  };
}

function influencesOf(graph: Graph): readonly Influence[] {
  const within = new Map<Change, Influence>();
  const leaving = new Map<Change, Influence>();
  for (const [number, { edges }] of graph.modes.entries()) {
    for (const { change, to } of edges) {
      const leaves = to !== number;
      const different = leaves ? leaving : within;
      if (different.has(change)) continue;
      const touched = [...change.touches];
      different.set(change, {
        leaves,
        asks: touched.filter(([, next]) => isAsked(next)).map(([variable]) => variable),
        changes: touched.filter(([, next]) => isChanged(next)).map(([variable]) => variable),
      });
    }
  }
  return [...within.values(), ...leaving.values()];
}

function close(cone: Set<number>, influences: readonly Influence[]): void {
  for (let before = -1; before !== cone.size; ) {
    before = cone.size;
    for (const { leaves, asks, changes } of influences)
      if (leaves || changes.some(variable => cone.has(variable)))
        for (const variable of asks) cone.add(variable);
  }
}
