import { describe, expect, it } from 'vitest';
import { buildProgram, setUp } from '../../src/checks/conflicts/build.js';
import { type Cell, cellsOf, timeCell } from '../../src/checks/conflicts/cells.js';
import type { Program } from '../../src/checks/conflicts/program.js';
import type { Binding } from '../../src/gestures/bindings.js';
import { type SmallOptions, type SmallRow, smallScheme } from '../support/small-scheme.js';

/** The one cell of a scheme on one console. */
function cellOf(rows: readonly SmallRow[], options?: SmallOptions): Cell {
  const scheme = smallScheme(rows, options);
  const [cell] = scheme.modes.flatMap(mode => cellsOf(scheme, mode));
  if (cell === undefined) throw new Error('no cell');
  return cell;
}

function programs(cell: Cell, x: Binding | undefined, y: Binding | null = null): readonly Program[] {
  const [standard] = cell.scheme.standards;
  if (standard === undefined || x === undefined) throw new Error('nothing to build');
  const setup = setUp(cell, x, y);
  return setup.worlds.flatMap(world => buildProgram(timeCell(cell, standard), setup, world)?.program ?? []);
}

const SWITCHES = [
  'Hue | bright, grey | bright | TV type: COLOR bright, B-W grey',
  'Wind | calm, gale | calm | left difficulty: B calm, A gale',
  'Tide | ebb, flood | ebb | right difficulty: B ebb, A flood',
  'Lamp | out, lit | out | game',
];
const PLAIN = { isFixed: false, isFrozen: false, opposite: null };

describe('a program', () => {
  it('has the contacts, gestures and effects of its bindings', () => {
    const cell = cellOf([
      { action: 'Hop', control: 'button', gesture: 'hold 7 frames', does: 'Lamp: lit' },
      { action: 'Roll', control: 'button + stick down', gesture: 'press', does: 'go to Yard' },
    ]);
    expect(programs(cell, cell.bindings[0], cell.bindings[1])).toEqual([
      {
        contacts: Array.from({ length: 2 }, () => ({ type: 'momentary', starts: [0], ...PLAIN })),
        x: { kind: 'hold', reads: 7, mask: 0b01, wanted: null, goesTo: false },
        y: { kind: 'press', reads: 1, mask: 0b11, wanted: null, goesTo: true },
        holdBacks: [],
      },
    ]);
    expect(programs(cell, cell.bindings[0])[0]?.y).toBeNull();
  });

  it('knows the opposite of a contact, wherever it stands', () => {
    const cell = cellOf([
      { action: 'Hop', control: 'stick up + button', gesture: 'press' },
      { action: 'Roll', control: 'button + stick down', gesture: 'press' },
      { action: 'Duck', control: 'stick down', gesture: 'press' },
    ]);
    const [hop, roll, duck] = cell.bindings;
    if (roll === undefined || duck === undefined) throw new Error('no bindings');
    expect(programs(cell, hop, roll)[0]?.contacts.map(({ opposite }) => opposite)).toEqual([2, null, 0]);
    expect(programs(cell, roll, duck)[0]?.contacts.map(({ opposite }) => opposite)).toEqual([null, null]);
  });

  it.each(['TV type', 'left difficulty', 'right difficulty'] as const)(
    'begins with %s in either position',
    name => {
      const cell = cellOf([{ who: 'anyone', action: 'Hop', control: name, gesture: 'flip' }], {
        settings: SWITCHES,
      });
      expect(programs(cell, cell.bindings[0]).map(({ contacts }) => contacts)).toEqual([
        [{ type: 'two-position', starts: [0, 1], ...PLAIN }],
      ]);
    },
  );

  it.each([
    ['TV type', 'Hue is bright', 0],
    ['TV type', 'Hue is grey', 1],
    ['left difficulty', 'Wind is calm', 0],
    ['left difficulty', 'Wind is gale', 1],
    ['right difficulty', 'Tide is flood', 1],
  ] as const)('keeps %s where %s', (name, when, level) => {
    const cell = cellOf([{ who: 'anyone', action: 'Hop', control: name, gesture: 'flip', when }], {
      settings: SWITCHES,
    });
    expect(programs(cell, cell.bindings[0]).map(({ contacts }) => contacts)).toEqual([
      [{ ...PLAIN, type: 'two-position', starts: [level], isFrozen: true }],
    ]);
  });

  it('leaves a switch free where its setting does not matter', () => {
    const cell = cellOf(
      [{ who: 'anyone', action: 'Hop', control: 'TV type', gesture: 'flip to B-W', when: 'Wind is gale' }],
      { settings: SWITCHES },
    );
    expect(programs(cell, cell.bindings[0])).toEqual([
      {
        contacts: [{ ...PLAIN, type: 'two-position', starts: [0, 1] }],
        x: { kind: 'flip to', reads: 1, mask: 1, wanted: 1, goesTo: false },
        y: null,
        holdBacks: [],
      },
    ]);
  });

  it('has a fixed switch where the console has it', () => {
    const rows = [{ who: 'anyone', action: 'Hop', control: 'left difficulty', gesture: 'at A' }];
    const fixedAt = (position: string) =>
      cellOf(rows, {
        game: { Consoles: 'mine' },
        settings: SWITCHES,
        extra: `## Consoles\n\n| Console | left difficulty |\n| --- | --- |\n| mine | fixed ${position} |`,
      });
    for (const [position, level] of [
      ['A', 1],
      ['B', 0],
    ] as const) {
      const cell = fixedAt(position);
      expect(programs(cell, cell.bindings[0])[0]?.contacts).toEqual([
        { ...PLAIN, type: 'two-position', starts: [level], isFixed: true },
      ]);
    }
  });

  it('has a world in which a holder is live, and one in which it is not', () => {
    const cell = cellOf(
      [
        { action: 'Hop', control: 'button', gesture: 'press', when: 'Wind is gale' },
        {
          action: 'Roll',
          control: 'button + stick down',
          gesture: 'press',
          when: 'Lamp is lit',
          insteadOf: 'Hop',
        },
      ],
      { settings: SWITCHES },
    );
    const [hop, roll] = cell.bindings;
    const alone = programs(cell, hop);
    expect(alone.map(({ contacts, holdBacks }) => [contacts.length, holdBacks])).toEqual([
      [1, []],
      [2, [{ target: 'x', holder: { kind: 'press', mask: 0b11, wanted: null }, until: 0b01 }]],
    ]);
    // Where the holder is one of the two, its `When` holds anyway; it holds back y as well as x.
    if (hop === undefined || roll === undefined) throw new Error('no bindings');
    const holds = (target: 'x' | 'y') => [expect.objectContaining({ target })];
    expect(programs(cell, hop, roll).map(({ holdBacks }) => holdBacks)).toEqual([holds('x')]);
    expect(programs(cell, roll, hop).map(({ holdBacks }) => holdBacks)).toEqual([holds('y')]);
    expect(programs(cell, roll).map(({ holdBacks }) => holdBacks)).toEqual([[]]);
  });

  it('tells apart the positions of a switch that a holder is on', () => {
    const cell = cellOf(
      [
        { who: 'anyone', action: 'Hop', control: 'button', gesture: 'press', when: 'Wind is not gale' },
        { who: 'anyone', action: 'Roll', control: 'left difficulty', gesture: 'flip', insteadOf: 'Hop' },
      ],
      { settings: SWITCHES },
    );
    expect(programs(cell, cell.bindings[0]).map(({ contacts }) => contacts[1])).toEqual([
      { ...PLAIN, type: 'two-position', starts: [0], isFrozen: true },
    ]);
  });

  it('is none where no values meet the When of both', () => {
    const cell = cellOf(
      [
        { action: 'Hop', control: 'button', gesture: 'press', when: 'Wind is gale' },
        { action: 'Roll', control: 'button', gesture: 'press', when: 'Wind is calm' },
      ],
      { settings: SWITCHES },
    );
    const [hop, roll] = cell.bindings;
    expect(programs(cell, hop, roll)).toEqual([]);
    expect(programs(cell, hop)).toHaveLength(1);
    expect(programs(cell, roll)).toHaveLength(1);
  });

  it('has thirty contacts at most', () => {
    const cell = cellOf([{ action: 'Hop', control: 'button', gesture: 'press' }]);
    const [hop] = cell.bindings;
    const [part] = hop?.parts ?? [];
    if (hop === undefined || part?.kind !== 'control') throw new Error('no button');
    const chord = (size: number): Binding => ({
      ...hop,
      parts: Array.from({ length: size }, (_, index) => ({ ...part, id: `left lever ${index}` })),
    });
    expect(programs(cell, chord(30))[0]?.x.mask).toBe(2 ** 30 - 1);
    expect(programs(cell, chord(31))).toEqual([]);
  });
});
