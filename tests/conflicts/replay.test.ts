import { describe, expect, it } from 'vitest';
import { type Cell, cellsOf, timeCell } from '../../src/checks/conflicts/cells.js';
import { engagedNames, levelsOf, namedPath, replay, valueIn } from '../../src/checks/conflicts/replay.js';
import type { Contact } from '../../src/gestures/contacts.js';
import { type SmallOptions, type SmallRow, smallScheme } from '../support/small-scheme.js';

const OPTIONS: SmallOptions = {
  seats: ['Solo | 1 | paddles | empty'],
  // The left switch is at A at power-on: that gives `gale`.
  settings: [
    'Wind | calm, gale | gale | left difficulty: B calm, A gale',
    'Lamp | out, lit | out | game',
    'Moss | thin, thick | thick | game',
  ],
};
const ROWS: readonly SmallRow[] = [
  { action: 'Steer', control: 'paddle', gesture: 'turn' },
  { action: 'Hop', control: 'paddle button', gesture: 'press', when: 'Wind is gale and Lamp is lit' },
  { who: 'anyone', action: 'Blow', control: 'left difficulty', gesture: 'flip' },
  { who: 'anyone', action: 'Dim', control: 'TV type', gesture: 'at B-W' },
  { who: 'anyone', action: 'Start', control: 'RESET', gesture: 'press', when: 'Moss is thick' },
  { who: 'anyone', action: 'Begin', control: 'RESET', gesture: 'press' },
];

function cellOf(options: SmallOptions = OPTIONS): Cell {
  const scheme = smallScheme(ROWS, options);
  const [cell] = scheme.modes.flatMap(mode => cellsOf(scheme, mode));
  if (cell === undefined) throw new Error('no cell');
  return cell;
}

const cell = cellOf();
const contacts: readonly Contact[] = [
  ...new Map(cell.bindings.flatMap(({ parts }) => parts.map(part => [part.id, part]))).values(),
];
const levels = (at: Readonly<Record<string, number>>) => new Map(Object.entries(at));

describe('the levels of a read', () => {
  it('have contacts’ names by their bits', () => {
    const named = namedPath(contacts, [0b00101, 0b10000]);
    expect(named.map(read => Object.fromEntries(read))).toEqual([
      { 'left A paddle': 1, 'left A paddle button': 0, 'left difficulty': 1, 'TV type': 0, RESET: 0 },
      { 'left A paddle': 0, 'left A paddle button': 0, 'left difficulty': 0, 'TV type': 0, RESET: 1 },
    ]);
  });

  it('are those of power-on for switches that are not named, and let go for all others', () => {
    expect(levelsOf(cell, contacts, levels({}))).toEqual([0, 0, 1, 0, 0]);
    expect(levelsOf(cell, contacts, levels({ 'left difficulty': 0, RESET: 1 }))).toEqual([0, 0, 0, 0, 1]);
    const calm = cellOf({
      ...OPTIONS,
      settings: (OPTIONS.settings ?? []).map(line => line.replace('| gale |', '| calm |')),
    });
    expect(levelsOf(calm, contacts, levels({}))).toEqual([0, 0, 0, 0, 0]);
  });

  it('are those a console fixes', () => {
    const fixed = cellOf({
      ...OPTIONS,
      game: { Consoles: 'mine' },
      extra: '## Consoles\n\n| Console | TV type |\n| --- | --- |\n| mine | fixed B-W |',
    });
    expect(levelsOf(fixed, contacts, levels({}))).toEqual([0, 0, 1, 1, 0]);
  });
});

describe('values while a sequence is replayed', () => {
  const valueNow = (name: string, given: Readonly<Record<string, string>>) => {
    const settings = new Map(cell.scheme.settings.map(setting => [setting.name, setting]));
    const setting = settings.get(name);
    if (setting === undefined) throw new Error(name);
    const values = new Map(
      cell.scheme.settings.flatMap(each => {
        const value = given[each.name];
        return value === undefined ? [] : [[each, value] as const];
      }),
    );
    return valueIn(cell, values)(setting);
  };

  it('are the given ones, else those of power-on', () => {
    expect(valueNow('Wind', { Wind: 'calm' })).toBe('calm');
    expect(valueNow('Wind', { Lamp: 'lit' })).toBe('gale');
    expect(valueNow('Moss', {})).toBe('thick');
    expect(valueNow('Lamp', { Lamp: 'lit' })).toBe('lit');
  });
});

describe('what a witness calls engaged', () => {
  const engaged = (before: Readonly<Record<string, number>> | null, now: Readonly<Record<string, number>>) =>
    engagedNames(cell, contacts, before === null ? null : levels(before), levels(now));

  it('is what is engaged at the read, whether it was before or not', () => {
    expect(engaged(null, { RESET: 1, 'left A paddle button': 0 })).toEqual(['RESET']);
    expect(engaged({ RESET: 1 }, { RESET: 1, 'left A paddle button': 1 })).toEqual([
      'left A paddle button',
      'RESET',
    ]);
    expect(engaged({ RESET: 1 }, { RESET: 0 })).toEqual([]);
    expect(engaged({ RESET: 1 }, {})).toEqual([]);
  });

  it('is a switch that was moved, with its new position', () => {
    expect(engaged({ 'left difficulty': 1 }, { 'left difficulty': 0 })).toEqual(['left difficulty B']);
    expect(engaged({ 'TV type': 0 }, { 'TV type': 1 })).toEqual(['TV type B-W']);
    expect(engaged({ 'TV type': 1 }, { 'TV type': 1 })).toEqual([]);
    expect(engaged({ 'TV type': 1 }, {})).toEqual([]);
  });

  it('is a switch that does not begin where power-on has it', () => {
    expect(engaged(null, { 'left difficulty': 1, 'TV type': 0 })).toEqual([]);
    expect(engaged(null, { 'left difficulty': 0, 'TV type': 1 })).toEqual([
      'left difficulty B',
      'TV type B-W',
    ]);
    expect(engaged(null, { RESET: 0 })).toEqual([]);
  });

  it('is a knob that was turned, from the second read on', () => {
    expect(engaged(null, { 'left A paddle': 1 })).toEqual([]);
    expect(engaged({ 'left A paddle': 1 }, { 'left A paddle': 0 })).toEqual(['left A paddle']);
    expect(engaged({ 'left A paddle': 1 }, { 'left A paddle': 1 })).toEqual([]);
    expect(engaged({ 'left A paddle': 1 }, {})).toEqual([]);
  });
});

describe('a replay', () => {
  it('fires what the values let fire, read by read, each action once', () => {
    const [standard] = cell.scheme.standards;
    const [, lamp] = cell.scheme.settings;
    if (standard === undefined || lamp === undefined) throw new Error('nothing to replay');
    const path = [
      { 'left A paddle button': 1 },
      { 'left A paddle button': 0 },
      { 'left A paddle button': 1 },
      { 'left A paddle button': 1, 'left difficulty': 0 },
      { RESET: 1, 'left A paddle': 1, 'TV type': 1, 'left difficulty': 0 },
    ].map(levels);
    const values = (read: number) => new Map(read < 2 ? [] : [[lamp, 'lit']]);
    expect(replay(timeCell(cell, standard), path, values)).toEqual([
      { read: 0, engaged: ['left A paddle button'], fires: [] },
      { read: 1, engaged: [], fires: [] },
      { read: 2, engaged: ['left A paddle button'], fires: ['Hop'] },
      { read: 3, engaged: ['left A paddle button', 'left difficulty B'], fires: ['Blow'] },
      { read: 4, engaged: ['TV type B-W', 'RESET'], fires: ['Steer', 'Dim', 'Start', 'Begin'] },
    ]);
  });
});
