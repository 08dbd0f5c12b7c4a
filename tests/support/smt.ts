import type { BrutePair } from './brute-force.js';
import type { NaiveBinding, NaiveHoldBack } from './naive.js';

/** What must, or must not, be possible in a number of reads: one question to a solver. */
export interface Claim {
  readonly says: string;
  readonly pair: BrutePair;
  /** Reads that are unrolled, at least 1. */
  readonly reads: number;
  /** The contacts that may be engaged. */
  readonly allowed: readonly number[];
  /** An SMT-LIB term over `x0`, `y0`, `c0_0`…: fires at a read, contact engaged at a read. */
  readonly term: string;
  readonly holds: boolean;
}

/** One script for all claims; each is answered by a line `sat` or `unsat`. */
export function scriptFor(claims: readonly Claim[]): string {
  return ['(set-logic QF_UF)', ...claims.map(claimText), '(exit)'].join('\n');
}

export const and = (terms: readonly string[]): string =>
  terms.length === 0 ? 'true' : `(and ${terms.join(' ')} true)`;
export const or = (terms: readonly string[]): string =>
  terms.length === 0 ? 'false' : `(or ${terms.join(' ')} false)`;
export const not = (term: string): string => `(not ${term})`;
export const upTo = (count: number): readonly number[] =>
  Array.from({ length: Math.max(0, count) }, (_, index) => index);

function claimText({ pair, reads, allowed, term }: Claim): string {
  const { contacts } = pair;
  const lines = ['(push 1)'];
  for (const read of upTo(reads)) {
    contacts.forEach((_, contact) => {
      lines.push(`(declare-const c${contact}_${read} Bool)`);
      if (!allowed.includes(contact)) lines.push(`(assert ${not(`c${contact}_${read}`)})`);
    });
    lines.push(...feasible(pair, read).map(each => `(assert ${each})`));
    lines.push(...bindingAt('x', pair.x, pair.holdX, read), ...bindingAt('y', pair.y, pair.holdY, read));
  }
  return [...lines, `(assert ${term})`, '(check-sat)', '(pop 1)'].join('\n');
}

/** At most one contact becomes engaged; opposites are never engaged together. */
function feasible({ contacts }: BrutePair, read: number): readonly string[] {
  const begins = (contact: number) =>
    and([`c${contact}_${read}`, ...(read === 0 ? [] : [not(`c${contact}_${read - 1}`)])]);
  const pairs = contacts.flatMap((_, a) => contacts.flatMap((__, b) => (a < b ? [[a, b] as const] : [])));
  return [
    ...pairs.map(([a, b]) => not(and([begins(a), begins(b)]))),
    ...pairs
      .filter(([a, b]) => contacts[a]?.opposite === b)
      .map(([a, b]) => not(and([`c${a}_${read}`, `c${b}_${read}`]))),
  ];
}

const isEngaged = (parts: readonly number[], read: number) => and(parts.map(part => `c${part}_${read}`));

/** The table of gestures, unrolled: `e` the control counts as engaged, `p` pressed, `s` second press, `d` due. */
function bindingAt(
  name: string,
  binding: NaiveBinding,
  holdBacks: readonly NaiveHoldBack[],
  read: number,
): readonly string[] {
  const held = or(holdBacks.flatMap(hold => upTo(read + 1).map(began => lasting(hold, began, read))));
  const define = (letter: string, term: string) => `(define-fun ${letter}${name}${read} () Bool ${term})`;
  return [
    define('h', held),
    define('e', and([isEngaged(binding.parts, read), not(`h${name}${read}`)])),
    define('p', and([at('e', name, read), not(at('e', name, read - 1))])),
    define('s', secondPress(name, binding.n, read)),
    define(
      'd',
      and([at('e', name, read), ...upTo(binding.n - 1).map(back => not(at('d', name, read - 1 - back)))]),
    ),
    define('', and([gestureTerm(name, binding, read), not(`h${name}${read}`)])),
  ];
}

const at = (letter: string, name: string, read: number): string =>
  read < 0 ? 'false' : `${letter}${name}${read}`;

const lasting = ({ holder, until }: NaiveHoldBack, began: number, read: number): string =>
  and([
    isEngaged(holder.parts, began),
    ...upTo(read - began).map(step => or(until.map(line => `c${line}_${began + step}`))),
  ]);

function secondPress(name: string, n: number, read: number): string {
  const firsts = upTo(read).filter(first => read - first <= n);
  const after = (first: number) =>
    and([
      at('p', name, first),
      not(at('s', name, first)),
      ...upTo(read - first - 1).map(step => not(at('p', name, first + 1 + step))),
    ]);
  return and([at('p', name, read), or(firsts.map(after))]);
}

function gestureTerm(name: string, { kind, n }: NaiveBinding, read: number): string {
  const e = (back: number) => at('e', name, read - back);
  switch (kind) {
    case 'press':
      return at('p', name, read);
    case 'release':
      return and([e(1), not(e(0))]);
    case 'held':
      return e(0);
    case 'hold':
      return and([...upTo(n).map(e), not(e(n))]);
    case 'tap':
      return and([not(e(0)), e(1), or(upTo(n).map(back => not(e(back + 1))))]);
    case 'double tap':
      return at('s', name, read);
    case 'repeat':
      return at('d', name, read);
    default:
      throw new Error(kind);
  }
}
