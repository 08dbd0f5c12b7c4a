import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgePair } from '../../src/checks/conflicts/pair.js';
import {
  type Part,
  type PartHoldBack,
  type Program,
  type ProgramContact,
  programKey,
} from '../../src/checks/conflicts/program.js';
import { mixedPairs, momentaryPairs, programOf } from '../support/random-pairs.js';

const button: ProgramContact = {
  type: 'momentary',
  starts: [0],
  isFixed: false,
  isFrozen: false,
  opposite: null,
};
const toggle: ProgramContact = { ...button, type: 'two-position', starts: [0, 1] };
const press: Part = { kind: 'press', reads: 1, mask: 1, wanted: null, goesTo: false };
const flip: Part = { ...press, kind: 'flip' };
const flipTo = (wanted: 0 | 1): Part => ({ ...press, kind: 'flip to', wanted });
const chord: Part = { ...press, mask: 0b11 };
const hold = (target: 'x' | 'y', holder: Part, until: number): PartHoldBack => ({ target, holder, until });
const program = (
  contacts: readonly ProgramContact[],
  x: Part,
  y: Part,
  holdBacks: readonly PartHoldBack[] = [],
): Program => ({ contacts, x, y, holdBacks });

/** Pairs of programs that differ in one thing. */
const DIFFERENT: readonly { readonly what: string; readonly one: Program; readonly other: Program }[] = [
  {
    what: 'the time',
    one: program([button], press, { ...press, kind: 'hold', reads: 1 }),
    other: program([button], press, { ...press, kind: 'hold', reads: 2 }),
  },
  {
    what: 'the gesture',
    one: program([button], press, press),
    other: program([button], press, { ...press, kind: 'release' }),
  },
  {
    what: 'the control',
    one: program([button, button], chord, press),
    other: program([button, button], chord, chord),
  },
  {
    what: 'the position',
    one: program([toggle], flip, flipTo(0)),
    other: program([{ ...toggle, isFixed: true }], flip, flipTo(0)),
  },
  {
    what: 'the position of one',
    one: program([toggle], flipTo(1), flipTo(1)),
    other: program([toggle], flipTo(1), flipTo(0)),
  },
  {
    what: 'a position and none',
    one: program([toggle], flipTo(0), flipTo(1)),
    other: program([toggle], flip, flipTo(1)),
  },
  {
    what: 'leaving the mode',
    one: program([button], { ...press, kind: 'tap', reads: 4 }, { ...press, kind: 'hold', reads: 2 }),
    other: program(
      [button],
      { ...press, kind: 'tap', reads: 4 },
      { ...press, kind: 'hold', reads: 2, goesTo: true },
    ),
  },
  {
    what: 'opposites',
    one: program([button, button], { ...press, kind: 'held' }, { ...press, mask: 0b10 }),
    other: program(
      [
        { ...button, opposite: 1 },
        { ...button, opposite: 0 },
      ],
      { ...press, kind: 'held' },
      { ...press, mask: 0b10 },
    ),
  },
  {
    what: 'where a fixed switch stands',
    one: program(
      [{ ...toggle, starts: [0], isFixed: true }],
      { ...flipTo(0), kind: 'at' },
      { ...flipTo(0), kind: 'at' },
    ),
    other: program(
      [{ ...toggle, starts: [1], isFixed: true }],
      { ...flipTo(0), kind: 'at' },
      { ...flipTo(0), kind: 'at' },
    ),
  },
  {
    what: 'a fixed switch and a free one',
    one: program([{ ...toggle, starts: [0], isFixed: true }], flip, flip),
    other: program([{ ...toggle, starts: [0] }], flip, flip),
  },
  {
    what: 'a frozen switch and a free one',
    one: program([{ ...toggle, starts: [0], isFrozen: true }], flipTo(1), flipTo(0)),
    other: program([{ ...toggle, starts: [0] }], flipTo(1), flipTo(0)),
  },
  {
    what: 'a switch and a knob',
    one: program([{ ...toggle, starts: [1] }], { ...flipTo(1), kind: 'at' }, { ...flipTo(1), kind: 'at' }),
    other: program(
      [{ ...toggle, type: 'turning', starts: [0] }],
      { ...press, kind: 'turn' },
      { ...press, kind: 'turn' },
    ),
  },
  {
    what: 'whether anything holds back',
    one: program([button], press, press),
    other: program([button], press, press, [hold('x', press, 1)]),
  },
  {
    what: 'whom it holds back',
    one: program([button, button], press, chord, [hold('x', chord, 1)]),
    other: program([button, button], press, chord, [hold('y', chord, 1)]),
  },
  {
    what: 'what it holds back with',
    one: program([button, button], press, chord, [hold('x', chord, 1)]),
    other: program([button, button], press, chord, [hold('x', press, 1)]),
  },
  {
    what: 'the position it holds back in',
    one: program([toggle], flip, flipTo(1), [hold('x', flipTo(1), 0)]),
    other: program([toggle], flip, flipTo(1), [hold('x', flipTo(0), 0)]),
  },
  {
    what: 'the gesture it holds back with',
    one: program([{ ...toggle, starts: [0] }], flip, flipTo(1), [hold('x', { ...flipTo(0), kind: 'at' }, 1)]),
    other: program([{ ...toggle, starts: [0] }], flip, flipTo(1), [hold('x', flipTo(1), 1)]),
  },
];

describe('the key of a program', () => {
  it.each(DIFFERENT)('tells apart: $what', ({ one, other }) => {
    expect(judgePair(one)).not.toEqual(judgePair(other));
    expect(programKey(one)).not.toBe(programKey(other));
  });

  it('tells apart which lines must be let go', () => {
    const tap: Part = { ...press, kind: 'double tap', reads: 4 };
    const [one, other] = [0b01, 0b10].map(until =>
      program([button, button], tap, chord, [hold('x', chord, until)]),
    );
    if (one === undefined || other === undefined) throw new Error('no programs');
    expect(programKey(one)).not.toBe(programKey(other));
  });

  it('tells apart which contacts are opposites', () => {
    const four: Part = { ...press, mask: 0b00111 };
    const [one, other] = [
      [3, 4, 1, 2],
      [4, 3, 2, 1],
    ].map(opposites =>
      program([button, ...opposites.map(opposite => ({ ...button, opposite }))], four, {
        ...press,
        mask: 0b11001,
      }),
    );
    if (one === undefined || other === undefined) throw new Error('no programs');
    expect(programKey(one)).not.toBe(programKey(other));
  });

  it('tells a lone binding from a pair', () => {
    expect(programKey({ ...program([button], press, press), y: null })).not.toBe(
      programKey(program([button], press, press)),
    );
  });

  it('is the same for the same', () => {
    for (const { one } of DIFFERENT) expect(programKey(structuredClone(one))).toBe(programKey(one));
  });

  /** Every key is that of programs with one result: as if nothing were remembered. */
  it('has one result', () => {
    const results = new Map<string, unknown>();
    let met = 0;
    const onSwitch = mixedPairs(2).filter(({ x, y }) => [...x.parts, ...y.parts].every(part => part === 2));
    const pairs = fc.oneof(onSwitch, momentaryPairs(1, 3), momentaryPairs(2, 1));
    fc.assert(
      fc.property(pairs, pair => {
        const program = programOf(pair);
        const key = programKey(program);
        const result = judgePair(program);
        if (results.has(key)) met++;
        else results.set(key, result);
        expect(result).toEqual(results.get(key));
      }),
      { numRuns: 1500 },
    );
    expect(met).toBeGreaterThan(100);
    expect(results.size).toBeGreaterThan(100);
  });
});
