import { describe, expect, it } from 'vitest';
import { CONTROLLERS, type Controller, createOwnController } from '../../src/hardware/controllers.js';
import { citeAll } from './cite.js';

function controller(wanted: string): Controller {
  const found = CONTROLLERS.find(({ name }) => name === wanted);
  if (found === undefined) throw new Error(`there is no ${wanted}`);
  return found;
}

const contact = (name: string, line: string, seat = '') => ({
  name,
  seat,
  wiring: { kind: 'contact', line },
});
const member = (control: string, direction: string) => ({ control, direction });
const UP = member('stick up', 'up');
const DOWN = member('stick down', 'down');
const LEFT = member('stick left', 'left');
const RIGHT = member('stick right', 'right');

it('the controllers are joystick, paddles, keypad and wheel, none of them a scheme’s own', () => {
  expect(CONTROLLERS.map(({ name, own }) => [name, own])).toEqual([
    ['joystick', false],
    ['paddles', false],
    ['keypad', false],
    ['wheel', false],
  ]);
});

describe('the joystick (programmer’s guide [PIA 5.3])', () => {
  const { seats, controls, groups, opposites, sources } = controller('joystick');

  it('has one seat and cites its section', () => {
    expect(seats).toEqual(['']);
    expect(citeAll(sources)).toEqual(['G [PIA 5.3]']);
  });

  it('has four directions and a button, each a contact on the line of its name', () => {
    expect(controls).toEqual([
      contact('stick up', 'up'),
      contact('stick down', 'down'),
      contact('stick left', 'left'),
      contact('stick right', 'right'),
      contact('button', 'button'),
    ]);
  });

  it.each([
    ['stick', [UP, DOWN, LEFT, RIGHT]],
    ['stick left/right', [LEFT, RIGHT]],
    ['stick up/down', [UP, DOWN]],
  ])('has the group %s', (name, members) => {
    expect(groups.find(group => group.name === name)).toEqual({ name, members });
    expect(groups).toHaveLength(3);
  });

  it('can’t go up and down, or left and right, at once', () => {
    expect(opposites).toEqual([
      ['stick up', 'stick down'],
      ['stick left', 'stick right'],
    ]);
  });
});

describe('the paddles (programmer’s guide [PIA 5.4], [TIA 12.1])', () => {
  const paddles = controller('paddles');

  it('seat two players and cite both sections', () => {
    expect(paddles.seats).toEqual(['A', 'B']);
    expect(citeAll(paddles.sources)).toEqual(['G [PIA 5.4]', 'G [TIA 12.1]']);
  });

  it('are a pot each, and a button each on the lines of stick right and stick left', () => {
    expect(paddles.controls).toEqual([
      { name: 'paddle', seat: 'A', wiring: { kind: 'pot', line: 'pot A' } },
      contact('paddle button', 'right', 'A'),
      { name: 'paddle', seat: 'B', wiring: { kind: 'pot', line: 'pot B' } },
      contact('paddle button', 'left', 'B'),
    ]);
  });

  it('have no groups and nothing that excludes anything', () => {
    expect([paddles.groups, paddles.opposites]).toEqual([[], []]);
  });
});

describe('the keypad (programmer’s guide [PIA 5.5]; its lines are common practice, no source)', () => {
  const keypad = controller('keypad');
  const rows = [
    ['1', '2', '3'],
    ['4', '5', '6'],
    ['7', '8', '9'],
    ['star', '0', 'hash'],
  ];

  it('has one seat and cites its section', () => {
    expect(keypad.seats).toEqual(['']);
    expect(citeAll(keypad.sources)).toEqual(['G [PIA 5.5]', 'P']);
  });

  it('has twelve keys by row and column, both counted from 1', () => {
    const keys = rows.flatMap((row, above) =>
      row.map((key, before) => ({
        name: `key ${key}`,
        seat: '',
        wiring: { kind: 'matrix', row: above + 1, column: before + 1 },
      })),
    );
    expect(keypad.controls).toEqual(keys);
  });

  it('has no groups and nothing that excludes anything', () => {
    expect([keypad.groups, keypad.opposites]).toEqual([[], []]);
  });
});

describe('the wheel (from memory)', () => {
  const wheel = controller('wheel');

  it('has one seat and says that it is from memory', () => {
    expect(wheel.seats).toEqual(['']);
    expect(citeAll(wheel.sources)).toEqual(['R']);
  });

  it('is a Gray code on the lines of stick down and stick up, and a button', () => {
    expect(wheel.controls).toEqual([
      { name: 'wheel', seat: '', wiring: { kind: 'gray', high: 'down', low: 'up' } },
      contact('button', 'button'),
    ]);
  });

  it('has no groups and nothing that excludes anything', () => {
    expect([wheel.groups, wheel.opposites]).toEqual([[], []]);
  });
});

describe('a scheme’s own controller', () => {
  it('has its contacts in the order given, one seat, and no source', () => {
    const own = createOwnController('pedal board', [
      { name: 'left pedal', line: 'left' },
      { name: 'treadle', line: 'pot B' },
    ]);
    expect(own).toStrictEqual({
      name: 'pedal board',
      seats: [''],
      controls: [contact('left pedal', 'left'), contact('treadle', 'pot B')],
      groups: [],
      opposites: [],
      own: true,
      sources: [],
    });
  });
});
