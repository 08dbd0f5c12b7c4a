import fc from 'fast-check';
import type { Program } from '../../src/checks/conflicts/program.js';
import type { BruteContact, BrutePair } from './brute-force.js';
import type { NaiveBinding, NaiveHoldBack, NaiveKind } from './naive.js';

const MOMENTARY: readonly NaiveKind[] = ['press', 'release', 'held', 'hold', 'tap', 'double tap', 'repeat'];
const TIMED: ReadonlySet<NaiveKind> = new Set(['hold', 'tap', 'double tap', 'repeat']);

/** A momentary gesture that can fire. */
export function gestures(mostReads: number): fc.Arbitrary<Pick<NaiveBinding, 'kind' | 'n'>> {
  return fc.constantFrom(...MOMENTARY).chain(kind => {
    if (!TIMED.has(kind)) return fc.constant({ kind, n: 1 });
    const least = kind === 'tap' || kind === 'double tap' ? 2 : 1;
    return fc.integer({ min: least, max: Math.max(least, mostReads) }).map(n => ({ kind, n }));
  });
}

const momentary = (count: number, opposites: boolean): readonly BruteContact[] =>
  Array.from({ length: count }, (_, index) => ({
    type: 'momentary',
    opposite: opposites && index > 0 && index < 3 ? 3 - index : null,
  }));

/** Two momentary bindings that share contact 0 of `count`, with hold-backs now and then. */
export function momentaryPairs(count: number, mostReads: number): fc.Arbitrary<BrutePair> {
  const parts = fc
    .subarray(Array.from({ length: count - 1 }, (_, index) => index + 1))
    .map(rest => [0, ...rest]);
  const binding = fc.tuple(gestures(mostReads), parts).map(([gesture, on]) => ({ ...gesture, parts: on }));
  const third = fc.record({ on: parts, target: fc.constantFrom<'x' | 'y'>('x', 'y') });
  // On a single control what is held back never fires at all.
  const maybe = count === 1 ? fc.constant(false) : fc.constantFrom(false, false, true);
  return fc
    .record({
      x: binding,
      y: binding,
      xHoldsY: maybe,
      yHoldsX: maybe,
      third: count === 1 ? fc.constant(null) : fc.option(third, { freq: 2 }),
      xGoes: fc.boolean(),
      yGoes: fc.boolean(),
      opposites: count > 2 ? fc.boolean() : fc.constant(false),
    })
    .map(({ x, y, xHoldsY, yHoldsX, third, xGoes, yGoes, opposites }) => {
      const thirdHold = (target: 'x' | 'y', held: NaiveBinding) =>
        third?.target === target ? [holdBack({ kind: 'press', n: 1, parts: third.on }, held)] : [];
      return {
        x,
        y,
        contacts: momentary(count, opposites),
        holdX: [...(yHoldsX ? [holdBack(y, x)] : []), ...thirdHold('x', x)],
        holdY: [...(xHoldsY ? [holdBack(x, y)] : []), ...thirdHold('y', y)],
        xGoes,
        yGoes,
      };
    });
}

function holdBack(holder: NaiveBinding, held: NaiveBinding): NaiveHoldBack {
  const shared = held.parts.filter(part => holder.parts.includes(part));
  return { holder, until: shared.length > 0 ? shared : held.parts };
}

/** Two bindings on one switch or one knob. */
export const positionPairs: fc.Arbitrary<BrutePair> = fc
  .constantFrom(
    ...(['at', 'flip'] as const).flatMap(family =>
      variants(family).flatMap(x => variants(family).map(y => ({ x, y, type: 'two-position' as const }))),
    ),
    { x: KNOB(), y: KNOB(), type: 'turning' as const },
  )
  .chain(({ x, y, type }) =>
    fc
      .record({ xGoes: fc.boolean(), yGoes: fc.boolean(), isHeld: fc.boolean() })
      .map(({ xGoes, yGoes, isHeld }) => ({
        x,
        y,
        contacts: [{ type, opposite: null }],
        holdX: isHeld ? [{ holder: y, until: [0] }].map(hold => ({ ...hold, until: [] })) : [],
        holdY: [],
        xGoes,
        yGoes,
      })),
  );

function KNOB(): NaiveBinding {
  return { kind: 'turn', n: 1, parts: [0] };
}

function variants(family: 'at' | 'flip'): readonly NaiveBinding[] {
  const positions = [0, 1] as const;
  if (family === 'at') return positions.map(position => ({ kind: 'at', n: 1, parts: [0], position }));
  return [
    { kind: 'flip', n: 1, parts: [0] },
    ...positions.map(position => ({ kind: 'flip to' as const, n: 1, parts: [0], position })),
  ];
}

/** A switch that is free, fixed, or whose position gives a setting that must keep its value. */
const switches: fc.Arbitrary<BruteContact> = fc
  .constantFrom<readonly (0 | 1)[]>([0, 1], [0], [1])
  .chain(starts =>
    fc.constantFrom({}, { isFixed: true }, { isFrozen: true }).map(held => ({
      type: 'two-position' as const,
      opposite: null,
      starts,
      ...held,
    })),
  );

/**
 * Two bindings on two momentary contacts, opposites now and then, and one switch: both bindings momentary, or both
 * on the switch, or one of them its flip. A third may hold one of them back.
 */
export function mixedPairs(mostReads: number): fc.Arbitrary<BrutePair> {
  const flips = fc.constantFrom(...variants('flip').map(onSwitch));
  const ats = fc.constantFrom(...variants('at').map(onSwitch));
  const touched = fc
    .tuple(gestures(mostReads), fc.constantFrom<readonly number[]>([0], [1], [0, 1]))
    .map(([gesture, parts]): NaiveBinding => ({ ...gesture, parts }));
  const both = fc.oneof(
    fc.tuple(touched, touched),
    fc.tuple(flips, flips),
    fc.tuple(ats, ats),
    fc.tuple(flips, touched),
    fc.tuple(touched, flips),
  );
  return fc
    .record({
      both,
      third: fc.option(
        fc.record({ holder: fc.oneof(touched, flips, ats), target: fc.constantFrom('x', 'y') }),
      ),
      toggle: switches,
      opposites: fc.boolean(),
      xGoes: fc.boolean(),
      yGoes: fc.boolean(),
    })
    .map(({ both: [x, y], third, toggle, opposites, xGoes, yGoes }) => ({
      x,
      y,
      contacts: [
        { type: 'momentary', opposite: opposites ? 1 : null },
        { type: 'momentary', opposite: opposites ? 0 : null },
        toggle,
      ],
      holdX: third?.target === 'x' ? [holdBack(third.holder, x)] : [],
      holdY: third?.target === 'y' ? [holdBack(third.holder, y)] : [],
      xGoes,
      yGoes,
    }));
}

const onSwitch = (binding: NaiveBinding): NaiveBinding => ({ ...binding, parts: [2] });

/** The same pair as the search takes it. */
export function programOf(pair: BrutePair): Program {
  const mask = (parts: readonly number[]) => parts.reduce((bits, part) => bits | (1 << part), 0);
  const part = ({ kind, n, parts, position }: NaiveBinding, goesTo: boolean) => ({
    kind,
    reads: n,
    mask: mask(parts),
    wanted: position ?? null,
    goesTo,
  });
  const holds = (target: 'x' | 'y', list: readonly NaiveHoldBack[]) =>
    list.map(({ holder, until }) => ({ target, holder: part(holder, false), until: mask(until) }));
  return {
    contacts: pair.contacts.map(({ type, opposite, starts = [0, 1], isFixed = false, isFrozen = false }) => ({
      type,
      opposite,
      starts: type === 'two-position' ? starts : [0],
      isFixed,
      isFrozen,
    })),
    x: part(pair.x, pair.xGoes),
    y: part(pair.y, pair.yGoes),
    holdBacks: [...holds('x', pair.holdX), ...holds('y', pair.holdY)],
  };
}
