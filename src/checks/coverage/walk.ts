import { type Diagrams, maskOfOne } from './diagrams.js';
import type { LevelChange, Masks } from './level-change.js';
import type { ProjectedEdge, Projection } from './projection.js';

/** The reachable states in the order of their distance from power-on; goes on as far as it is asked. */
export interface Walk {
  /** A shortest way into one of the modes, to a state whose values fit; null where there is none. */
  routeTo(goal: Goal): Route | null;
}

export interface Goal {
  /** Mode numbers. */
  readonly modes: readonly number[];
  readonly masks: Masks;
}

/** Steps from power-on: the mode each is done in, and the number of its edge in the projection. */
export type Route = readonly RouteStep[];

export interface RouteStep {
  readonly mode: number;
  readonly edge: number;
}

export function createWalk(projection: Projection, diagrams: Diagrams): Walk {
  const layers: Layer[] = [firstLayer(projection, diagrams)];
  const reached = [...(layers[0] ?? [])];
  const arrivals = arrivalsOf(projection);
  const routes = new Map<string, Route | null>();
  let isDone = false;

  const layerAt = (distance: number): Layer | null => {
    while (!isDone && layers.length <= distance) {
      const next = nextLayer(layers.at(-1) ?? [], reached, projection, diagrams);
      isDone = next.every(set => set === 0);
      if (!isDone) layers.push(next);
    }
    return layers[distance] ?? null;
  };

  const unions = new Map<string, number>();
  /** All states of some modes at one distance. */
  const together = (modes: readonly number[], layer: Layer, distance: number): number => {
    if (modes.length === 1) return layer[modes[0] ?? 0] ?? 0;
    const key = `${distance} ${modes.join()}`;
    const known = unions.get(key);
    if (known !== undefined) return known;
    const union = modes.reduce((all, mode) => diagrams.union(all, layer[mode] ?? 0), 0);
    unions.set(key, union);
    return union;
  };

  const find = ({ modes, masks }: Goal): Route | null => {
    for (let distance = 0; ; distance++) {
      const layer = layerAt(distance);
      if (layer === null) return null;
      if (diagrams.find(together(modes, layer, distance), masks) === null) continue;
      for (const mode of modes) {
        const state = diagrams.find(layer[mode] ?? 0, masks);
        if (state !== null) return routeBack(distance, mode, state, layers, arrivals, diagrams);
      }
    }
  };

  return {
    routeTo: goal => {
      const key = `${goal.modes.join()}|${goal.masks.map(mask => mask?.map(Number).join('') ?? '').join()}`;
      const known = routes.get(key);
      if (known !== undefined) return known;
      const route = find(goal);
      routes.set(key, route);
      return route;
    },
  };
}

/** States at one distance, by mode number. */
type Layer = readonly number[];

function firstLayer({ modes, start, startMode }: Projection, diagrams: Diagrams): Layer {
  return modes.map((_, mode) => (mode === startMode ? diagrams.single(start) : 0));
}

/** The states one step further that are not nearer already; these are added to `reached`. */
function nextLayer(layer: Layer, reached: number[], { modes }: Projection, diagrams: Diagrams): Layer {
  const next = new Array<number>(modes.length).fill(0);
  for (const [mode, edges] of modes.entries()) {
    const set = layer[mode] ?? 0;
    if (set === 0) continue;
    for (const { change, to } of edges) {
      const fresh = diagrams.minus(diagrams.image(change, set), reached[to] ?? 0);
      next[to] = diagrams.union(next[to] ?? 0, fresh);
    }
  }
  for (const [mode, set] of next.entries()) reached[mode] = diagrams.union(reached[mode] ?? 0, set);
  return next;
}

interface Arrival extends RouteStep {
  readonly by: ProjectedEdge;
}

/** The edges that lead to each mode. */
function arrivalsOf({ modes }: Projection): readonly (readonly Arrival[])[] {
  const arrivals: Arrival[][] = modes.map(() => []);
  for (const [mode, edges] of modes.entries())
    for (const [edge, by] of edges.entries()) arrivals[by.to]?.push({ mode, edge, by });
  return arrivals;
}

function routeBack(
  distance: number,
  goal: number,
  state: readonly number[],
  layers: readonly Layer[],
  arrivals: readonly (readonly Arrival[])[],
  diagrams: Diagrams,
): Route {
  const route: RouteStep[] = [];
  let [mode, at] = [goal, state];
  for (let left = distance - 1; left >= 0; left--) {
    for (const { mode: from, edge, by } of arrivals[mode] ?? []) {
      const set = layers[left]?.[from] ?? 0;
      const before = set === 0 ? null : diagrams.find(set, masksBefore(by.change, at, diagrams));
      if (before === null) continue;
      route.push({ mode: from, edge });
      [mode, at] = [from, before];
      break;
    }
  }
  return route.reverse();
}

/** The states from which a change leads to a state. */
function masksBefore({ next }: LevelChange, state: readonly number[], { sizes }: Diagrams): Masks {
  return sizes.map((size, level) => {
    const map = next[level] ?? null;
    const value = state[level] ?? 0;
    return map === null ? maskOfOne(size, value) : map.map(to => to === value);
  });
}
