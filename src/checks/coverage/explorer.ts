import { createDiagrams, type Diagrams } from './diagrams.js';
import { type Escapes, findEscapes } from './escapes.js';
import type { Graph } from './graph.js';
import type { LevelChange } from './level-change.js';
import { type InternChange, type Projection, project } from './projection.js';
import { reach } from './reach.js';
import { createWalk, type Walk } from './walk.js';

/** What is known of one projection, worked out when it is first asked for. */
export interface Exploration {
  readonly diagrams: Diagrams;
  /** The reachable states, by mode number. */
  reached(): readonly number[];
  /** The reachable states by their distance from power-on. */
  walk(): Walk;
  escapes(isFresh: readonly boolean[]): Escapes;
}

export interface Explorer {
  project(graph: Graph, levels: readonly number[]): Projection;
  explore(projection: Projection): Exploration;
}

/** Explores projections; equal ones once. */
export function createExplorer(): Explorer {
  const drawers = new Map<string, Drawer>();
  const explorations = new Map<string, Exploration>();
  const drawerOf = (sizes: readonly number[]): Drawer => {
    const key = sizes.join();
    const known = drawers.get(key);
    if (known !== undefined) return known;
    const drawer = createDrawer(sizes);
    drawers.set(key, drawer);
    return drawer;
  };
  return {
    project: (graph, levels) =>
      project(graph, levels, drawerOf(levels.map(level => graph.space.variables[level]?.size ?? 0)).intern),
    explore: projection => {
      const known = explorations.get(projection.key);
      if (known !== undefined) return known;
      const exploration = createExploration(projection, drawerOf(projection.sizes).diagrams);
      explorations.set(projection.key, exploration);
      return exploration;
    },
  };
}

/** Diagrams of one list of sizes, and the changes they know. */
interface Drawer {
  readonly diagrams: Diagrams;
  readonly intern: InternChange;
}

function createDrawer(sizes: readonly number[]): Drawer {
  const changes = new Map<string, LevelChange>();
  return {
    diagrams: createDiagrams(sizes),
    intern: (key, next) => {
      const known = changes.get(key);
      if (known !== undefined) return known;
      const change = { id: changes.size, next, last: next.findLastIndex(each => each !== null) };
      changes.set(key, change);
      return change;
    },
  };
}

function createExploration(projection: Projection, diagrams: Diagrams): Exploration {
  let reached: readonly number[] | null = null;
  let walk: Walk | null = null;
  const escapes = new Map<string, Escapes>();
  const reachedOnce = () => {
    reached ??= reach(projection, diagrams);
    return reached;
  };
  return {
    diagrams,
    reached: reachedOnce,
    walk: () => {
      walk ??= createWalk(projection, diagrams);
      return walk;
    },
    escapes: isFresh => {
      const key = isFresh.join();
      const known = escapes.get(key);
      if (known !== undefined) return known;
      const found = findEscapes(projection, diagrams, reachedOnce(), isFresh);
      escapes.set(key, found);
      return found;
    },
  };
}
