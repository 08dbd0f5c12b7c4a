import { describe, expect, it } from 'vitest';
import { speechFor, viewManual } from '../../src/documents/manual/view.js';
import { type SmallOptions, type SmallRow, smallText } from '../support/small-scheme.js';
import { inputOf } from './inputs.js';

const SOLO = 'Solo | 1 | joystick | empty';
const DUO = 'Duo | 2 | joystick | joystick';
const viewOf = (rows: readonly SmallRow[], options: SmallOptions) => {
  const input = inputOf(smallText(rows, options));
  return viewManual(input, speechFor(input));
};

const BUTTON = { who: 'left', action: 'Light', control: 'button', gesture: 'press' } as const;
const STICK = { who: 'each', action: 'Walk', control: 'stick up', gesture: 'press' } as const;

describe('a row for the left player', () => {
  const said = (seats: readonly string[]) => {
    const { modes, quick, settings } = viewOf([{ ...BUTTON, does: 'Lamp: next' }, STICK], { seats });
    return {
      who: modes[0]?.groups.map(({ who }) => who),
      quick: quick.modes[0]?.lines.map(({ control }) => control),
      setting: settings.settings[0]?.how,
    };
  };

  it('is for you where nobody else plays', () => {
    expect(said([SOLO])).toEqual({
      who: ['You'],
      quick: ['Button', 'Stick up'],
      setting: ['Yard: Press the button'],
    });
  });

  it('names the player where another seats row has more, in every chapter', () => {
    expect(said([SOLO, DUO])).toEqual({
      who: ['Left player', 'Each player'],
      quick: ['Button (Left player)', 'Stick up'],
      setting: ['Yard: Press the button (Left player)'],
    });
  });

  it('says in which of several ways to play alone it can be done', () => {
    const { modes } = viewOf([BUTTON, STICK], { seats: [SOLO, 'Other | 1 | wheel | empty'] });
    const notes = modes[0]?.groups.flatMap(({ rows }) => rows.map(each => each.notes));
    expect(notes).toEqual([[], ['Only in: Solo.']]);
    const { modes: right } = viewOf([BUTTON, STICK], { seats: [SOLO, 'Other | 1 | empty | joystick'] });
    expect(right[0]?.groups.map(({ who, rows }) => [who, ...rows.map(each => each.notes)])).toEqual([
      ['You', ['Only in: Solo.'], []],
    ]);
  });
});

describe('a way to a mode', () => {
  const waysTo = (rows: readonly SmallRow[], seats: readonly string[]) =>
    viewOf(
      [{ mode: 'Gate', action: 'Wait', who: 'each', control: 'stick down', gesture: 'press' }, ...rows],
      {
        seats,
      },
    ).start?.modes.find(({ name }) => name === 'Yard')?.ways;
  const go = { ...BUTTON, mode: 'Gate', does: 'go to Yard' } as const;

  it('is told once where one and several play it alike, with the player', () => {
    expect(waysTo([go, STICK], [SOLO, DUO])).toEqual([
      { where: '', steps: ['Press the button (Left player)'] },
    ]);
  });

  it('names no player where all play alone', () => {
    expect(waysTo([go, STICK], [SOLO])).toEqual([{ where: '', steps: ['Press the button'] }]);
  });

  it('names no player in a seats row for one whose way is another', () => {
    const rows = [
      { ...go, who: 'right' },
      { ...go, control: 'stick up', action: 'Walk', when: 'Lamp is lit' },
      {
        mode: 'Gate',
        who: 'left',
        action: 'Lamp',
        control: 'stick left',
        gesture: 'press',
        does: 'Lamp: lit',
      },
      STICK,
    ];
    expect(waysTo(rows, [SOLO, DUO])).toEqual([
      { where: 'Solo', steps: ['Push the stick left', 'Push the stick up'] },
      { where: 'Duo', steps: ['Press the button (Right player)'] },
    ]);
  });
});

describe('paddles', () => {
  const seats = ['One | 1 | paddles | empty', 'Two | 2 | paddles | empty', 'Three | 3 | paddles | paddles'];
  const turn = { who: 'each', action: 'Raise', control: 'paddle', gesture: 'turn' } as const;
  const view = viewOf([turn], { seats });

  it('are given to the players by their letters, also to one alone', () => {
    expect(view.needs.rows.map(({ who }) => who)).toEqual([
      ['Left player A: paddle A'],
      ['Left player A: paddle A', 'Left player B: paddle B'],
      ['Left player A: paddle A', 'Left player B: paddle B', 'Right player A: paddle A'],
    ]);
  });

  it('have it beside them where one of the pair does nothing', () => {
    expect(view.controllers[0]?.calls.map(({ label, seats: note }) => [label, note])).toEqual([
      ['Knob A', ''],
      ['Knob B', 'Not in: One.'],
    ]);
    expect(view.controllers[0]?.text).toContain('Knob B: Not in: One.');
    const few = viewOf([turn], { seats: ['Solo | 1 | paddles | empty', ...seats.slice(0, 2)] });
    expect(few.controllers[0]?.calls[1]?.seats).toBe('Only in: Two.');
  });
});
