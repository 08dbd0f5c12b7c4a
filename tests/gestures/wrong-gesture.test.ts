import { describe, expect, it } from 'vitest';
import { engaged, run, smallPlay } from './small-play.js';

describe('a gesture that its control can’t make', () => {
  it('never fires', () => {
    const play = smallPlay(
      [
        { action: 'Spin', control: 'button', gesture: 'flip' },
        { action: 'Roll', control: 'button', gesture: 'turn' },
        { action: 'Push', control: 'wheel', gesture: 'press' },
        { action: 'Lean', control: 'left difficulty', gesture: 'held' },
        { action: 'Walk', control: 'wheel', gesture: 'turn' },
      ],
      { seats: ['Solo | 1 | wheel | empty'] },
    );
    const turned = (value: number) => ({
      ...engaged('left button'),
      turned: { 'left wheel': value },
      positions: { 'left difficulty': 'A' as const },
    });
    expect(run(play, [engaged(), turned(1), engaged(), turned(1), turned(0)]).fired).toEqual([
      '',
      'Walk',
      '',
      '',
      'Walk',
    ]);
  });
});
