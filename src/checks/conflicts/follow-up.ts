import type { Levels } from './inputs.js';
import { createMachine, FIRES_X, FIRES_Y, type Machine } from './machine.js';
import { usefulContacts } from './pair.js';
import { type Program, programKey } from './program.js';
import {
  createSeen,
  edgesFrom,
  type Node,
  nodeFrom,
  pathTo,
  REST,
  standsOf,
  stateNumber,
  stepBits,
} from './search.js';

/** Two bindings and numbered values of settings: x’s `Then` leads from each number to another. */
export interface FollowUpProblem {
  readonly program: Program;
  /** By value number: the number after x’s `Then`. */
  readonly next: readonly number[];
  /** By value number: whether x’s, and y’s, `When` holds. */
  readonly xHolds: readonly boolean[];
  readonly yHolds: readonly boolean[];
  /** By hold-back of the program, then by value number: whether its `When` holds. */
  readonly holderHolds: readonly (readonly boolean[])[];
}

/** A shortest sequence at whose last read y follows. */
export interface FollowUp {
  readonly path: readonly Levels[];
  /** The number of the values before each read. */
  readonly values: readonly number[];
}

/** A text that is the same for problems that have the same answer. */
export function followUpKey({ program, next, xHolds, yHolds, holderHolds }: FollowUpProblem): string {
  const bits = (holds: readonly boolean[]) => holds.map(Number).join('');
  return [programKey(program), next, bits(xHolds), bits(yHolds), ...holderHolds.map(bits)].join('!');
}

/** Whether x’s `Then` ever makes y possible. */
export function canEnable({ next, xHolds, yHolds }: FollowUpProblem): boolean {
  return next.some((after, value) => xHolds[value] && !yHolds[value] && yHolds[after]);
}

/** A place in the search: the gestures, the settings, and whether x has made y possible with the line still engaged. */
interface Place {
  readonly parent: Place | null;
  readonly node: Node;
  readonly value: number;
  readonly isPrimed: boolean;
}

interface FollowUpSearch {
  readonly problem: FollowUpProblem;
  readonly isLoose: boolean;
  readonly machine: Machine;
  /** By value number: the hold-backs that may begin, a bit each. */
  readonly mayBegin: readonly number[];
  /** By index of levels: whether a shared line is engaged. */
  readonly isShared: readonly boolean[];
  /** By value number and whether y has been made possible: the states seen. */
  readonly seen: Map<number, (state: number) => boolean>;
}

/** A shortest sequence at which y follows; null where there is none. */
export function findFollowUp(problem: FollowUpProblem): FollowUp | null {
  if (!canEnable(problem)) return null;
  // Gestures go on whatever the settings are. If y never follows x with no regard to them, it never does.
  const hasChangingHolder = problem.holderHolds.some(holds => holds.includes(false));
  const loose = { ...problem, next: [0], xHolds: [true], yHolds: [true] };
  if (!hasChangingHolder && followUpIn(loose, true) === null) return null;
  return followUpIn(problem, false);
}

/**
 * Breadth first from rest and any values.
 *
 * @param isLoose true to leave the settings out: x makes y possible whenever it fires
 */
function followUpIn(problem: FollowUpProblem, isLoose: boolean): FollowUp | null {
  const { program, next: values } = problem;
  const machine = createMachine(program, usefulContacts(program));
  const shared = program.x.mask & (program.y?.mask ?? 0);
  const search: FollowUpSearch = {
    problem,
    isLoose,
    machine,
    mayBegin: values.map((_, value) => bitsIn(problem, machine, value)),
    isShared: machine.inputs.levels.map(levels => (levels & shared) !== 0),
    seen: new Map(),
  };
  let layer: readonly Place[] = values.map((_, value) => ({
    parent: null,
    node: REST,
    value,
    isPrimed: false,
  }));
  while (layer.length > 0) {
    const reached: Place[] = [];
    for (const place of layer) {
      const end = expandPlace(search, place, reached);
      if (end !== null) return { path: pathTo(machine, end.node), values: valuesOnTheWay(end) };
    }
    layer = reached;
  }
  return null;
}

function bitsIn({ holderHolds }: FollowUpProblem, { holdBacks }: Machine, value: number): number {
  return holdBacks.reduce(
    (bits, index, bit) => (holderHolds[index]?.[value] === true ? bits | (1 << bit) : bits),
    0,
  );
}

/** Adds the new places that follow to `reached`; returns one at which y follows, if there is. */
function expandPlace(search: FollowUpSearch, place: Place, reached: Place[]): Place | null {
  const { problem, isLoose, machine, mayBegin, isShared, seen } = search;
  const { next, xHolds, yHolds } = problem;
  const { node: from, value } = place;
  for (const edge of edgesFrom(machine, from)) {
    const step = stepBits(machine, from, edge, mayBegin[value] ?? 0);
    const firesX = (step & FIRES_X) !== 0 && xHolds[value] === true;
    const after = firesX ? (next[value] ?? value) : value;
    const isEnabled = firesX && (isLoose || (yHolds[value] !== true && yHolds[after] === true));
    const isPrimed = (place.isPrimed || isEnabled) && isShared[edge.to] === true;
    const reach = (): Place => {
      const node = nodeFrom(machine, from, edge, standsOf(step), 0);
      return { parent: place, node, value: after, isPrimed };
    };
    if (place.isPrimed && (step & FIRES_Y) !== 0 && yHolds[value] === true) return reach();
    const key = 2 * after + (isPrimed ? 1 : 0);
    const hasSeen = seen.get(key) ?? createSeen(machine);
    seen.set(key, hasSeen);
    if (!hasSeen(stateNumber(machine, edge.to, standsOf(step), 0))) reached.push(reach());
  }
  return null;
}

/** The value number before each read of the way to a place. */
function valuesOnTheWay(end: Place): readonly number[] {
  const numbers: number[] = [];
  for (let place = end.parent; place !== null; place = place.parent) numbers.push(place.value);
  return numbers.reverse();
}
