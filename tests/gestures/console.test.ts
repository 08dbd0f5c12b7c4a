import { describe, expect, it } from 'vitest';
import { enterPlay } from '../../src/gestures/play.js';
import type { SmallRow } from '../support/small-scheme.js';
import { BARE, engaged, onBare, playOn, run, smallPlace, smallPlay, valueNames } from './small-play.js';

const GUARD: SmallRow = { who: 'anyone', action: 'Guard', control: 'left difficulty', gesture: 'at A' };
const TURN: SmallRow = { who: 'anyone', action: 'Turn', control: 'left difficulty', gesture: 'flip' };
const DRIFT: SmallRow = { action: 'Drift', control: 'button', gesture: 'press', when: 'Tide is strong' };
const TIDE = ['Tide | gentle, strong | gentle | left difficulty: B gentle, A strong'];
const button = engaged('left button');
const at = (position: 'A' | 'B', ...ids: readonly string[]) => ({
  ...engaged(...ids),
  positions: { 'left difficulty': position },
});

describe('a play on a console', () => {
  it('has the controls of both ports and the switches that the console has', () => {
    const ids = (console: number) =>
      smallPlay([GUARD], onBare({ seats: ['Pair | 3 | wheel | paddles'] }), console).contacts.map(
        ({ id }) => id,
      );
    const plugged = [
      'left wheel',
      'left button',
      'right A paddle',
      'right A paddle button',
      'right B paddle',
      'right B paddle button',
    ];
    const movable = ['TV type', 'left difficulty', 'right difficulty', 'SELECT'];
    expect(ids(0)).toEqual([...plugged, ...movable, 'RESET']);
    expect(ids(BARE)).toEqual([...plugged, ...movable]);
  });

  it('reads a fixed switch in its position from the first read on', () => {
    const play = smallPlay([GUARD, TURN, DRIFT], onBare({ settings: TIDE }), BARE);
    expect(run(play, [button, at('B'), at('B', 'left button'), at('A')]).fired).toEqual([
      'Guard, Drift',
      'Guard',
      'Guard, Drift',
      'Guard',
    ]);
  });

  it('begins with the switches where they are put, except those that the console fixes', () => {
    const begun = (console: number, position: 'A' | 'B') => {
      const place = smallPlace([GUARD, TURN], onBare({ settings: TIDE }), console);
      const play = playOn(place);
      const state = enterPlay(play, place.mode, new Map(), { 'left difficulty': position });
      return { tide: valueNames(play, state)['Tide'], ...run(play, [engaged(), engaged()], state) };
    };
    expect(begun(0, 'A')).toMatchObject({ tide: 'strong', fired: ['Guard', 'Guard'] });
    expect(begun(0, 'B')).toMatchObject({ tide: 'gentle', fired: ['', ''] });
    expect(begun(BARE, 'A')).toMatchObject({ tide: 'strong', fired: ['Guard', 'Guard'] });
    expect(begun(BARE, 'B')).toMatchObject({ tide: 'strong', fired: ['Guard', 'Guard'] });
  });

  it('takes the position of the first read as the one before it', () => {
    const play = smallPlay([TURN, DRIFT], { settings: TIDE });
    expect(run(play, [at('A', 'left button')]).fired).toEqual(['Drift']);
    expect(run(play, [at('B'), at('A', 'left button')]).fired).toEqual(['', 'Turn']);
  });

  it('keeps only the settings that the game sets, and counts its reads', () => {
    const settings = ['Lamp | out, lit | out | game', ...TIDE];
    const { state } = run(smallPlay([GUARD], { settings }), [at('A'), at('A'), at('B')]);
    expect([...state.values.keys()].map(({ name }) => name)).toEqual(['Lamp']);
    expect(state.read).toBe(3);
  });
});
