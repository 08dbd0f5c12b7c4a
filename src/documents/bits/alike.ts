import type { ModeTable } from './mode-view.js';
import type { SetupView } from './setup-view.js';

/** Tables of one mode that differ in nothing but their seats row become one. */
export function joinTables(tables: readonly ModeTable[]): readonly ModeTable[] {
  return join(tables, ({ mode, seats: _, ...rest }) => JSON.stringify([mode.name, rest]), joinSeats);
}

function joinSeats(one: ModeTable, other: ModeTable): ModeTable {
  return { ...one, seats: [...one.seats, ...other.seats] };
}

export function joinSetups(setups: readonly SetupView[]): readonly SetupView[] {
  return join(
    setups,
    ({ seats: _, ...rest }) => JSON.stringify(rest),
    (one, other) => ({ ...one, seats: `${one.seats}, ${other.seats}` }),
  );
}

/** Items with the same key joined, in the place of the first. */
function join<T>(
  items: readonly T[],
  keyOf: (item: T) => string,
  joinTwo: (one: T, other: T) => T,
): readonly T[] {
  const joined = new Map<string, T>();
  for (const item of items) {
    const key = keyOf(item);
    const known = joined.get(key);
    joined.set(key, known === undefined ? item : joinTwo(known, item));
  }
  return [...joined.values()];
}
