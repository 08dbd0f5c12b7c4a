import { fires, type NaiveBinding, type NaiveHoldBack } from './naive.js';

/** Two bindings on a few contacts, as the brute-force check sees them. */
export interface BrutePair {
  readonly x: NaiveBinding;
  readonly y: NaiveBinding;
  readonly contacts: readonly BruteContact[];
  readonly holdX: readonly NaiveHoldBack[];
  readonly holdY: readonly NaiveHoldBack[];
  /** Whether each has a `go to`. */
  readonly xGoes: boolean;
  readonly yGoes: boolean;
}

export interface BruteContact {
  readonly type: 'momentary' | 'two-position' | 'turning';
  readonly opposite: number | null;
  /** Of a two-position switch: the positions it may begin in; both where it is left out. */
  readonly starts?: readonly (0 | 1)[];
  /** Never moved. */
  readonly isFixed?: boolean;
  /** Nothing is looked at after a read in a position it may not begin in. */
  readonly isFrozen?: boolean;
}

export interface BruteResult {
  readonly rule: string;
  /** By actions: `xy` or `yx`. */
  readonly order: 'xy' | 'yx';
  /** Reads of the shortest sequence that shows it. */
  readonly length: number;
}

/** One sequence of inputs and what it fires at each of its reads. */
interface Sequence {
  readonly history: readonly (readonly number[])[];
  readonly x: readonly boolean[];
  readonly y: readonly boolean[];
}

/** The first of rules 1 to 6, by writing out every feasible sequence up to a length. */
export function bruteForce(pair: BrutePair, longest: number): BruteResult | null {
  const { x, y } = pair;
  const onX = allSequences(pair, x.parts, longest);
  const onY = sameParts(x, y) ? onX : allSequences(pair, y.parts, longest);
  const both = [
    ...shortest(onX.filter(sequence => sequence.x.at(-1))),
    ...shortest(onY.filter(sequence => sequence.y.at(-1))),
  ].filter(sequence => sequence.x.at(-1) && sequence.y.at(-1));
  if (both.length > 0) return { rule: 'same-moment', order: 'xy', length: lengthOf(shortest(both)) };
  const ways = [
    approach(pair, 'xy', onY, sequence => [sequence.x, sequence.y], x, pair.yGoes),
    approach(pair, 'yx', onX, sequence => [sequence.y, sequence.x], y, pair.xGoes),
  ];
  for (const rule of ['on-the-way', 'in-passing', 'order-matters', 'aftermath'])
    for (const way of ways) {
      const length = way.get(rule);
      if (length !== undefined) return { rule, order: way === ways[0] ? 'xy' : 'yx', length };
    }
  const everywhere = allSequences(
    pair,
    pair.contacts.map((_, index) => index),
    longest,
  );
  const meeting = everywhere.filter(sequence => sequence.x.at(-1) && sequence.y.at(-1));
  if (meeting.length > 0) return { rule: 'can-coincide', order: 'xy', length: lengthOf(shortest(meeting)) };
  return null;
}

/** Whether x fires in any feasible sequence up to a length, whatever else is engaged. */
export function everFires(pair: BrutePair, longest: number): boolean {
  const everywhere = pair.contacts.map((_, index) => index);
  return allSequences(pair, everywhere, longest).some(({ x }) => x.at(-1) === true);
}

const sameParts = (x: NaiveBinding, y: NaiveBinding) =>
  x.parts.every(part => y.parts.includes(part)) && y.parts.every(part => x.parts.includes(part));

const shortest = (sequences: readonly Sequence[]): readonly Sequence[] =>
  sequences.filter(({ history }) => history.length === lengthOf(sequences));

const lengthOf = (sequences: readonly Sequence[]): number =>
  sequences.reduce((least, { history }) => Math.min(least, history.length), Number.POSITIVE_INFINITY);

/** Rules 2 to 5 one way round; `split` tells the unwanted from the wanted. */
function approach(
  pair: BrutePair,
  order: 'xy' | 'yx',
  sequences: readonly Sequence[],
  split: (sequence: Sequence) => readonly [readonly boolean[], readonly boolean[]],
  unwanted: NaiveBinding,
  wantedGoes: boolean,
): ReadonlyMap<string, number> {
  const ending = sequences.filter(sequence => split(sequence)[1].at(-1));
  const without = ending.filter(sequence => !split(sequence)[0].includes(true));
  const spoilt = ending.filter(sequence => split(sequence)[0].slice(0, -1).includes(true));
  const d0 = lengthOf(without);
  const dx = lengthOf(spoilt);
  const found = new Map<string, number>();
  if (d0 === Number.POSITIVE_INFINITY && dx < d0) found.set('on-the-way', dx);
  if (d0 < Number.POSITIVE_INFINITY && dx < d0) found.set('in-passing', dx);
  if (dx === d0 && dx < Number.POSITIVE_INFINITY && unwanted.kind !== 'held') found.set('order-matters', dx);
  const ends = shortest(without);
  const letGoFires = (sequence: Sequence) => {
    const after = letGo(pair, sequence.history.at(-1) ?? []);
    if (!canFollow(pair.contacts, sequence.history.at(-1), after)) return false;
    const history = [...sequence.history, after];
    const [binding, holds] = order === 'xy' ? [pair.x, pair.holdX] : [pair.y, pair.holdY];
    return fires(history, history.length - 1, binding, holds);
  };
  if (!wantedGoes && ends.length > 0 && ends.every(letGoFires)) found.set('aftermath', d0 + 1);
  return found;
}

const letGo = ({ contacts }: BrutePair, levels: readonly number[]): readonly number[] =>
  levels.map((level, index) => (contacts[index]?.type === 'momentary' ? 0 : level));

/** Every feasible sequence on some contacts, of every length from 1. */
function allSequences(pair: BrutePair, allowed: readonly number[], longest: number): readonly Sequence[] {
  const found: Sequence[] = [];
  const possible = allLevels(pair.contacts, allowed);
  const first = possible.filter(levels => canBegin(pair.contacts, allowed, levels));
  const grow = (sequence: Sequence): void => {
    if (sequence.history.length >= longest) return;
    for (const levels of sequence.history.length === 0 ? first : possible) {
      if (!canFollow(pair.contacts, sequence.history.at(-1), levels)) continue;
      if (!staysElsewhere(allowed, sequence.history.at(-1), levels)) continue;
      const history = [...sequence.history, levels];
      const read = history.length - 1;
      const grown: Sequence = {
        history,
        x: [...sequence.x, fires(history, read, pair.x, pair.holdX)],
        y: [...sequence.y, fires(history, read, pair.y, pair.holdY)],
      };
      found.push(grown);
      grow(grown);
    }
  };
  grow({ history: [], x: [], y: [] });
  return found;
}

const staysElsewhere = (
  allowed: readonly number[],
  before: readonly number[] | undefined,
  after: readonly number[],
): boolean =>
  before === undefined || after.every((level, index) => allowed.includes(index) || level === before[index]);

/** Every switch that may be moved begins where it may begin. */
function canBegin(
  contacts: readonly BruteContact[],
  allowed: readonly number[],
  levels: readonly number[],
): boolean {
  return contacts.every(
    ({ type, starts }, index) =>
      type !== 'two-position' ||
      starts === undefined ||
      !allowed.includes(index) ||
      starts.some(start => start === levels[index]),
  );
}

/** Every set of levels in which no opposites are engaged together; what is not allowed stays where it begins. */
export function allLevels(
  contacts: readonly BruteContact[],
  allowed: readonly number[],
): readonly (readonly number[])[] {
  let all: readonly (readonly number[])[] = [[]];
  contacts.forEach(({ starts = [0] }, index) => {
    const choices = allowed.includes(index) ? [0, 1] : starts;
    all = all.flatMap(levels => choices.map(level => [...levels, level]));
  });
  return all.filter(levels =>
    contacts.every(
      ({ opposite }, index) => opposite === null || levels[index] === 0 || levels[opposite] === 0,
    ),
  );
}

/** At most one control becomes engaged, one switch is moved or one knob turned; before the first read nothing is. */
export function canFollow(
  contacts: readonly BruteContact[],
  before: readonly number[] | undefined,
  after: readonly number[],
): boolean {
  if (before !== undefined && !keepsSwitches(contacts, before, after)) return false;
  const begun = contacts.filter(({ type }, index) => {
    if (type === 'momentary') return after[index] === 1 && before?.[index] !== 1;
    return before !== undefined && after[index] !== before[index];
  });
  return begun.length <= 1;
}

/** A fixed switch stays; where a frozen one was moved to a position it may not begin in, nothing follows. */
function keepsSwitches(
  contacts: readonly BruteContact[],
  before: readonly number[],
  after: readonly number[],
): boolean {
  return contacts.every(({ starts = [0, 1], isFixed, isFrozen }, index) => {
    if (isFixed === true && before[index] !== after[index]) return false;
    return isFrozen !== true || starts.some(start => start === before[index]);
  });
}
