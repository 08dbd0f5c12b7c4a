import { describe, expect, it } from 'vitest';
import type { SmallRow } from '../support/small-scheme.js';
import { engaged, run, smallPlay } from './small-play.js';

const up = 'left stick up';
const left = 'left stick left';
const button = 'left button';

const firesIn = (rows: readonly SmallRow[], ...reads: readonly (readonly string[])[]) =>
  run(
    smallPlay(rows, { seats: ['Pair | 2 | joystick | joystick'] }),
    reads.map(ids => engaged(...ids)),
  ).fired;

describe('Instead of', () => {
  it('lasts until every line that the two share has been let go', () => {
    const rows = [
      { action: 'Vault', control: 'stick up + stick left + button', gesture: 'press', insteadOf: 'Hop' },
      { action: 'Hop', control: 'stick up + button', gesture: 'press' },
    ];
    expect(firesIn(rows, [up, left, button], [up], [up, button], [up, button])).toEqual([
      'Vault',
      '',
      '',
      '',
    ]);
    expect(firesIn(rows, [up, left, button], [], [up, button])).toEqual(['Vault', '', 'Hop']);
    expect(firesIn(rows, [up, left, button], [left], [up, button])).toEqual(['Vault', '', 'Hop']);
  });

  it('lasts until every line of the other has been let go, where they share none', () => {
    const rows = [
      { action: 'Duck', control: 'stick left', gesture: 'held', insteadOf: 'Hop' },
      { action: 'Hop', control: 'stick up + button', gesture: 'held' },
    ];
    expect(firesIn(rows, [left], [left, up, button], [up, button], [up], [up, button])).toEqual([
      'Duck',
      'Duck',
      '',
      '',
      '',
    ]);
    expect(firesIn(rows, [left, up, button], [up, button], [], [up, button])).toEqual([
      'Duck',
      '',
      '',
      'Hop',
    ]);
  });

  it('holds back nothing after the read at which it ends', () => {
    const rows = [
      { action: 'Duck', control: 'stick left', gesture: 'press', insteadOf: 'Hop' },
      { action: 'Hop', control: 'button', gesture: 'press' },
    ];
    expect(firesIn(rows, [left], [], [button])).toEqual(['Duck', '', 'Hop']);
    expect(firesIn(rows, [left], [button])).toEqual(['Duck', 'Hop']);
  });

  it('holds back the same player, and anyone', () => {
    const rows = (who: string): readonly SmallRow[] => [
      { action: 'Duck', control: 'stick left', gesture: 'held', insteadOf: 'Hop' },
      { who, action: 'Hop', control: 'button', gesture: 'press' },
    ];
    const right = 'right button';
    expect(firesIn(rows('each'), [left], [left, button])).toEqual(['Duck', 'Duck']);
    expect(firesIn(rows('each'), [left], [left, right])).toEqual(['Duck', 'Duck, Hop']);
    expect(firesIn(rows('anyone'), [left], [left, right])).toEqual(['Duck', 'Duck']);
  });

  it('holds back every player where anyone does it', () => {
    const rows = [
      { who: 'anyone', action: 'Halt', control: 'SELECT', gesture: 'held', insteadOf: 'Hop' },
      { action: 'Hop', control: 'button', gesture: 'press' },
    ];
    expect(firesIn(rows, ['SELECT'], ['SELECT', button], ['SELECT', button, 'right button'])).toEqual([
      'Halt',
      'Halt',
      'Halt',
    ]);
  });
});

describe('Instead of on a switch', () => {
  const at = (position: 'A' | 'B', ...ids: readonly string[]) => ({
    ...engaged(...ids),
    positions: { 'left difficulty': position },
  });

  it('begins while the switch is in the position asked for', () => {
    const play = smallPlay([
      { who: 'anyone', action: 'Guard', control: 'left difficulty', gesture: 'at A', insteadOf: 'Hop' },
      { action: 'Hop', control: 'button', gesture: 'press' },
    ]);
    expect(run(play, [at('A'), at('A', button), at('A'), at('B'), at('B', button)]).fired).toEqual([
      'Guard',
      'Guard',
      'Guard',
      '',
      'Hop',
    ]);
  });

  it('does not last because a switch stays in its position: that is not engaged', () => {
    const play = smallPlay([
      { who: 'anyone', action: 'Guard', control: 'left difficulty', gesture: 'at A' },
      { action: 'Hop', control: 'button', gesture: 'press', insteadOf: 'Guard' },
    ]);
    expect(run(play, [at('A'), at('A', button), at('A'), at('A')]).fired).toEqual([
      'Guard',
      'Hop',
      'Guard',
      'Guard',
    ]);
  });
});
