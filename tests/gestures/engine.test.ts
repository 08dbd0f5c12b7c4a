import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bindingsOf } from '../../src/gestures/bindings.js';
import {
  contactsOf,
  createEngine,
  engineKey,
  enterEngine,
  startEngine,
  stepEngine,
} from '../../src/gestures/engine.js';
import { STANDARDS } from '../../src/hardware/clocks.js';
import { readsOf } from '../../src/language/time.js';
import { fires, type NaiveBinding, type NaiveHoldBack } from '../support/naive.js';
import { gestures } from '../support/random-pairs.js';
import { smallScheme } from '../support/small-scheme.js';

const CONTROLS = ['button', 'stick up', 'stick left'] as const;
const WRITTEN = {
  hold: 'hold',
  tap: 'tap under',
  'double tap': 'double tap within',
  repeat: 'repeat every',
} as const;

interface RandomRow {
  readonly gesture: Pick<NaiveBinding, 'kind' | 'n'>;
  readonly parts: readonly number[];
  readonly insteadOf: readonly number[];
  readonly isWhenLit: boolean;
}

const rows: fc.Arbitrary<readonly RandomRow[]> = fc.array(
  fc.record({
    gesture: gestures(12),
    parts: fc.subarray([0, 1, 2], { minLength: 1 }),
    insteadOf: fc.subarray([0, 1, 2, 3], { maxLength: 2 }),
    isWhenLit: fc.boolean(),
  }),
  { minLength: 2, maxLength: 4 },
);

/** Runs of reads rather than single ones, so that long gestures come about. */
const inputs = fc
  .array(
    fc.record({
      reads: fc.integer({ min: 1, max: 9 }),
      engaged: fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }),
      isLit: fc.boolean(),
    }),
    { minLength: 1, maxLength: 10 },
  )
  .map(runs =>
    runs.flatMap(({ reads, engaged, isLit }) =>
      Array.from({ length: reads }, () => ({ levels: engaged.map(Number), isLit })),
    ),
  );

function engineOf(random: readonly RandomRow[]) {
  const scheme = smallScheme(
    random.map(({ gesture, parts, insteadOf, isWhenLit }, index) => ({
      action: `Act ${index}`,
      control: parts.map(part => CONTROLS[part]).join(' + '),
      gesture:
        gesture.kind in WRITTEN
          ? `${WRITTEN[gesture.kind as keyof typeof WRITTEN]} ${gesture.n} frames`
          : gesture.kind,
      when: isWhenLit ? 'Lamp is lit' : '',
      insteadOf: insteadOf
        .filter(other => other < random.length && other !== index)
        .map(other => `Act ${other}`)
        .join('; '),
    })),
  );
  const [mode, seats, profile] = [scheme.modes[0], scheme.seats[0], scheme.consoles[0]];
  if (mode === undefined || seats === undefined || profile === undefined) throw new Error('no scheme');
  const bindings = bindingsOf(scheme, mode, seats, profile);
  return createEngine(bindings, time => readsOf(time, STANDARDS.NTSC, 1));
}

describe('the engine', () => {
  it('fires what the definitions say, looking back over the whole history', () => {
    fc.assert(
      fc.property(rows, inputs, fc.option(fc.subarray([0, 1, 2])), (random, reads, entered) => {
        const engine = engineOf(random);
        const order = engine.contacts.map(({ id }) =>
          CONTROLS.indexOf(id.replace('left ', '') as (typeof CONTROLS)[number]),
        );
        const toEngine = (levels: readonly number[]) => order.map(contact => levels[contact] ?? 0);
        const whenLit = reads.map(({ isLit }) => isLit);
        const holdBacks = naiveHoldBacks(random, whenLit);
        const history = reads.map(({ levels }) => levels);
        let state =
          entered === null
            ? startEngine(engine)
            : enterEngine(engine, toEngine([0, 1, 2].map(part => (entered.includes(part) ? 1 : 0))));
        reads.forEach(({ levels, isLit }, read) => {
          const step = stepEngine(
            engine,
            state,
            toEngine(levels),
            index => random[index]?.isWhenLit === false || isLit,
          );
          state = step.state;
          const expected = random.flatMap(({ gesture, parts, isWhenLit }, index) => {
            const mayFire = !isWhenLit || isLit;
            return mayFire && fires(history, read, { ...gesture, parts }, holdBacks[index], entered ?? [])
              ? [index]
              : [];
          });
          expect(step.fired).toEqual(expected);
        });
      }),
      { numRuns: 800 },
    );
  });

  it('goes on the same from states with the same key', () => {
    fc.assert(
      fc.property(rows, inputs, (random, reads) => {
        const engine = engineOf(random);
        const seen = new Map<string, string>();
        let state = startEngine(engine);
        for (const { levels } of [...reads, ...reads]) {
          const key = `${engineKey(state)} ${levels}`;
          const step = stepEngine(
            engine,
            state,
            engine.contacts.map((_, index) => levels[index] ?? 0),
            () => true,
          );
          const after = `${step.fired} ${engineKey(step.state)}`;
          expect(seen.get(key) ?? after).toBe(after);
          seen.set(key, after);
          state = step.state;
        }
      }),
      { numRuns: 100 },
    );
  });

  it('says which contact has no level', () => {
    const { bindings } = engineOf([
      { gesture: { kind: 'press', n: 1 }, parts: [0], insteadOf: [], isWhenLit: false },
    ]);
    expect(() => createEngine(bindings, () => 1, [])).toThrow(/left button/);
    expect(contactsOf(bindings).map(({ id }) => id)).toEqual(['left button']);
  });
});

function naiveHoldBacks(
  random: readonly RandomRow[],
  whenLit: readonly boolean[],
): readonly (readonly NaiveHoldBack[])[] {
  return random.map((held, index) =>
    random.flatMap((holder, other) => {
      if (other === index || !holder.insteadOf.includes(index)) return [];
      const shared = held.parts.filter(part => holder.parts.includes(part));
      const until = shared.length > 0 ? shared : held.parts;
      const when = holder.isWhenLit ? { when: whenLit } : {};
      return [{ holder: { ...holder.gesture, parts: holder.parts }, until, ...when }];
    }),
  );
}
