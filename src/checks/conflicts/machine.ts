import { isPositional, stateCount, stepGesture } from '../../gestures/automaton.js';
import { feasibleInputs, type Inputs, type Levels } from './inputs.js';
import type { Part, PartHoldBack, Program } from './program.js';

/** Bits of what fires at a read. */
export const FIRES_X = 1;
export const FIRES_Y = 2;

/** A program made ready to be searched: every step a look-up. The tables are filled by the gesture engine’s automata. */
export interface Machine {
  readonly inputs: Inputs;
  /** By index of levels: what can be read next and what it does. */
  readonly edges: readonly (readonly Edge[])[];
  readonly firstEdges: readonly Edge[];
  readonly x: PartTable;
  readonly y: PartTable;
  /** Which hold-backs hold x, and y. */
  readonly holdsX: number;
  readonly holdsY: number;
  /** How many ways the hold-backs can stand. */
  readonly holds: number;
  /** The hold-backs that can begin, as indices of the program’s; bit numbers are indices of this list. */
  readonly holdBacks: readonly number[];
}

/** One read: the levels that are read, and what that means before any state is looked at. */
export interface Edge {
  /** Index of levels. */
  readonly to: number;
  /** Whether x’s (y’s) control is engaged, or its position gesture made, before hold-backs. */
  readonly x: 0 | 1;
  readonly y: 0 | 1;
  /** Hold-backs that begin, and those that go on after this read if they lasted until it. */
  readonly begins: number;
  readonly goesOn: number;
  /** True where everything momentary is let go. */
  readonly isLetGo: boolean;
}

interface PartTable {
  readonly states: number;
  /** `stepGesture` by twice the state plus whether it is engaged. */
  readonly steps: Int32Array;
  /** Whether a hold-back also makes the control count as not engaged. */
  readonly isMomentary: boolean;
}

/**
 * @param allowed the contacts that may be engaged or moved. A hold-back by a switch in its position needs nothing of
 *   that; others that need more never begin and drop out.
 */
export function createMachine(program: Program, allowed: number): Machine {
  const standing = standingSwitches(program) & ~allowed;
  const inputs = feasibleInputs(program, allowed, standing);
  const kept = program.holdBacks.flatMap(({ holder }, index) =>
    (holder.mask & ~(allowed | standing)) === 0 ? [index] : [],
  );
  const holdBacks = kept.flatMap(index => program.holdBacks[index] ?? []);
  const edge = (before: Levels | null, to: number) => edgeBetween(program, holdBacks, before, inputs, to);
  return {
    inputs,
    firstEdges: inputs.first.map(to => edge(null, to)),
    edges: inputs.next.map((after, from) => after.map(to => edge(inputs.levels[from] ?? 0, to))),
    x: tableOf(program.x),
    y: tableOf(program.y),
    holdsX: bitsWhere(holdBacks, ({ target }) => target === 'x'),
    holdsY: bitsWhere(holdBacks, ({ target }) => target === 'y'),
    holds: 2 ** kept.length,
    holdBacks: kept,
  };
}

/** The switches that hold something back by where they stand. */
export const standingSwitches = ({ holdBacks }: Program): number =>
  holdBacks.reduce((bits, { holder }) => (holder.kind === 'at' ? bits | holder.mask : bits), 0);

function bitsWhere(holdBacks: readonly PartHoldBack[], test: (holdBack: PartHoldBack) => boolean): number {
  return holdBacks.reduce((bits, holdBack, index) => (test(holdBack) ? bits | (1 << index) : bits), 0);
}

function tableOf(part: Part | null): PartTable {
  if (part === null) return { states: 1, steps: new Int32Array(2), isMomentary: true };
  const states = stateCount(part);
  const steps = new Int32Array(2 * states);
  for (let state = 0; state < states; state++) {
    steps[2 * state] = stepGesture(part, state, false);
    steps[2 * state + 1] = stepGesture(part, state, true);
  }
  return { states, steps, isMomentary: !isPositional(part.kind) };
}

function edgeBetween(
  program: Program,
  holdBacks: readonly PartHoldBack[],
  before: Levels | null,
  { levels }: Inputs,
  to: number,
): Edge {
  const value = levels[to] ?? 0;
  const isMade = (part: Pick<Part, 'kind' | 'mask' | 'wanted'>) => isPartMade(part, before ?? value, value);
  return {
    to,
    x: isMade(program.x) ? 1 : 0,
    y: program.y !== null && isMade(program.y) ? 1 : 0,
    begins: bitsWhere(holdBacks, ({ holder }) => isMade(holder)),
    goesOn: bitsWhere(holdBacks, ({ until }) => (until & value) !== 0),
    isLetGo: program.contacts.every(
      ({ type }, index) => type !== 'momentary' || ((value >> index) & 1) === 0,
    ),
  };
}

/** A momentary control is engaged; for `at P` the switch is in P; for `flip` and `turn` it was moved (to P). */
function isPartMade(
  { kind, mask, wanted }: Pick<Part, 'kind' | 'mask' | 'wanted'>,
  before: Levels,
  value: Levels,
): boolean {
  if (!isPositional(kind)) return (value & mask) === mask;
  const isThere = wanted === null || ((value & mask) !== 0) === (wanted === 1);
  return isThere && (kind === 'at' || ((before ^ value) & mask) !== 0);
}
