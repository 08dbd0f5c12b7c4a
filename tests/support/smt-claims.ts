import { createMachine, FIRES_X, FIRES_Y, type Machine } from '../../src/checks/conflicts/machine.js';
import type { PairResult } from '../../src/checks/conflicts/pair.js';
import { search } from '../../src/checks/conflicts/search.js';
import type { BrutePair } from './brute-force.js';
import { programOf } from './random-pairs.js';
import { and, type Claim, not, or, upTo } from './smt.js';

/** One way round: doing `wanted` (`x` or `y`) with none but its own controls. */
interface Way {
  readonly wanted: 'x' | 'y';
  readonly unwanted: 'x' | 'y';
  readonly machine: Machine;
  readonly allowed: readonly number[];
  /** Shortest that fires it at all; whether both can fire at the last read of such a one. */
  readonly first: number;
  readonly isBoth: boolean;
  /** As the design page: without, and with, the unwanted one before; a `dx` above a finite `d0` is ∞. */
  readonly d0: number;
  readonly dx: number;
}

const bitOf = (name: 'x' | 'y') => (name === 'x' ? FIRES_X : FIRES_Y);

/**
 * All that rules 1 to 6 rest on for a pair, as claims for a solver: what is shortest is possible at its length and
 * impossible at any smaller one; what is said never to happen does not in `bound` reads. Throws where the result
 * does not follow from these lengths by the order of the rules.
 */
export function claimsOf(pair: BrutePair, result: PairResult | null, bound: number): readonly Claim[] {
  const ways = [wayTo(pair, 'y'), wayTo(pair, 'x')];
  const rule = ruleBy(ways, pair);
  const known = result === null || !RULES.includes(result.rule) ? null : `${result.rule} ${result.isSwapped}`;
  if (rule !== known) throw new Error(`${known} is not ${rule}: ${JSON.stringify(pair)}`);
  const claims = ways.flatMap(way => [...firstClaims(pair, way), ...wayClaims(pair, way, bound)]);
  if (rule !== null) return claims;
  return [
    ...claims,
    ...ways.flatMap((way, index) => aftermathClaims(pair, way, result, index === 1)),
    ...meetingClaims(pair, result, bound),
  ];
}

const RULES: readonly string[] = ['same-moment', 'on-the-way', 'in-passing', 'order-matters'];

/** The first of rules 1 to 4 by the lengths. */
function ruleBy(ways: readonly Way[], pair: BrutePair): string | null {
  if (ways.some(({ isBoth }) => isBoth)) return 'same-moment false';
  const tests: readonly (readonly [string, (way: Way) => boolean])[] = [
    ['on-the-way', ({ d0, dx }) => d0 === Infinity && dx < Infinity],
    ['in-passing', ({ d0, dx }) => d0 < Infinity && dx < d0],
    ['order-matters', ({ d0, dx, unwanted }) => d0 < Infinity && dx === d0 && pair[unwanted].kind !== 'held'],
  ];
  for (const [rule, test] of tests) {
    const index = ways.findIndex(test);
    if (index >= 0) return `${rule} ${index === 1}`;
  }
  return null;
}

function wayTo(pair: BrutePair, wanted: 'x' | 'y'): Way {
  const unwanted = wanted === 'x' ? 'y' : 'x';
  const program = programOf(pair);
  const allowed = pair[wanted].parts;
  const machine = createMachine(
    program,
    allowed.reduce((bits, part) => bits | (1 << part), 0),
  );
  const found = { first: Infinity, isBoth: false, d0: Infinity, dx: Infinity };
  search(machine, {
    watch: bitOf(unwanted),
    wants: fires => (fires & bitOf(wanted)) !== 0,
    onFire: ({ fires, length }, before) => {
      found.first = Math.min(found.first, length);
      if (length === found.first && fires === 3) found.isBoth = true;
      if (before === 1) found.dx = Math.min(found.dx, length);
      else if (fires !== 3) found.d0 = Math.min(found.d0, length);
    },
    isDone: () => found.d0 < Infinity,
  });
  return { wanted, unwanted, machine, allowed, ...found };
}

const fired = (name: string, read: number) => `${name}${read}`;
const none = (name: string, reads: number) => upTo(reads).map(read => not(fired(name, read)));

function claim(
  pair: BrutePair,
  says: string,
  reads: number,
  allowed: readonly number[],
  term: string,
  holds: boolean,
): readonly Claim[] {
  return reads < 1 ? [] : [{ says: `${says} (${reads} reads)`, pair, reads, allowed, term, holds }];
}

function firstClaims(pair: BrutePair, { wanted, unwanted, allowed, first, isBoth }: Way): readonly Claim[] {
  const last = fired(wanted, first - 1);
  const sooner = or(upTo(first - 1).map(read => fired(wanted, read)));
  return [
    ...claim(pair, `${wanted} fires`, first, allowed, last, true),
    ...claim(pair, `${wanted} fires sooner`, first - 1, allowed, sooner, false),
    ...claim(
      pair,
      `${unwanted} fires with it`,
      first,
      allowed,
      and([last, fired(unwanted, first - 1)]),
      isBoth,
    ),
  ];
}

function wayClaims(
  pair: BrutePair,
  { wanted, unwanted, allowed, d0, dx }: Way,
  bound: number,
): readonly Claim[] {
  const without = (read: number) => and([fired(wanted, read), ...none(unwanted, read + 1)]);
  const spoilt = (read: number) =>
    and([fired(wanted, read), or(upTo(read).map(before => fired(unwanted, before)))]);
  const shortest = (says: string, length: number, cap: number, term: (read: number) => string) => [
    ...(length === Infinity ? [] : claim(pair, says, length, allowed, term(length - 1), true)),
    ...claim(
      pair,
      `${says} sooner`,
      Math.min(length - 1, cap),
      allowed,
      or(upTo(Math.min(length - 1, cap)).map(term)),
      false,
    ),
  ];
  return [
    ...shortest(`${wanted} without ${unwanted}`, d0, bound, without),
    ...shortest(`${wanted} after ${unwanted}`, dx, Math.min(d0, bound), spoilt),
  ];
}

/** Whether letting go always fires the unwanted one: a way in which it does not is possible, or is not. */
function aftermathClaims(
  pair: BrutePair,
  way: Way,
  result: PairResult | null,
  isSwapped: boolean,
): readonly Claim[] {
  const { wanted, unwanted, allowed, d0 } = way;
  if ((wanted === 'x' ? pair.xGoes : pair.yGoes) || d0 === Infinity) return [];
  const isFirst = result?.rule === 'aftermath' && result.isSwapped === isSwapped;
  if (result?.rule === 'aftermath' && !isFirst && isSwapped) return [];
  const quiet = and([
    fired(wanted, d0 - 1),
    ...none(unwanted, d0),
    ...pair.contacts.map((_, contact) => not(`c${contact}_${d0}`)),
    not(fired(unwanted, d0)),
  ]);
  return claim(pair, `letting go after ${wanted} without ${unwanted}`, d0 + 1, allowed, quiet, !isFirst);
}

function meetingClaims(pair: BrutePair, result: PairResult | null, bound: number): readonly Claim[] {
  if (result?.rule === 'aftermath') return [];
  const everywhere = pair.contacts.map((_, contact) => contact);
  const length = result === null ? bound + 1 : result.path.length;
  const meet = (read: number) => and([fired('x', read), fired('y', read)]);
  return [
    ...(result === null ? [] : claim(pair, 'both fire', length, everywhere, meet(length - 1), true)),
    ...claim(pair, 'both fire sooner', length - 1, everywhere, or(upTo(length - 1).map(meet)), false),
  ];
}
