import type { Binding } from '../../gestures/bindings.js';
import { type Built, buildProgram, type Setup, setUp } from './build.js';
import type { Cell, TimedCell } from './cells.js';
import { judgePair, PAIR_RULES, type PairResult } from './pair.js';
import { programKey } from './program.js';
import { namedPath, replay } from './replay.js';
import { areUnrelated, type Sighting, sightingIn } from './sighting.js';

/** Results by program: most pairs of a scheme are alike. */
export type PairMemory = Map<string, PairResult | null>;

/** Rules 1 to 6 for every two bindings of a mode that share a line. */
export function findPairConflicts(
  timed: TimedCell,
  live: readonly Binding[],
  memory: PairMemory,
): readonly Sighting[] {
  const isLive = new Set(live);
  return comparablePairs(timed.cell)
    .filter(({ x, y }) => isLive.has(x) && isLive.has(y))
    .flatMap(setup => sightPair(timed, setup, memory) ?? []);
}

type PairSetup = Setup<Binding>;

const COMPARABLE = new WeakMap<Cell, readonly PairSetup[]>();

/** The pairs of a cell that are compared, with the worlds in which both can be live, whatever the standard. */
function comparablePairs(cell: Cell): readonly PairSetup[] {
  const known = COMPARABLE.get(cell);
  if (known !== undefined) return known;
  const pairs = unrelatedPairs(cell)
    .filter(([x, y]) => areComparable(x, y))
    .map(([x, y]) => setUp(cell, x, y));
  COMPARABLE.set(cell, pairs);
  return pairs;
}

const UNRELATED = new WeakMap<Cell, readonly (readonly [Binding, Binding])[]>();

/** Pairs of a cell that share a line and are not meant to go together, live or not. */
export function unrelatedPairs(cell: Cell): readonly (readonly [Binding, Binding])[] {
  const known = UNRELATED.get(cell);
  if (known !== undefined) return known;
  const pairs = pairsOnALine(cell.bindings).filter(([x, y]) => areUnrelated(x, y));
  UNRELATED.set(cell, pairs);
  return pairs;
}

/** Every two bindings that share a line, each pair once, in the order of the bindings. */
export function pairsOnALine(bindings: readonly Binding[]): readonly (readonly [Binding, Binding])[] {
  type Entry = readonly [index: number, binding: Binding];
  const byLine = new Map<string, Entry[]>();
  const pairs: (readonly [Binding, Binding])[] = [];
  for (const entry of bindings.entries()) {
    const [, binding] = entry;
    const partners = new Set<Entry>();
    for (const { id } of binding.parts) {
      const line = byLine.get(id);
      if (line === undefined) {
        byLine.set(id, [entry]);
        continue;
      }
      for (const partner of line) partners.add(partner);
      line.push(entry);
    }
    for (const [, other] of [...partners].sort(([a], [b]) => a - b)) pairs.push([other, binding]);
  }
  return pairs;
}

/** `at` rows are compared with `at` rows only, `flip` rows with `flip` rows. */
function areComparable(x: Binding, y: Binding): boolean {
  return (x.gesture.kind === 'at') === (y.gesture.kind === 'at');
}

/** The first rule that holds, in the worst of the worlds that differ. */
export function sightPair(timed: TimedCell, setup: PairSetup, memory: PairMemory): Sighting | null {
  const { x, y } = setup;
  let worst: { readonly built: Built; readonly result: PairResult } | null = null;
  for (const world of setup.worlds) {
    const built = buildProgram(timed, setup, world);
    if (built === null) continue;
    const result = judge(built, memory);
    if (result !== null && (worst === null || rank(result) < rank(worst.result))) worst = { built, result };
  }
  return worst === null ? null : toSighting(timed, x, y, worst.built, worst.result);
}

const rank = ({ rule }: PairResult): number => PAIR_RULES.indexOf(rule);

function judge({ program }: Built, memory: PairMemory): PairResult | null {
  const key = programKey(program);
  const known = memory.get(key);
  if (known !== undefined) return known;
  const result = judgePair(program);
  memory.set(key, result);
  return result;
}

function toSighting(timed: TimedCell, x: Binding, y: Binding, built: Built, result: PairResult): Sighting {
  return sightingIn(timed, result.rule, result.isSwapped ? [y, x] : [x, y], {
    length: result.path.length,
    witness: () => replay(timed, namedPath(built.contacts, result.path), () => built.world.values),
  });
}
