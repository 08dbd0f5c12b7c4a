import { describe, expect, it } from 'vitest';
import { type Cell, cellsOf, timeCell } from '../../src/checks/conflicts/cells.js';
import { sightingIn } from '../../src/checks/conflicts/sighting.js';
import { createIsUsable } from '../../src/checks/conflicts/usable.js';
import type { Binding } from '../../src/gestures/bindings.js';
import type { Fallback } from '../../src/language/model.js';
import { smallScheme } from '../support/small-scheme.js';

const scheme = smallScheme(
  [
    { action: 'Hop', control: 'button + stick up or button + stick down', gesture: 'press' },
    { action: 'Roll', control: 'stick left', gesture: 'press', when: 'Wind is gale' },
    { mode: 'Quay', action: 'Hop', control: 'button', gesture: 'press' },
  ],
  {
    seats: ['Solo | 1 | joystick | empty', 'Two | 2 | joystick | joystick'],
    game: { Consoles: 'six-switch, four-switch, no-difficulty', 'TV standards': 'NTSC, PAL' },
    settings: ['Wind | calm, gale | calm | left difficulty: B calm, A gale'],
    extra:
      '## Fallbacks\n\n| Without | For | Instead |\n| --- | --- | --- |\n| left difficulty | Wind | Yard: stick right press |\n| left difficulty | Wind | Yard: SELECT press |',
  },
);

const first = <T>([item]: readonly T[]): T => {
  if (item === undefined) throw new Error('nothing there');
  return item;
};

/** A cell in which a switch is there, and one in which it is not. */
const cells = scheme.modes.flatMap(mode => cellsOf(scheme, mode));
const cellOf = (seats: string, console: string): Cell =>
  first(
    cells.filter(cell => cell.seats.name === seats && cell.profiles.some(({ name }) => name === console)),
  );
const solo = cellOf('Solo', 'six-switch');
const [ntsc, pal] = [first(scheme.standards), first(scheme.standards.slice(1))];

/** Whether a binding is usable where another one is dead, on six-switch and four-switch, in Solo, on NTSC. */
function isUsable(binding: Binding, dead: Binding): boolean {
  const usable = createIsUsable([sightingIn(timeCell(solo, ntsc), 'never-fires', [dead])]);
  if (usable === null) throw new Error('nothing is dead');
  return usable(binding, { console: first(solo.profiles), seats: solo.seats, standard: ntsc });
}

describe('what coverage may use', () => {
  it('is everything where nothing is dead', () => {
    expect(createIsUsable([])).toBeNull();
  });

  it('is not what is dead there; elsewhere it is', () => {
    const dead = first(solo.bindings);
    const usable = createIsUsable([sightingIn(timeCell(solo, ntsc), 'never-fires', [dead])]);
    const there = { console: first(solo.profiles), seats: solo.seats, standard: ntsc };
    const other = cellOf('Two', 'no-difficulty');
    expect(solo.profiles.map(({ name }) => name)).toEqual(['six-switch', 'four-switch']);
    for (const console of solo.profiles) expect(usable?.(dead, { ...there, console })).toBe(false);
    expect(usable?.(dead, { ...there, seats: other.seats })).toBe(true);
    expect(usable?.(dead, { ...there, standard: pal })).toBe(true);
    expect(usable?.(dead, { ...there, console: first(other.profiles) })).toBe(true);
  });

  it('is not what any of several sightings says is dead', () => {
    const [one, two, three] = solo.bindings;
    if (one === undefined || two === undefined || three === undefined) throw new Error('no bindings');
    const dead = [one, two].map(binding => sightingIn(timeCell(solo, ntsc), 'never-fires', [binding]));
    const usable = createIsUsable(dead);
    const there = { console: first(solo.profiles), seats: solo.seats, standard: ntsc };
    expect([one, two, three].map(binding => usable?.(binding, there))).toEqual([false, false, true]);
  });

  it('counts the same way of doing the same row as the same, made anew for another kind of console', () => {
    const there = cellOf('Solo', 'no-difficulty');
    solo.bindings.forEach((binding, index) => {
      const again = there.bindings[index];
      if (again === undefined) throw new Error('no binding');
      expect(again).not.toBe(binding);
      expect(isUsable(again, binding)).toBe(false);
    });
    expect(solo.bindings).toHaveLength(3);
  });

  const hop = first(solo.bindings);
  const fallbacks = cellOf('Solo', 'no-difficulty').bindings.filter(
    ({ origin }) => origin.kind === 'fallback',
  );
  const fall = first(fallbacks);

  it('knows a fallback again', () => {
    expect(fallbacks.length).toBeGreaterThan(1);
    expect(isUsable({ ...fall }, fall)).toBe(false);
    for (const other of fallbacks.slice(1)) expect(isUsable(other, fall)).toBe(true);
  });

  /** The order counts what is in force on a console: a fallback for another mode moves those after it. */
  it('knows a fallback by its row, not by its place in the order', () => {
    const other = first(scheme.fallbacks.slice(1));
    expect(isUsable({ ...fall, order: fall.order + 1 }, fall)).toBe(false);
    expect(isUsable({ ...fall, origin: { kind: 'fallback', fallback: other, row: null } }, fall)).toBe(true);
    const rowOf = (fallback: Fallback): Binding => ({
      ...fall,
      origin: { kind: 'fallback', fallback, row },
    });
    expect(isUsable(rowOf(other), rowOf(first(scheme.fallbacks)))).toBe(true);
    expect(isUsable(rowOf(other), rowOf(other))).toBe(false);
  });

  /** One thing changed at a time. */
  const row = first(scheme.modes.flatMap(mode => mode.rows).filter(({ action }) => action.name === 'Roll'));
  const [part, second] = hop.parts;
  const stick = first(solo.bindings.filter(({ action }) => action?.name === 'Roll')).parts;
  it.each<[string, Partial<Binding>]>([
    ['in another mode', { mode: first(scheme.modes.slice(1)) }],
    ['of another row', { origin: { kind: 'row', row } }],
    [
      'of a fallback for the row',
      {
        origin: {
          kind: 'fallback',
          fallback: first(scheme.fallbacks),
          row: hop.origin.kind === 'row' ? hop.origin.row : null,
        },
      },
    ],
    ['of another alternative', { alternative: hop.alternative + 1 }],
    ['of another player', { player: 'right' }],
    ['of anyone', { player: 'anyone' }],
    ['on fewer controls', { parts: hop.parts.slice(0, 1) }],
    ['on more controls', { parts: [...hop.parts, ...stick] }],
    ['on another control', { parts: part === undefined ? [] : [part, ...stick] }],
    ['on another first control', { parts: second === undefined ? [] : [...stick, second] }],
  ])('leaves usable what is %s', (_, change) => {
    expect(hop.parts).toHaveLength(2);
    expect(isUsable({ ...hop, ...change }, hop)).toBe(true);
    expect(isUsable(hop, { ...hop, ...change })).toBe(true);
    expect(isUsable({ ...hop }, hop)).toBe(false);
  });

  it('tells a fallback of a row from the row', () => {
    const standing: Binding = {
      ...hop,
      origin: { kind: 'fallback', fallback: first(scheme.fallbacks), row },
    };
    expect(isUsable({ ...hop, origin: { kind: 'row', row } }, standing)).toBe(true);
    expect(isUsable({ ...standing }, standing)).toBe(false);
  });
});
