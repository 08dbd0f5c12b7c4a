import { describe, expect, it } from 'vitest';
import {
  assignmentsOf,
  type SourceOf,
  type World,
  type WorldQuery,
  worldsOf,
} from '../../src/checks/conflicts/worlds.js';
import { settingSource } from '../../src/gestures/settings.js';
import type { Condition, Setting } from '../../src/language/model.js';
import { smallScheme } from '../support/small-scheme.js';

const SETTINGS = [
  'Lamp | out, low, lit, blazing | low | game',
  'Gate | shut, open | shut | game',
  'Fire | out, low, lit | out | game',
  'Wind | calm, gale | calm | left difficulty: B calm, A gale',
  'Tide | ebb, flood | ebb | left difficulty: B ebb, A flood',
  'Hue | bright, grey | bright | TV type: COLOR bright, B-W grey',
  'Moss | thin, thick | thick | right difficulty: B thin, A thick',
];

/** A `When`, and what decides the settings on a console: the right difficulty switch is fixed at B there. */
const scheme = smallScheme([{ action: 'Hop', control: 'button', gesture: 'press' }], {
  settings: SETTINGS,
  game: { Consoles: 'mine' },
  extra: '## Consoles\n\n| Console | right difficulty |\n| --- | --- |\n| mine | fixed B |',
});

const setting = (name: string): Setting => {
  const found = scheme.settings.find(each => each.name === name);
  if (found === undefined) throw new Error(name);
  return found;
};

const sourceOf: SourceOf = each => {
  const [profile] = scheme.consoles;
  if (profile === undefined) throw new Error('no console');
  return settingSource(each, scheme, profile);
};

/** `Lamp is lit and Gate is not shut`, as a `When` says it. */
function when(words: string): readonly Condition[] {
  return words.split(' and ').map(part => {
    const [, name = '', not, value = ''] = /^(\w+) is (not )?(\w+)$/.exec(part) ?? [];
    return { setting: setting(name), is: not === undefined, value, at: scheme.title.at };
  });
}

const query = (must: string | null, more: Partial<WorldQuery> = {}): readonly World[] =>
  worldsOf({ must: must === null ? [] : when(must), holders: [], watched: [], sourceOf, ...more });

const named = (values: ReadonlyMap<Setting, string>) =>
  Object.fromEntries([...values].map(([{ name }, value]) => [name, value]));

const told = (worlds: readonly World[]) =>
  worlds.map(({ holds, positions, values }) => ({
    holds,
    positions: Object.fromEntries(positions),
    values: named(values),
  }));

describe('worlds', () => {
  it('are one where nothing is asked, whatever holds back without a When', () => {
    expect(told(query(null))).toEqual([{ holds: [], positions: {}, values: {} }]);
    expect(told(query(null, { holders: [[], []], watched: ['left difficulty'] }))).toEqual([
      { holds: [true, true], positions: {}, values: {} },
    ]);
  });

  it('are one where what must hold can, and none where it can not', () => {
    expect(told(query('Lamp is lit'))).toEqual([{ holds: [], positions: {}, values: { Lamp: 'lit' } }]);
    expect(query('Lamp is lit and Lamp is out')).toEqual([]);
    expect(query('Lamp is lit and Lamp is not lit')).toEqual([]);
    expect(told(query('Lamp is not lit and Gate is open'))[0]?.values).toEqual({ Lamp: 'low', Gate: 'open' });
  });

  it('are two where a holder’s When can hold and can not', () => {
    const worlds = told(query(null, { holders: [when('Lamp is lit'), []] }));
    expect(worlds).toEqual([
      { holds: [false, true], positions: {}, values: { Lamp: 'low' } },
      { holds: [true, true], positions: {}, values: { Lamp: 'lit' } },
    ]);
    expect(told(query('Lamp is lit', { holders: [when('Lamp is lit')] })).map(({ holds }) => holds)).toEqual([
      [true],
    ]);
    expect(told(query('Lamp is out', { holders: [when('Lamp is lit')] })).map(({ holds }) => holds)).toEqual([
      [false],
    ]);
  });

  it('are as many as there are ways for several holders', () => {
    const lit = when('Lamp is lit');
    const open = when('Gate is open');
    const holds = (holders: readonly (readonly Condition[])[]) =>
      query(null, { holders }).map(world => world.holds.join());
    expect(holds([lit, open]).sort()).toEqual(['false,false', 'false,true', 'true,false', 'true,true']);
    expect(holds([lit, when('Lamp is not lit')]).sort()).toEqual(['false,true', 'true,false']);
    expect(holds([[...lit, ...open]]).sort()).toEqual(['false', 'true']);
    expect(holds([lit, when('Lamp is out')]).sort()).toEqual(['false,false', 'false,true', 'true,false']);
  });

  it('are the first of each kind: nearest to power-on', () => {
    const worlds = told(query(null, { holders: [when('Lamp is lit and Gate is open')] }));
    expect(worlds).toEqual([
      { holds: [false], positions: {}, values: { Lamp: 'low', Gate: 'shut' } },
      { holds: [true], positions: {}, values: { Lamp: 'lit', Gate: 'open' } },
    ]);
  });

  it('tell the positions of a watched switch apart, and no others', () => {
    const holders = [when('Wind is gale'), when('Hue is bright')];
    const worlds = told(query(null, { holders, watched: ['left difficulty'] }));
    expect(worlds.map(({ holds, positions }) => ({ holds, positions }))).toEqual([
      { holds: [false, true], positions: { 'left difficulty': 'B' } },
      { holds: [false, false], positions: { 'left difficulty': 'B' } },
      { holds: [true, true], positions: { 'left difficulty': 'A' } },
      { holds: [true, false], positions: { 'left difficulty': 'A' } },
    ]);
    expect(worlds[0]?.values).toEqual({ Wind: 'calm', Hue: 'bright' });
    expect(told(query('Wind is gale'))[0]?.positions).toEqual({});
    expect(told(query('Lamp is lit', { watched: ['left difficulty'] }))[0]?.positions).toEqual({});
  });

  it('differ in the position even where no holder does', () => {
    const worlds = told(
      query(null, { holders: [when('Lamp is lit and Wind is gale')], watched: ['left difficulty'] }),
    );
    expect(worlds.map(({ holds, positions }) => `${holds} ${positions['left difficulty']}`).sort()).toEqual([
      'false A',
      'false B',
      'true A',
    ]);
  });

  it('move the settings of one switch together', () => {
    expect(query('Wind is calm and Tide is flood')).toEqual([]);
    expect(told(query('Wind is gale and Tide is flood', { watched: ['left difficulty'] }))).toEqual([
      { holds: [], positions: { 'left difficulty': 'A' }, values: { Wind: 'gale', Tide: 'flood' } },
    ]);
  });

  it('keep a setting of a fixed switch at its position', () => {
    expect(query('Moss is thick')).toEqual([]);
    expect(told(query('Moss is thin', { watched: ['right difficulty'] }))).toEqual([
      { holds: [], positions: {}, values: { Moss: 'thin' } },
    ]);
  });
});

describe('assignments', () => {
  const assigned = (words: string, stepped: readonly string[] = []) =>
    assignmentsOf(when(words), sourceOf, new Set(stepped.map(setting))).map(({ values, positions }) => ({
      ...named(values),
      ...Object.fromEntries(positions),
    }));

  it('take the value a setting starts as first, each named one, and one that none names', () => {
    expect(assigned('Lamp is lit')).toEqual([{ Lamp: 'low' }, { Lamp: 'lit' }]);
    expect(assigned('Lamp is low')).toEqual([{ Lamp: 'low' }, { Lamp: 'out' }]);
    expect(assigned('Lamp is not lit and Lamp is not low')).toEqual([
      { Lamp: 'low' },
      { Lamp: 'out' },
      { Lamp: 'lit' },
    ]);
    expect(assigned('Gate is open and Gate is shut')).toEqual([{ Gate: 'shut' }, { Gate: 'open' }]);
  });

  it('look at the names of each setting for itself', () => {
    expect(assigned('Lamp is lit and Gate is open')).toEqual([
      { Lamp: 'low', Gate: 'shut' },
      { Lamp: 'low', Gate: 'open' },
      { Lamp: 'lit', Gate: 'shut' },
      { Lamp: 'lit', Gate: 'open' },
    ]);
  });

  it('do not take a value for named that is named of another setting', () => {
    expect(assigned('Lamp is lit and Fire is not out')).toEqual([
      { Lamp: 'low', Fire: 'out' },
      { Lamp: 'low', Fire: 'low' },
      { Lamp: 'lit', Fire: 'out' },
      { Lamp: 'lit', Fire: 'low' },
    ]);
  });

  it('take every value of what is stepped', () => {
    expect(assigned('Lamp is lit', ['Lamp'])).toEqual([
      { Lamp: 'low' },
      { Lamp: 'out' },
      { Lamp: 'lit' },
      { Lamp: 'blazing' },
    ]);
  });

  it('give the position with what it gives', () => {
    expect(assigned('Wind is gale and Tide is flood and Moss is thin')).toEqual([
      { Moss: 'thin', Wind: 'calm', Tide: 'ebb', 'left difficulty': 'B' },
      { Moss: 'thin', Wind: 'gale', Tide: 'flood', 'left difficulty': 'A' },
    ]);
  });

  /** A position that gives no value leaves the setting out; the language asks for both. */
  it('leave out what a position says nothing of', () => {
    const half: SourceOf = () => ({
      kind: 'switch',
      name: 'left difficulty',
      values: new Map([['A', 'gale']]),
    });
    expect(assignmentsOf(when('Wind is gale'), half, new Set())).toHaveLength(1);
    const other: SourceOf = ({ name }) =>
      name === 'Wind'
        ? half(setting('Wind'))
        : { kind: 'switch', name: 'left difficulty', values: new Map([['B', 'ebb']]) };
    const values = assignmentsOf(when('Wind is gale and Tide is ebb'), other, new Set()).map(each =>
      named(each.values),
    );
    expect(values).toStrictEqual([{ Wind: 'gale' }, { Tide: 'ebb' }]);
  });
});
