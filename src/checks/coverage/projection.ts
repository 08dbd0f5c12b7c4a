import type { Edge, Graph } from './graph.js';
import type { LevelChange } from './level-change.js';
import { type Change, isChanged } from './moves.js';

/**
 * A graph whose states keep only some variables: the levels. Equal keys mean equal graphs, whatever the console,
 * the seats row and the names in it; so their exploration is shared.
 */
export interface Projection {
  readonly key: string;
  /** The variable of each level. */
  readonly levels: readonly number[];
  readonly sizes: readonly number[];
  readonly start: readonly number[];
  readonly startMode: number;
  /** By mode number. */
  readonly modes: readonly (readonly ProjectedEdge[])[];
}

export interface ProjectedEdge {
  readonly change: LevelChange;
  readonly to: number;
  /** The graph's own; not part of the key. */
  readonly edge: Edge;
}

/** Gives equal changes of equal levels the same object. */
export type InternChange = (key: string, next: LevelChange['next']) => LevelChange;

/** @param levels a cone of the graph (cone.ts): otherwise the projection has steps that the graph has not */
export function project(graph: Graph, levels: readonly number[], intern: InternChange): Projection {
  const known = new Map<Change, Projected>();
  const changeOf = (change: Change): Projected => {
    const before = known.get(change);
    if (before !== undefined) return before;
    const projected = projectChange(change, levels, intern);
    known.set(change, projected);
    return projected;
  };
  const parts: string[] = [];
  const modes = graph.modes.map(({ edges }, number) => {
    const kept = new Map<number, ProjectedEdge>();
    for (const edge of edges) {
      const { change, isStill } = changeOf(edge.change);
      if (edge.to === number && isStill) continue;
      const key = change.id * graph.modes.length + edge.to;
      if (!kept.has(key)) kept.set(key, { change, to: edge.to, edge });
    }
    parts.push([...kept.keys()].join());
    return [...kept.values()];
  });
  const sizes = levels.map(level => graph.space.variables[level]?.size ?? 0);
  const start = levels.map(level => graph.space.start[level] ?? 0);
  const key = `${sizes.join()}|${start.join()}|${graph.startMode}|${parts.join(';')}`;
  return { key, levels, sizes, start, startMode: graph.startMode, modes };
}

interface Projected {
  readonly change: LevelChange;
  /** No value of the levels is changed. */
  readonly isStill: boolean;
}

function projectChange({ touches }: Change, levels: readonly number[], intern: InternChange): Projected {
  const next = levels.map(level => touches.get(level) ?? null);
  const key = next.map(each => each?.join() ?? '').join(';');
  return { change: intern(key, next), isStill: !next.some(each => each !== null && isChanged(each)) };
}
