import { describe, expect, it } from 'vitest';
import {
  type Cell,
  cellsOf,
  gestureReads,
  groupProfiles,
  hasOpposites,
  takesPart,
  timeCell,
} from '../../src/checks/conflicts/cells.js';
import type { Scheme } from '../../src/language/model.js';
import { type SmallOptions, type SmallRow, smallScheme } from '../support/small-scheme.js';

/** Consoles that have, lack or fix the switches in every way. */
const CONSOLES = `## Consoles

| Console | RESET | SELECT | TV type | left difficulty | right difficulty |
| --- | --- | --- | --- | --- | --- |
| plain | front | front | front | front | front |
| behind | rear | rear | rear | rear | rear |
| bare | absent | front | front | front | front |
| low | front | front | front | fixed B | front |
| high | front | front | front | fixed A | front |
| grey | front | front | fixed B-W | front | front |
`;
const NAMES = ['plain', 'behind', 'bare', 'low', 'high', 'grey'];
const SETTINGS = [
  'Lamp | out, lit | out | game',
  'Wind | calm, gale | calm | left difficulty: B calm, A gale',
];
const HOP: SmallRow = { action: 'Hop', control: 'button', gesture: 'press' };

const schemeOf = (rows: readonly SmallRow[], { extra = '', ...more }: SmallOptions = {}): Scheme =>
  smallScheme(rows, {
    settings: SETTINGS,
    game: { Consoles: NAMES.join(', ') },
    ...more,
    extra: `${CONSOLES}\n${extra}`,
  });

const fallback = (...rows: readonly string[]) =>
  `## Fallbacks\n\n| Without | For | Instead |\n| --- | --- | --- |\n${rows.map(row => `| ${row} |`).join('\n')}\n`;

/** Names of consoles by group, for some modes of a scheme. */
function groups(scheme: Scheme, names: readonly string[] = ['Yard']): readonly string[] {
  const modes = scheme.modes.filter(({ name }) => names.includes(name));
  return groupProfiles(scheme, modes).map(profiles => profiles.map(({ name }) => name).join(' '));
}

const ALL = [NAMES.join(' ')];
const BY_RESET = ['plain behind low high grey', 'bare'];
const BY_LEFT = ['plain behind bare grey', 'low', 'high'];

describe('consoles on which a mode is the same', () => {
  it('are all, where no switch matters', () => {
    expect(groups(schemeOf([HOP]))).toEqual(ALL);
    expect(groups(schemeOf([{ ...HOP, when: 'Lamp is lit', does: 'Lamp: next' }]))).toEqual(ALL);
  });

  it('have or lack the switches of its rows alike: front or behind, fixed in one position or the other', () => {
    expect(groups(schemeOf([{ who: 'anyone', action: 'Go', control: 'RESET', gesture: 'press' }]))).toEqual(
      BY_RESET,
    );
    expect(
      groups(schemeOf([{ who: 'anyone', action: 'Go', control: 'left difficulty', gesture: 'flip' }])),
    ).toEqual(BY_LEFT);
    expect(
      groups(schemeOf([{ who: 'anyone', action: 'Go', control: 'SELECT or TV type', gesture: 'flip' }])),
    ).toEqual(['plain behind bare low high', 'grey']);
    expect(
      groups(schemeOf([{ who: 'anyone', action: 'Go', control: 'SELECT + RESET', gesture: 'press' }])),
    ).toEqual(BY_RESET);
  });

  it('have or lack the switch of a setting that its rows ask for alike', () => {
    expect(groups(schemeOf([{ ...HOP, when: 'Wind is gale' }]))).toEqual(BY_LEFT);
  });

  it('fall back alike, where the fallback is in the mode', () => {
    const rows = [HOP, { ...HOP, mode: 'Quay', when: 'Lamp is lit' }];
    const scheme = schemeOf(rows, { extra: fallback('left difficulty | Wind | Quay: stick up press') });
    expect(groups(scheme, ['Quay'])).toEqual(BY_LEFT);
    expect(groups(scheme, ['Yard'])).toEqual(ALL);
    expect(groups(scheme, ['Yard', 'Quay'])).toEqual(BY_LEFT);
  });

  it('are all, where a setting that the mode neither asks for nor changes stays as it is', () => {
    const extra = fallback('left difficulty | Wind | stays gale');
    expect(groups(schemeOf([HOP], { extra }))).toEqual(ALL);
    expect(groups(schemeOf([{ ...HOP, when: 'Lamp is lit' }], { extra }))).toEqual(ALL);
    expect(groups(schemeOf([{ ...HOP, when: 'Wind is gale' }], { extra }))).toEqual(BY_LEFT);
  });

  it('make a cell each for every seats row', () => {
    const scheme = schemeOf([{ ...HOP, when: 'Wind is gale' }], {
      seats: ['Solo | 1 | joystick | empty', 'Two | 2 | joystick | joystick'],
    });
    const cells = scheme.modes.flatMap(mode => cellsOf(scheme, mode));
    expect(cells.map(({ seats, profiles }) => `${seats.name}: ${profiles[0].name}`)).toEqual([
      'Solo: plain',
      'Solo: low',
      'Solo: high',
      'Two: plain',
      'Two: low',
      'Two: high',
    ]);
  });
});

function onlyCell(rows: readonly SmallRow[], options?: SmallOptions): Cell {
  const scheme = smallScheme(rows, options);
  const [cell, ...others] = scheme.modes.flatMap(mode => cellsOf(scheme, mode));
  if (cell === undefined || others.length > 0) throw new Error('not one cell');
  return cell;
}

describe('a cell', () => {
  it('knows what holds what back, and until which lines are let go', () => {
    const { bindings, holders } = onlyCell([
      HOP,
      { action: 'Roll', control: 'button + stick down', gesture: 'press', insteadOf: 'Hop' },
      { action: 'Duck', control: 'stick up', gesture: 'held', insteadOf: 'Hop' },
    ]);
    const [hop, roll, duck] = bindings;
    expect([...holders]).toEqual([
      [
        hop,
        [
          { binding: roll, until: ['left button'] },
          { binding: duck, until: ['left button'] },
        ],
      ],
    ]);
  });

  it.each([
    ['stick up + stick down', true],
    ['button + stick right + stick left', true],
    ['stick up + stick left', false],
    ['button', false],
    ['stick up', false],
    ['button + stick down', false],
  ])('knows whether %s holds opposites', (control, has) => {
    const cell = onlyCell([{ action: 'Hop', control, gesture: 'press' }]);
    expect(cell.bindings.map(({ parts }) => hasOpposites(parts, cell))).toEqual([has]);
    expect([...cell.opposites]).toHaveLength(4);
  });

  it('has no opposites across ports, and both ports’ own', () => {
    const cell = onlyCell(
      [{ who: 'anyone', action: 'Hop', control: 'left stick up + right stick down', gesture: 'press' }],
      {
        seats: ['Two | 2 | joystick | joystick'],
      },
    );
    expect(cell.bindings.map(({ parts }) => hasOpposites(parts, cell))).toEqual([false]);
    expect([...cell.opposites.keys()].filter(id => id.startsWith('right'))).toHaveLength(4);
  });

  it.each([
    ['button', 'press', true, 1],
    ['button', 'hold 255 frames', true, 255],
    ['button', 'hold 256 frames', false, 256],
    ['button', 'tap under 1 frame', false, 1],
    ['button', 'tap under 2 frames', true, 2],
    ['button', 'double tap within 1 frame', false, 1],
    ['button', 'turn', false, 1],
    ['TV type', 'press', false, 1],
    ['TV type', 'flip to B-W', true, 1],
  ])('lets %s %s take part in conflicts: %s', (control, gesture, takes, reads) => {
    const cell = onlyCell([{ who: 'anyone', action: 'Hop', control, gesture }]);
    const [standard] = cell.scheme.standards;
    if (standard === undefined) throw new Error('no standard');
    const timed = timeCell(cell, standard);
    expect(cell.bindings.map(binding => takesPart(binding, timed))).toEqual([takes]);
    expect(cell.bindings.map(binding => gestureReads(binding, timed))).toEqual([reads]);
  });
});
