import type { Levels } from './inputs.js';
import { type Edge, FIRES_X, FIRES_Y, type Machine } from './machine.js';

/** A node of the search: where two automata and their hold-backs stand after a read. */
export interface Node {
  /** Null before the first read. */
  readonly parent: Node | null;
  /** Index of levels; −1 before the first read. */
  readonly at: number;
  readonly x: number;
  readonly y: number;
  readonly holding: number;
  /** 1 once what the search watches for has fired at an earlier read or at this one. */
  readonly flag: 0 | 1;
}

/** Something fired at a read: `node` is where that leads. `length` counts the reads, this one included. */
export interface Firing {
  readonly node: Node;
  readonly fires: number;
  readonly length: number;
}

export interface SearchOptions {
  /** Firing this sets the flag (`FIRES_X` or `FIRES_Y`); 0 for none. */
  readonly watch: number;
  /** Whether to be told of a read at which this fires; `before` is the flag before it. */
  readonly wants: (fires: number, before: 0 | 1) => boolean;
  /** Told of every firing that is wanted, in order of length. */
  readonly onFire: (firing: Firing, before: 0 | 1) => void;
  /** Asked after each length: true ends the search. */
  readonly isDone: () => boolean;
  /** Asked of each new node’s flag: false leaves it out. */
  readonly isWorthIt?: (flag: 0 | 1) => boolean;
}

/** Before the first read. */
export const REST: Node = { parent: null, at: -1, x: 0, y: 0, holding: 0, flag: 0 };
/** Up to this many states a flat table of those seen is cheaper than a set. */
const FLAT_STATES = 1 << 18;

/**
 * Goes through everything that can happen, shortest first: exhaustive, each state once. A state that comes up
 * again at a greater length adds nothing, for all that follows from it was already found at a smaller one.
 */
export function search(machine: Machine, options: SearchOptions): void {
  const hasSeen = createSeen(machine);
  let layer: Node[] = [REST];
  for (let length = 1; layer.length > 0; length++) {
    const next: Node[] = [];
    for (const node of layer) expand(machine, node, length, options, hasSeen, next);
    if (options.isDone()) return;
    layer = next;
  }
}

/** All reads that can follow a node; nodes are only made for what is new or wanted. */
function expand(
  machine: Machine,
  node: Node,
  length: number,
  { watch, wants, onFire, isWorthIt }: SearchOptions,
  hasSeen: (state: number) => boolean,
  next: Node[],
): void {
  for (const edge of edgesFrom(machine, node)) {
    const step = stepBits(machine, node, edge, EVERY_BIT);
    const fires = step & 3;
    const flag = node.flag === 1 || (fires & watch) !== 0 ? 1 : 0;
    const isWanted = fires !== 0 && wants(fires, node.flag);
    const isNew =
      !hasSeen(stateNumber(machine, edge.to, standsOf(step), flag)) && (isWorthIt?.(flag) ?? true);
    if (!isWanted && !isNew) continue;
    const reached = nodeFrom(machine, node, edge, standsOf(step), flag);
    if (isWanted) onFire({ node: reached, fires, length }, node.flag);
    if (isNew) next.push(reached);
  }
}

/** What can be read after a node. */
export function edgesFrom(machine: Machine, { at }: Node): readonly Edge[] {
  return (at < 0 ? machine.firstEdges : machine.edges[at]) ?? [];
}

/** For `stepBits`: the `When` of every hold-back holds. */
export const EVERY_BIT = -1;

/**
 * One read from a node: what fires, and four times the number of where both automata and the hold-backs then
 * stand (x’s state, y’s state, hold-backs, from high to low).
 *
 * @param mayBegin the hold-backs whose `When` holds, a bit each
 */
export function stepBits(machine: Machine, node: Node, edge: Edge, mayBegin: number): number {
  const lasting = node.holding | (edge.begins & mayBegin);
  const isXHeld = (lasting & machine.holdsX) !== 0;
  const isYHeld = (lasting & machine.holdsY) !== 0;
  const x = machine.x.steps[2 * node.x + (isXHeld && machine.x.isMomentary ? 0 : edge.x)] ?? 0;
  const y = machine.y.steps[2 * node.y + (isYHeld && machine.y.isMomentary ? 0 : edge.y)] ?? 0;
  const fires = (isXHeld ? 0 : (x & 1) * FIRES_X) | (isYHeld ? 0 : (y & 1) * FIRES_Y);
  const stands = ((x >> 1) * machine.y.states + (y >> 1)) * machine.holds + (lasting & edge.goesOn);
  return 4 * stands + fires;
}

/** The part of a step’s bits that is not what fires. */
export const standsOf = (step: number): number => Math.floor(step / 4);

/** The node that a step leads to. */
export function nodeFrom(machine: Machine, parent: Node, edge: Edge, stands: number, flag: 0 | 1): Node {
  const both = Math.floor(stands / machine.holds);
  return {
    parent,
    at: edge.to,
    x: Math.floor(both / machine.y.states),
    y: both % machine.y.states,
    holding: stands % machine.holds,
    flag,
  };
}

/** A number for each state there can be, from 0. */
export function stateNumber(machine: Machine, at: number, stands: number, flag: number): number {
  return (at * machine.x.states * machine.y.states * machine.holds + stands) * 2 + flag;
}

/** What was read, read by read, to get to a node. */
export function pathTo(machine: Machine, end: Node): readonly Levels[] {
  const path: Levels[] = [];
  for (let node: Node | null = end; node !== null && node.at >= 0; node = node.parent)
    path.push(machine.inputs.levels[node.at] ?? 0);
  return path.reverse();
}

/** A test for state numbers that remembers: false the first time, then true. */
export function createSeen({ x, y, holds, inputs }: Machine): (state: number) => boolean {
  const states = inputs.levels.length * x.states * y.states * holds * 2;
  if (states <= FLAT_STATES) {
    const flat = new Uint8Array(states);
    return state => {
      if (flat[state] === 1) return true;
      flat[state] = 1;
      return false;
    };
  }
  const seen = new Set<number>();
  return state => seen.size === seen.add(state).size;
}
