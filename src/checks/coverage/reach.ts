import type { Diagrams } from './diagrams.js';
import type { Projection } from './projection.js';

/** All reachable states, by mode number; in no order of distance, which makes it the quicker way to know them. */
export function reach(projection: Projection, diagrams: Diagrams): readonly number[] {
  const reached = new Array<number>(projection.modes.length).fill(0);
  reached[projection.startMode] = diagrams.single(projection.start);
  const waiting = new Set([projection.startMode]);
  for (const mode of waiting) {
    waiting.delete(mode);
    for (const to of spread(mode, projection, diagrams, reached)) waiting.add(to);
  }
  return reached;
}

/** Takes every step from a mode; the modes that gained states by it. */
function spread(
  mode: number,
  { modes }: Projection,
  diagrams: Diagrams,
  reached: number[],
): ReadonlySet<number> {
  const gained = new Set<number>();
  const edges = modes[mode] ?? [];
  const within = edges.filter(({ to }) => to === mode);
  for (let before = -1; before !== reached[mode]; ) {
    before = reached[mode] ?? 0;
    for (const { change } of within)
      reached[mode] = diagrams.union(reached[mode] ?? 0, diagrams.image(change, reached[mode] ?? 0));
  }
  for (const { change, to } of edges) {
    if (to === mode) continue;
    const before = reached[to] ?? 0;
    const after = diagrams.union(before, diagrams.image(change, reached[mode] ?? 0));
    if (after === before) continue;
    reached[to] = after;
    gained.add(to);
  }
  return gained;
}
