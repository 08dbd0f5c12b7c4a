import { describe, expect, it } from 'vitest';
import { createReport } from '../../src/findings/report.js';
import { enterPlay, type Play, startPlay, stepPlay } from '../../src/gestures/play.js';
import { readScheme } from '../../src/language/read.js';
import { type SmallRow, smallText } from '../support/small-scheme.js';
import { engaged, placeIn, playOn, run, smallPlay, valueNames } from './small-play.js';

const SEATS = ['Solo | 1 | joystick | empty', 'Pair | 2 | joystick | joystick'];

/** A section of a mode that is played with Pair only. */
const pairMode = (name: string): string => `## Mode: ${name}

- Seats: Pair

| Who | Action | Control | Gesture |
| --- | --- | --- | --- |
| each | Enter | button | held |

`;

const leave = (action: string, mode: string): SmallRow => ({
  action,
  control: 'button',
  gesture: 'press',
  does: `go to ${mode}`,
});

describe('a play with seats that a mode does not list', () => {
  const barn = { seats: SEATS, extra: pairMode('Barn') };

  it('does not go there', () => {
    const play = smallPlay([leave('Enter', 'Barn')], barn);
    const { fired, state } = run(play, [engaged('left button'), engaged('left button')]);
    expect(fired).toEqual(['Enter', '']);
    expect(state.mode.name).toBe('Yard');
    expect([...play.engines.keys()].map(({ name }) => name)).toEqual(['Yard']);
  });

  it('takes the next go to instead', () => {
    const play = smallPlay(
      [
        leave('Enter', 'Barn'),
        leave('Dig', 'Garden'),
        { mode: 'Garden', action: 'Rest', control: 'stick up', gesture: 'press' },
      ],
      barn,
    );
    expect(run(play, [engaged('left button')]).state.mode.name).toBe('Garden');
  });

  it('can’t begin there', () => {
    const play = smallPlay([leave('Enter', 'Barn')], barn);
    const mode = play.scheme.modes.find(({ name }) => name === 'Barn');
    if (mode === undefined) throw new Error('no barn');
    expect(() => enterPlay(play, mode, new Map())).toThrow('Barn is not played with Solo');
  });

  it('begins in the start mode all the same', () => {
    const text = smallText([leave('Enter', 'Barn')], { ...barn, game: { 'Starts in': 'Barn' } });
    const { report, findings } = createReport();
    const scheme = readScheme([{ path: 'yard.md', text }], report);
    expect(findings.map(({ rule }) => rule)).toEqual(['bad-value']);
    if (scheme === null) throw new Error('no scheme');
    const play = playOn(placeIn(scheme));
    expect(run(play, [engaged('left button')]).fired).toEqual(['Enter']);
  });
});

describe('what the game does by itself', () => {
  const rowsOf = (play: Play, mode: string) =>
    play.scheme.modes.find(({ name }) => name === mode)?.rows ?? [];
  const byGame = (action: string, does: string, mode = 'Yard'): SmallRow => ({
    mode,
    who: 'game',
    action,
    control: '',
    gesture: '',
    does,
  });
  const settings = ['Level | 0 to 4 | 0 | game'];

  it('happens in its own mode only, and only where the row is the game’s', () => {
    const play = smallPlay(
      [
        byGame('Dusk', 'Level: 1'),
        { action: 'Hop', control: 'button', gesture: 'press', does: 'Level: 2' },
        byGame('Dawn', 'Level: 3', 'Garden'),
      ],
      { settings },
    );
    const step = (...modes: readonly string[]) =>
      stepPlay(play, startPlay(play), { ...engaged(), game: modes.flatMap(mode => rowsOf(play, mode)) });
    expect(step('Yard', 'Garden').game.map(({ action }) => action.name)).toEqual(['Dusk']);
    expect(valueNames(play, step('Yard', 'Garden').state)).toEqual({ Level: '1' });
    expect(step('Garden').game).toEqual([]);
    expect(valueNames(play, step('Garden').state)).toEqual({ Level: '0' });
  });

  it('has its effects in its row’s place among those of the players', () => {
    const hop: SmallRow = { action: 'Hop', control: 'button', gesture: 'press', does: 'Level: 3' };
    const levelAfter = (rows: readonly SmallRow[]) => {
      const play = smallPlay(rows, { settings });
      return run(play, [{ ...engaged('left button'), game: rowsOf(play, 'Yard') }]).values['Level'];
    };
    expect(levelAfter([byGame('Dusk', 'Level: 1'), hop])).toBe('3');
    expect(levelAfter([hop, byGame('Dusk', 'Level: 1')])).toBe('1');
    expect(levelAfter([byGame('Dusk', 'Level: 1'), hop, byGame('Dawn', 'Level: next')])).toBe('4');
  });

  it('leads where its row says, if no row before it leads elsewhere', () => {
    const garden: SmallRow = { mode: 'Garden', action: 'Rest', control: 'stick up', gesture: 'press' };
    const modeAfter = (rows: readonly SmallRow[]) => {
      const play = smallPlay([...rows, garden]);
      return run(play, [{ ...engaged('left button'), game: rowsOf(play, 'Yard') }]).state.mode.name;
    };
    const stay = leave('Stay', 'Yard');
    expect(modeAfter([byGame('Dusk', 'go to Garden'), stay])).toBe('Garden');
    expect(modeAfter([stay, byGame('Dusk', 'go to Garden')])).toBe('Yard');
  });
});
