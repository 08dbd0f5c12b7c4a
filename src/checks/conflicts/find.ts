import type { Mode, Scheme } from '../../language/model.js';
import { createMemory } from '../../memory.js';
import { findCarryOvers, type LiveCell } from './carry-over.js';
import { cellsOf, timeCell } from './cells.js';
import { findDeadZones } from './dead-zone.js';
import { findDiagonalSlips } from './diagonal-slip.js';
import { findDoubleSteps } from './double-steps.js';
import { findKnockOns, type KnockOnMemory } from './knock-on.js';
import { findNeverFires, type Liveness } from './never-fires.js';
import { findPairConflicts, type PairMemory } from './pairs.js';
import { findRunaways } from './runaway.js';
import type { Sighting } from './sighting.js';

/** What the conflict rules have found out before: many pairs of a scheme are alike. */
export interface ConflictMemory {
  readonly pairs: PairMemory;
  readonly knockOns: KnockOnMemory;
}

/** Everything the conflict rules see in a mode, cell by cell: seats row × consoles × TV standard. */
export function findConflicts(
  scheme: Scheme,
  mode: Mode,
  { pairs, knockOns }: ConflictMemory,
): readonly Sighting[] {
  return liveCells(scheme, mode).flatMap(from => [
    ...from.dead,
    ...findPairConflicts(from.timed, from.live, pairs),
    ...findDoubleSteps(from.timed, from.live, pairs),
    ...findKnockOns(from.timed, from.live, knockOns),
    ...findRunaways(from.timed, from.live),
    ...findCarryOvers(from, target => enteredFrom(from, liveCells(scheme, target))),
    ...findDiagonalSlips(from.timed, from.live),
    ...findDeadZones(from.timed, from.live),
  ]);
}

/** All that the findings in a mode depend on, the rows of the modes that it leads to included. */
export function groundsOf(scheme: Scheme, mode: Mode): readonly unknown[] {
  const effects = mode.rows.flatMap(row => row.effects);
  const targets = new Set(effects.flatMap(effect => (effect.kind === 'go to' ? effect.mode : [])));
  return [...ownGrounds(scheme, mode), ...[...targets].flatMap(target => [target, target.rows])];
}

const ownGrounds = (scheme: Scheme, mode: Mode): readonly unknown[] => [
  mode.rows,
  mode,
  scheme.settings,
  scheme.fallbacks,
  scheme.seats,
  scheme.consoles,
  scheme.standards,
  scheme.game.readEvery.value,
];

type SortedCell = LiveCell & Liveness;

const remembered = createMemory<readonly SortedCell[]>(1);

function liveCells(scheme: Scheme, mode: Mode): readonly SortedCell[] {
  return remembered(ownGrounds(scheme, mode), () =>
    cellsOf(scheme, mode).flatMap(cell =>
      scheme.standards.map(standard => {
        const timed = timeCell(cell, standard);
        return { timed, ...findNeverFires(timed) };
      }),
    ),
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
