import type { Mode, Scheme } from '../../language/model.js';
import { findCarryOvers, type LiveCell } from './carry-over.js';
import { cellsOf, timeCell } from './cells.js';
import { findDeadZones } from './dead-zone.js';
import { findDiagonalSlips } from './diagonal-slip.js';
import { findKnockOns, type KnockOnMemory } from './knock-on.js';
import { findNeverFires, type Liveness } from './never-fires.js';
import { findPairConflicts, type PairMemory } from './pairs.js';
import { findRunaways } from './runaway.js';
import type { Sighting } from './sighting.js';

/** Everything the conflict rules see, cell by cell: mode × seats row × consoles × TV standard. */
export function findConflicts(scheme: Scheme): readonly Sighting[] {
  const cells = new Map(scheme.modes.map(mode => [mode, liveCells(scheme, mode)] as const));
  const memory: PairMemory = new Map();
  const knockOns: KnockOnMemory = new Map();
  return [...cells.values()]
    .flat()
    .flatMap(from => [
      ...from.dead,
      ...findPairConflicts(from.timed, from.live, memory),
      ...findKnockOns(from.timed, from.live, knockOns),
      ...findRunaways(from.timed, from.live),
      ...findCarryOvers(from, mode => enteredFrom(from, cells.get(mode) ?? [])),
      ...findDiagonalSlips(from.timed, from.live),
      ...findDeadZones(from.timed, from.live),
    ]);
}

type SortedCell = LiveCell & Liveness;

function liveCells(scheme: Scheme, mode: Mode): readonly SortedCell[] {
  return cellsOf(scheme, mode).flatMap(cell =>
    scheme.standards.map(standard => {
      const timed = timeCell(cell, standard);
      return { timed, ...findNeverFires(timed) };
    }),
  );
}

/** The cells of another mode in which one goes on: the same seats row, a console in common, the same standard. */
function enteredFrom({ timed }: LiveCell, cells: readonly LiveCell[]): readonly LiveCell[] {
  const { cell, standard } = timed;
  return cells.filter(
    entered =>
      entered.timed.cell.seats === cell.seats &&
      entered.timed.standard === standard &&
      entered.timed.cell.profiles.some(profile => cell.profiles.includes(profile)),
  );
}
