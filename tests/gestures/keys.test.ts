import { describe, expect, it } from 'vitest';
import { engineKey } from '../../src/gestures/engine.js';
import { enterPlay, playKey } from '../../src/gestures/play.js';
import type { SmallRow } from '../support/small-scheme.js';
import { engaged, run, smallPlay } from './small-play.js';

const hop: SmallRow = { action: 'Hop', control: 'button', gesture: 'press', does: 'Lamp: lit' };
const tap: SmallRow = { action: 'Duck', control: 'stick up', gesture: 'tap under 5 frames' };
const turn: SmallRow = { who: 'anyone', action: 'Turn', control: 'left difficulty', gesture: 'flip' };
const at = (position: 'A' | 'B') => ({ ...engaged(), positions: { 'left difficulty': position } });

describe('the key of a state', () => {
  it('tells positions apart: from each of them another move is a flip', () => {
    const play = smallPlay([turn]);
    const [inA, inB] = [run(play, [at('A')]).state, run(play, [at('B')]).state];
    expect(engineKey(inA.engine)).not.toBe(engineKey(inB.engine));
    expect(run(play, [at('A')], inA).fired).not.toEqual(run(play, [at('A')], inB).fired);
  });

  it('tells values apart', () => {
    const play = smallPlay([hop]);
    const { startMode, settings } = play.scheme;
    const keys = ['out', 'lit'].map(value =>
      playKey(play, enterPlay(play, startMode, new Map(settings.map(setting => [setting, value])))),
    );
    expect(new Set(keys).size).toBe(2);
  });

  it('tells modes apart', () => {
    const play = smallPlay([hop, { ...hop, mode: 'Garden' }]);
    const keys = play.scheme.modes.map(mode => playKey(play, enterPlay(play, mode, new Map())));
    expect(new Set(keys).size).toBe(2);
  });

  it('is the same again after reads that change nothing', () => {
    const play = smallPlay([
      { ...hop, does: 'go to Garden' },
      { ...tap, mode: 'Garden', insteadOf: 'Climb' },
      { mode: 'Garden', action: 'Climb', control: 'stick left', gesture: 'press' },
    ]);
    const entered = run(play, [engaged('left button')]).state;
    expect(entered.mode.name).toBe('Garden');
    const later = run(play, [engaged('left button'), engaged('left button')], entered).state;
    expect(playKey(play, later)).toBe(playKey(play, entered));
    expect(playKey(play, run(play, [engaged()], later).state)).not.toBe(playKey(play, entered));
  });
});
