import type { CellKind, RamCell } from './routine/cells.js';
import type { UnitRoutine } from './routine/routine.js';

/** A byte of RAM and its distance from the first. */
export interface PlacedCell extends RamCell {
  readonly offset: number;
}

/** The routine's RAM: bytes that all modes share, then those that each mode has for itself, one over the other. */
export interface RamLayout {
  readonly shared: readonly PlacedCell[];
  /** By unit routine. */
  readonly own: ReadonlyMap<UnitRoutine, readonly PlacedCell[]>;
  /** Bytes in all. */
  readonly size: number;
}

const SHARED: readonly CellKind[] = ['setting', 'position', 'kept'];

/** @param firedBytes symbols of the fired bytes, in their order */
export function layOutRam(firedBytes: readonly string[], routines: readonly UnitRoutine[]): RamLayout {
  const fired = routines.flatMap(({ cells: own }) => own.filter(({ kind }) => kind === 'fired'));
  const cells = new Map<string, RamCell>();
  for (const symbol of firedBytes) {
    const cell = fired.find(each => each.symbol === symbol);
    if (cell !== undefined) cells.set(symbol, cell);
  }
  for (const kind of SHARED)
    for (const { cells: own } of routines)
      for (const cell of own) if (cell.kind === kind && !cells.has(cell.symbol)) cells.set(cell.symbol, cell);
  const shared = [...cells.values()].map((cell, offset) => ({ ...cell, offset }));
  const own = new Map(routines.map(routine => [routine, placeOwn(routine, shared.length)]));
  const ends = [...own.values()].flatMap(placed => placed.map(({ offset }) => offset + 1));
  return { shared, own, size: Math.max(shared.length, ...ends, 0) };
}

/** State bytes have one place each; scratch bytes share a place where their lives do not meet. */
function placeOwn({ cells, lives }: UnitRoutine, start: number): readonly PlacedCell[] {
  const state = cells.filter(({ kind }) => kind === 'state');
  const placed: PlacedCell[] = state.map((cell, index) => ({ ...cell, offset: start + index }));
  const from = start + state.length;
  /** By place: the last use of what lies there. */
  const busyUntil: number[] = [];
  const scratch = cells
    .filter(({ kind }) => kind === 'scratch')
    .map(cell => ({ cell, life: lives.get(cell.symbol) ?? { first: 0, last: 0 } }))
    .sort((a, b) => a.life.first - b.life.first);
  for (const { cell, life } of scratch) {
    const free = busyUntil.findIndex(last => last < life.first);
    const place = free < 0 ? busyUntil.length : free;
    busyUntil[place] = life.last;
    placed.push({ ...cell, offset: from + place });
  }
  return placed;
}

/** Bytes of RAM one unit needs, those it shares with other modes included. */
export function ramOf({ own }: RamLayout, routine: UnitRoutine): number {
  const shared = routine.cells.filter(({ kind }) => kind !== 'state' && kind !== 'scratch').length;
  return shared + new Set((own.get(routine) ?? []).map(({ offset }) => offset)).size;
}
