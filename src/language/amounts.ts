import type { Place } from '../findings/place.js';
import { badPlace, type Spot } from './faults.js';
import type { SectionKind } from './layout.js';

/**
 * How many of each thing a scheme may hold: far more than a game has, and so few that a check ends within about
 * ten seconds on a slow machine. What goes beyond is a finding and is not read.
 */
export const AMOUNTS = {
  modes: 256,
  /** Of all modes together; bindings are counted as rows. */
  bindings: 8192,
  /** Controls joined by `or` in one cell. */
  alternatives: 32,
} as const;

/** Rows of the table of each section, one mode’s bindings among them. */
export const ROWS: Readonly<Record<SectionKind, number>> = {
  game: 64,
  seats: 16,
  settings: 64,
  actions: 4096,
  mode: 256,
  switches: 64,
  variations: 1024,
  fallbacks: 256,
  consoles: 16,
  controllers: 256,
  timing: 256,
  accepted: 1024,
  overlays: 64,
  manual: 0,
};

export interface Amount {
  readonly most: number;
  /** What is counted: `modes`, `rows`. */
  readonly what: string;
  /** How a message calls the place where they stand. */
  readonly where: string;
  readonly wayOut: string;
}

/** As many of a list as may be there; a finding at the first that is too many. */
export function withinAmount<T>(
  list: readonly T[],
  { most, what, where, wayOut }: Amount,
  spot: Spot,
  placeOfItem: (item: T) => Place,
): readonly T[] {
  const first = list[most];
  if (first === undefined) return list;
  badPlace(
    spot,
    placeOfItem(first),
    where,
    `there are ${list.length} ${what}, and ${most} is the limit: from here on they are not read`,
    [wayOut],
  );
  return list.slice(0, most);
}
