import { parse } from 'devalue';
import { expect, it } from 'vitest';
import { writePageData } from '../../src/documents/tryout/page-data.js';
import { createPlay, type PlayStep, startPlay, stepPlay, valuesIn } from '../../src/gestures/play.js';
import { inputOf } from '../../src/handoff/vectors/situation.js';
import type { Scheme } from '../../src/language/model.js';
import { exampleSchemes, randomRead } from '../handoff/schemes.js';
import { wildHands } from '../handoff/session.js';
import { createRandom } from '../support/random.js';

const NOTHING = { findings: [], language: 'en', texts: new Map<string, string>() };

const told = ({ fired, state, mode }: PlayStep) => ({
  fired: fired.map(({ actionName, player, direction, order, alternative }) =>
    [actionName, player, direction, order, alternative].join(),
  ),
  mode: mode.name,
  next: state.mode.name,
});

/** What fires in every choice of seats, console and standard while wild hands play. */
function played(scheme: Scheme, seed: number): readonly unknown[] {
  const choices = scheme.seats.flatMap(seats =>
    scheme.consoles.flatMap(profile => scheme.standards.map(standard => ({ seats, profile, standard }))),
  );
  return choices.flatMap(choice => {
    const play = createPlay({ scheme, ...choice });
    const hands = wildHands(scheme, choice, createRandom(seed));
    let state = startPlay(play);
    return Array.from({ length: 60 }, () => {
      const game = state.mode.rows.filter(({ who }) => who.value.kind === 'game' && state.read % 20 === 19);
      const step = stepPlay(play, state, { ...inputOf(play, hands(state.levels, state)), game });
      state = step.state;
      const values = [...valuesIn(play, state)].map(([setting, value]) => `${setting.name}: ${value}`);
      return { ...told(step), values };
    });
  });
}

it('a scheme that has been through the page’s data plays as before', () => {
  const schemes = [
    ...exampleSchemes().map(({ scheme }) => scheme),
    ...Array.from({ length: 40 }, (_, seed) => randomRead(seed)),
  ];
  let fired = 0;
  for (const [seed, scheme] of schemes.entries()) {
    const { scheme: revived } = parse(writePageData({ scheme, ...NOTHING })) as { readonly scheme: Scheme };
    const expected = played(scheme, seed);
    expect(played(revived, seed), scheme.title.value).toEqual(expected);
    fired += expected.filter(read => (read as { fired: unknown[] }).fired.length > 0).length;
  }
  expect(fired).toBeGreaterThan(1000);
});

it('tells nothing of where the scheme was written', () => {
  const [example] = exampleSchemes();
  if (example === undefined) throw new Error('no example');
  const data = writePageData({ scheme: example.scheme, ...NOTHING });
  expect(data).not.toContain(example.name);
  expect(data).not.toContain('offset');
});
