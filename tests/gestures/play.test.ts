import { describe, expect, it } from 'vitest';
import {
  createPlay,
  type PlayInput,
  type PlayState,
  playKey,
  startPlay,
  stepPlay,
  valuesIn,
} from '../../src/gestures/play.js';
import { STANDARDS } from '../../src/hardware/clocks.js';
import { type SmallOptions, type SmallRow, smallScheme } from '../support/small-scheme.js';

function playOf(rows: readonly SmallRow[], options?: SmallOptions, console = 0) {
  const scheme = smallScheme(rows, options);
  const [seats] = scheme.seats;
  const profile = scheme.consoles[console];
  if (seats === undefined || profile === undefined) throw new Error('no seats');
  return createPlay({ scheme, seats, profile, standard: STANDARDS.NTSC });
}

const engaged = (...ids: readonly string[]): PlayInput => ({ engaged: new Set(ids) });

/** Steps through inputs; for each read the mode it was read in and the actions that fired. */
function run(play: ReturnType<typeof playOf>, inputs: readonly PlayInput[]) {
  let state: PlayState = startPlay(play);
  const reads = inputs.map(input => {
    const step = stepPlay(play, state, input);
    state = step.state;
    return `${step.mode.name}: ${step.fired.map(({ actionName }) => actionName).join(', ')}`;
  });
  const values = Object.fromEntries(
    [...valuesIn(play, state)].map(([setting, value]) => [setting.name, value]),
  );
  return { reads, values, state };
}

describe('a play', () => {
  it('enters a mode at the next read, where what was engaged must be let go first', () => {
    const play = playOf([
      { mode: 'Gate', action: 'Enter', control: 'button', gesture: 'press', does: 'go to Garden' },
      { mode: 'Garden', action: 'Dig', control: 'button', gesture: 'press' },
      { mode: 'Garden', action: 'Throw', control: 'button', gesture: 'release' },
      { mode: 'Garden', action: 'Water', control: 'button', gesture: 'held' },
    ]);
    const button = engaged('left button');
    expect(run(play, [button, button, engaged(), button, engaged()]).reads).toEqual([
      'Gate: Enter',
      'Garden: Water',
      'Garden: ',
      'Garden: Dig, Water',
      'Garden: Throw',
    ]);
  });

  it('judges every When on the values before the read and applies effects in the order of the rows', () => {
    const play = playOf(
      [
        {
          action: 'Light',
          control: 'button',
          gesture: 'press',
          when: 'Lamp is out',
          does: 'Lamp: lit; Level: next',
        },
        { action: 'Swing', control: 'button', gesture: 'press', when: 'Lamp is lit' },
        { action: 'Reset', control: 'button', gesture: 'press', does: 'Level: 4' },
        { action: 'Climb', control: 'button', gesture: 'press', does: 'Level: next' },
      ],
      { settings: ['Lamp | out, lit | out | game', 'Level | 1 to 4 | 1 | game'] },
    );
    const { reads, values } = run(play, [engaged('left button')]);
    expect(reads).toEqual(['Yard: Light, Reset, Climb']);
    expect(values).toEqual({ Lamp: 'lit', Level: '1' });
  });

  it('takes the first go to, and begins the own mode anew', () => {
    const play = playOf([
      { action: 'Stay', control: 'button', gesture: 'press', does: 'go to Yard' },
      { action: 'Leave', control: 'button', gesture: 'press', does: 'go to Barn' },
      { action: 'Rest', control: 'stick up', gesture: 'hold 3 frames' },
      { mode: 'Barn', action: 'Back', control: 'stick up', gesture: 'press', does: 'go to Yard' },
    ]);
    const up = engaged('left stick up');
    const both = engaged('left stick up', 'left button');
    expect(run(play, [up, both, up, up, up, engaged(), up, up, up]).reads).toEqual([
      'Yard: ',
      'Yard: Stay, Leave',
      ...Array.from({ length: 6 }, () => 'Yard: '),
      'Yard: Rest',
    ]);
  });

  it('gives a switch’s setting the value of its position before the read', () => {
    const play = playOf(
      [
        { action: 'Drift', control: 'button', gesture: 'held', when: 'Tide is strong' },
        {
          who: 'anyone',
          action: 'Turn',
          control: 'left difficulty',
          gesture: 'flip to A',
          when: 'Tide is gentle',
        },
      ],
      { settings: ['Tide | gentle, strong | gentle | left difficulty: B gentle, A strong'] },
    );
    const at = (position: 'A' | 'B'): PlayInput => ({
      engaged: new Set(['left button']),
      positions: { 'left difficulty': position },
    });
    const { reads, values } = run(play, [
      at('B'),
      at('A'),
      at('A'),
      engaged('left button'),
      at('B'),
      at('B'),
    ]);
    expect(reads).toEqual(['Yard: ', 'Yard: Turn', 'Yard: Drift', 'Yard: Drift', 'Yard: Drift', 'Yard: ']);
    expect(values).toEqual({ Tide: 'gentle' });
  });

  it('has nothing moved at the first read, and fixed switches never', () => {
    const rows: readonly SmallRow[] = [
      { who: 'anyone', action: 'Turn', control: 'left difficulty', gesture: 'flip' },
      { who: 'anyone', action: 'Rest', control: 'left difficulty', gesture: 'at B' },
    ];
    const options = { game: { Consoles: 'six-switch, no-difficulty' } };
    const at = (position: 'A' | 'B'): PlayInput => ({
      engaged: new Set(),
      positions: { 'left difficulty': position },
    });
    expect(run(playOf(rows, options), [at('A'), at('B'), at('B')]).reads).toEqual([
      'Yard: ',
      'Yard: Turn, Rest',
      'Yard: Rest',
    ]);
    expect(run(playOf(rows, options, 1), [at('A'), at('B')]).reads).toEqual(['Yard: Rest', 'Yard: Rest']);
  });

  it('turns a paddle when its position changes', () => {
    const play = playOf([{ action: 'Walk', control: 'paddle', gesture: 'turn' }], {
      seats: ['Solo | 1 | paddles | empty'],
    });
    const turned = (value: number): PlayInput => ({ engaged: new Set(), turned: { 'left A paddle': value } });
    expect(run(play, [turned(5), turned(5), turned(7), engaged(), turned(6)]).reads).toEqual([
      'Yard: ',
      'Yard: ',
      'Yard: Walk',
      'Yard: ',
      'Yard: Walk',
    ]);
  });

  it('does what the game does by itself, if its When holds', () => {
    const play = playOf([
      { who: 'game', action: 'Dusk', control: '', gesture: '', when: 'Lamp is out', does: 'Lamp: lit' },
      { action: 'Hop', control: 'button', gesture: 'press' },
    ]);
    const game = play.scheme.modes[0]?.rows.filter(({ who }) => who.value.kind === 'game') ?? [];
    const first = stepPlay(play, startPlay(play), { engaged: new Set(), game });
    expect(first.game).toHaveLength(1);
    const second = stepPlay(play, first.state, { engaged: new Set(), game });
    expect(second.game).toHaveLength(0);
    expect([...valuesIn(play, second.state).values()]).toEqual(['lit']);
  });

  it('steps a setting by a fallback where the switch is missing', () => {
    const play = playOf(
      [{ action: 'Hop', control: 'button', gesture: 'press' }],
      {
        game: { Consoles: 'six-switch, no-difficulty' },
        settings: ['Tide | gentle, strong | gentle | left difficulty: B gentle, A strong'],
        extra:
          '## Fallbacks\n\n| Without | For | Instead |\n| --- | --- | --- |\n| left difficulty | Tide | Yard: left stick up press |\n',
      },
      1,
    );
    const { reads, values } = run(play, [engaged('left stick up')]);
    expect(reads).toEqual(['Yard: Tide: next']);
    expect(values).toEqual({ Tide: 'strong' });
  });

  it('has a key for each state, and changes nothing in place', () => {
    const play = playOf([{ action: 'Rest', control: 'button', gesture: 'hold 3 frames' }]);
    const start = startPlay(play);
    const before = playKey(play, start);
    const held = stepPlay(play, start, engaged('left button')).state;
    expect(playKey(play, start)).toBe(before);
    expect(playKey(play, held)).not.toBe(playKey(play, stepPlay(play, held, engaged('left button')).state));
    expect(playKey(play, startPlay(play))).toBe(before);
  });
});
