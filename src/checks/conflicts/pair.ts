import type { Levels } from './inputs.js';
import { createMachine, FIRES_X, FIRES_Y, type Machine, standingSwitches } from './machine.js';
import type { Program } from './program.js';
import {
  EVERY_BIT,
  edgesFrom,
  type Firing,
  type Node,
  nodeFrom,
  pathTo,
  search,
  standsOf,
  stepBits,
} from './search.js';

/** The rules on two bindings of one mode, in the order in which they are tried. */
export const PAIR_RULES = [
  'same-moment',
  'on-the-way',
  'in-passing',
  'order-matters',
  'aftermath',
  'can-coincide',
] as const;

export type PairRule = (typeof PAIR_RULES)[number];

/** The first rule that holds for a program, with a shortest sequence that shows it. */
export interface PairResult {
  readonly rule: PairRule;
  /** True where the rule holds with y in the part of x. */
  readonly isSwapped: boolean;
  /** What is read, read by read, from rest. */
  readonly path: readonly Levels[];
}

/** The first of the pair rules that holds; null where none does. */
export function judgePair(program: Program): PairResult | null {
  const { x, y } = program;
  if (y === null) return null;
  const aloneX = createMachine(program, x.mask);
  const aloneY = y.mask === x.mask ? aloneX : createMachine(program, y.mask);
  // Where both ways find one, the two are on the same controls and the machines are one.
  const sameMoment = coincidence(aloneX, FIRES_X) ?? coincidence(aloneY, FIRES_Y);
  if (sameMoment !== null) return { rule: 'same-moment', isSwapped: false, path: sameMoment };
  const straight = approach(aloneY, {
    wanted: FIRES_Y,
    unwanted: FIRES_X,
    isHeld: x.kind === 'held',
    leaves: y.goesTo,
  });
  const swapped = approach(aloneX, {
    wanted: FIRES_X,
    unwanted: FIRES_Y,
    isHeld: y.kind === 'held',
    leaves: x.goesTo,
  });
  for (const rule of ['on-the-way', 'in-passing', 'order-matters', 'aftermath'] as const) {
    const path = straight[rule];
    if (path !== null) return { rule, isSwapped: false, path };
    const swappedPath = swapped[rule];
    if (swappedPath !== null) return { rule, isSwapped: true, path: swappedPath };
  }
  const path = anyCoincidence(program);
  return path === null ? null : { rule: 'can-coincide', isSwapped: false, path };
}

/** True where a binding (x of the program) can fire at all. */
export function canFire(program: Program): boolean {
  // A switch that holds it back by where it stands may be moved away first.
  const machine = createMachine(program, program.x.mask | standingSwitches(program));
  let fired = false;
  search(machine, {
    watch: 0,
    wants: fires => (fires & FIRES_X) !== 0,
    onFire: () => {
      fired = true;
    },
    isDone: () => fired,
  });
  return fired;
}

type Path = readonly Levels[];

/** Rule 1: a shortest sequence that fires one of the two, if the other fires at the last read of some such one. */
function coincidence(machine: Machine, wanted: number): Path | null {
  let both = null as Firing | null;
  let isFired = false;
  search(machine, {
    watch: 0,
    wants: fires => (fires & wanted) !== 0,
    onFire: firing => {
      isFired = true;
      if (firing.fires === (FIRES_X | FIRES_Y)) both ??= firing;
    },
    isDone: () => isFired,
  });
  return pathOf(machine, both);
}

const pathOf = (machine: Machine, firing: Firing | null): Path | null =>
  firing === null ? null : pathTo(machine, firing.node);

/**
 * Rules 2 to 5 one way round: doing the wanted binding while no control but its own is engaged. Of what comes out only
 * the first counts.
 */
interface Approach {
  /** `FIRES_X` or `FIRES_Y`. */
  readonly wanted: number;
  readonly unwanted: number;
  /** Whether the unwanted one is `held`. */
  readonly isHeld: boolean;
  /** Whether the wanted one has a `go to`. */
  readonly leaves: boolean;
}

type ApproachResult = Readonly<
  Record<'on-the-way' | 'in-passing' | 'order-matters' | 'aftermath', Path | null>
>;

function approach(machine: Machine, way: Approach): ApproachResult {
  const { with: spoilt, without } = shortestWays(machine, way);
  const [clean] = without;
  const spoiltPath = pathOf(machine, spoilt);
  const isQuicker = spoilt !== null && clean !== undefined && spoilt.length < clean.length;
  return {
    'on-the-way': clean === undefined ? spoiltPath : null,
    'in-passing': isQuicker ? spoiltPath : null,
    // Where neither of these holds, it is as quick.
    'order-matters': way.isHeld ? null : spoiltPath,
    aftermath: way.leaves ? null : aftermath(machine, without, way.unwanted),
  };
}

/**
 * Shortest ways to the wanted one: one in which the unwanted has fired before (`dx`; null where there is none,
 * or none as short as those without), and all in which it has not fired (`d0`).
 */
function shortestWays(
  machine: Machine,
  { wanted, unwanted }: Approach,
): { readonly with: Firing | null; readonly without: readonly Firing[] } {
  let spoilt = null as Firing | null;
  const without: Firing[] = [];
  search(machine, {
    watch: unwanted,
    wants: fires => (fires & wanted) !== 0,
    onFire: (firing, before) => {
      if (before === 1) spoilt ??= firing;
      else if ((firing.fires & unwanted) === 0) without.push(firing);
    },
    isDone: () => without.length > 0,
    isWorthIt: flag => spoilt === null || flag === 0,
  });
  return { with: spoilt, without };
}

/** Rule 5: after every one of these, letting go of everything fires the unwanted one. */
function aftermath(machine: Machine, ends: readonly Firing[], unwanted: number): Path | null {
  const afters = ends.flatMap(({ node }) => letGo(machine, node, unwanted) ?? []);
  const [first] = afters;
  return first === undefined || afters.length < ends.length ? null : pathTo(machine, first);
}

/** The read after a node at which everything is let go, if it fires the unwanted one. */
function letGo(machine: Machine, node: Node, unwanted: number): Node | null {
  const edge = edgesFrom(machine, node).find(({ isLetGo }) => isLetGo);
  if (edge === undefined) return null;
  const step = stepBits(machine, node, edge, EVERY_BIT);
  return (step & unwanted) === 0 ? null : nodeFrom(machine, node, edge, standsOf(step), 0);
}

/** Rule 6: a shortest sequence of any feasible inputs at whose last read both fire. */
function anyCoincidence(program: Program): Path | null {
  const machine = createMachine(program, usefulContacts(program));
  let both = null as Firing | null;
  search(machine, {
    watch: 0,
    wants: fires => fires === (FIRES_X | FIRES_Y),
    onFire: firing => {
      both ??= firing;
    },
    isDone: () => both !== null,
  });
  return pathOf(machine, both);
}

/**
 * The contacts that can matter to both bindings: their own, and those of third bindings that hold them back where
 * that can help. It can help only a gesture that remembers earlier engagements (`double tap`, `repeat`): when a
 * hold-back ends, the control as read is not engaged, so for every other gesture the sequence without it has the
 * same engagement at the end. A switch that holds them back by where it stands can be moved away.
 */
export function usefulContacts({ x, y, holdBacks }: Program): number {
  const remembers = (target: 'x' | 'y') => {
    const kind = target === 'x' ? x.kind : y?.kind;
    return kind === 'double tap' || kind === 'repeat';
  };
  return holdBacks.reduce(
    (bits, { target, holder }) => (holder.kind === 'at' || remembers(target) ? bits | holder.mask : bits),
    x.mask | (y?.mask ?? 0),
  );
}
