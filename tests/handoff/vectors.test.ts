import { describe, expect, test } from 'vitest';
import { compile } from '../../src/compile.js';
import type { Finding } from '../../src/findings/finding.js';
import { createPlay } from '../../src/gestures/play.js';
import { createHandoff } from '../../src/handoff/create.js';
import { type Handoff, routineOf } from '../../src/handoff/model.js';
import { outputKey } from '../../src/handoff/outputs.js';
import { INPUT_REGISTERS, type RegisterValues } from '../../src/handoff/registers.js';
import { isSame, searchReads } from '../../src/handoff/vectors/sequences.js';
import { findSituation, runReads } from '../../src/handoff/vectors/situation.js';
import { makeVectors, type Vector } from '../../src/handoff/vectors/vectors.js';
import {
  type VectorEntry,
  type VectorRead,
  vectorEntries,
  writeVectorsCsv,
  writeVectorsJson,
} from '../../src/handoff/vectors/write.js';
import { REGISTERS } from '../../src/hardware/registers.js';
import type { Scheme } from '../../src/language/model.js';
import { assemble, type Call, type Program, runCalls } from '../support/sim65.js';
import { smallText } from '../support/small-scheme.js';
import { tool } from '../support/tools.js';
import { exampleSchemes, partOf, randomRead } from './schemes.js';

const RAM = 0x80;

interface Planned extends Call {
  /** By fired byte; null where it does not matter. */
  readonly fires: readonly number[] | null;
  readonly words: string;
}

/** The calls of a vector as its guide says, from what the file holds. */
function callsOf(handoff: Handoff, program: Program, entry: VectorEntry): readonly Planned[] {
  const mode = handoff.scheme.modes.find(({ name }) => name === entry.mode);
  const seats = handoff.scheme.seats.find(({ name }) => name === entry.seats);
  if (mode === undefined || seats === undefined) throw new Error('a vector of no mode');
  const routine = routineOf(handoff, mode, seats, entry.consoles[0] ?? '');
  const outputs = [...(handoff.outputs.get(mode)?.values() ?? [])];
  const settingPokes = (list: VectorEntry['settings']) =>
    list.flatMap(({ setting, number }): [number, number][] => {
      const found = handoff.scheme.settings.find(({ name }) => name === setting);
      const cell = handoff.ram.shared.find(
        ({ symbol }) => found !== undefined && symbol === handoff.names.setting(found),
      );
      return cell === undefined ? [] : [[RAM + cell.offset, number]];
    });
  const label = (name: string) => program.labels.get(name) ?? -1;
  const pokes = (read: VectorRead, values: RegisterValues): [number, number][] => [
    ...INPUT_REGISTERS.map((symbol): [number, number] => [REGISTERS[symbol].address, values[symbol]]),
    ...settingPokes(entry.settings),
    ...settingPokes('settings' in read ? (read as { settings: VectorEntry['settings'] }).settings : []),
    ...(read.paddles ?? []).flatMap(({ control, position }): [number, number][] => {
      const symbol = `${handoff.names.prefix}POSITION_${handoff.names.contact({ id: control })}`;
      const cell = handoff.ram.shared.find(each => each.symbol === symbol);
      return cell === undefined ? [] : [[RAM + cell.offset, position]];
    }),
  ];
  const rows = [
    ...new Set(
      routine.plan.map.banks.flatMap(({ lines }) =>
        lines.flatMap(({ wire }) => (wire.kind === 'matrix' ? [wire.row] : [])),
      ),
    ),
  ].sort();
  const driven = (read: VectorRead, row: number | undefined): RegisterValues => ({
    ...read.values,
    ...read.rows?.find(each => each.row === row)?.values,
  });
  const readCalls = (read: VectorRead, fires: readonly number[] | null): readonly Planned[] => [
    ...routine.scan.map((piece, index) => ({
      address: label(piece.label),
      pokes: pokes(read, driven(read, rows[index - 1])),
      fires: null,
      words: '',
    })),
    {
      address: label(routine.read.label),
      pokes: pokes(read, driven(read, rows.at(-1))),
      fires,
      words: `vector ${entry.number}, ${entry.mode}, ${entry.kind}, ${entry.action}, ${read.engaged.join(' ')}`,
    },
  ];
  const fired = (symbols: readonly string[]): readonly number[] => {
    const bindings = routine.unit.bindings.map(binding =>
      outputs.find(output => outputKey(output) === outputKey(binding)),
    );
    const bytes = Array.from(
      { length: Math.max(0, ...bindings.map(output => (output?.byte ?? -1) + 1)) },
      () => 0,
    );
    for (const symbol of symbols) {
      const output = outputs.find(each => each.symbol === symbol);
      if (output === undefined) throw new Error(`${symbol} is no output`);
      bytes[output.byte] = (bytes[output.byte] ?? 0) | (1 << output.bit);
    }
    return bytes;
  };
  return [
    ...readCalls(entry.before, null),
    {
      address: label(routine.enter.label),
      pokes: pokes(entry.before, entry.before.values),
      fires: null,
      words: '',
    },
    ...entry.steps.flatMap(step =>
      Array.from({ length: step.times }, () => readCalls(step, fired(step.fires))).flat(),
    ),
  ];
}

function failures(calls: readonly Planned[], windows: readonly Uint8Array[]): readonly string[] {
  return calls.flatMap(({ fires, words }, index) => {
    if (fires === null) return [];
    const got = [...(windows[index] ?? [])].slice(0, fires.length);
    return got.join() === fires.join() ? [] : [`${words}: ${fires.join()} expected, ${got.join()} left`];
  });
}

/** Every vector of a scheme, on each class of consoles and each standard it is for. */
function runAll(scheme: Scheme, findings: readonly Finding[], only?: number): readonly string[] {
  const handoff = createHandoff(scheme);
  const entries = vectorEntries(makeVectors(handoff, findings));
  const runs = handoff.classes.flatMap(consoles =>
    scheme.standards.map(standard => ({ consoles, standard })),
  );
  return runs.slice(0, only).flatMap(({ consoles, standard }) => {
    const program = assemble(tool('ca65'), tool('ld65'), [partOf(handoff, consoles, standard)]);
    const own = entries.filter(
      entry => entry.consoles[0] === consoles.profile.name && entry.standards.includes(standard.name),
    );
    const calls = own.flatMap(entry => callsOf(handoff, program, entry));
    const { windows } = runCalls(tool('sim65'), program, calls);
    program.remove();
    return failures(calls, windows);
  });
}

describe('every vector passes on the generated routine, under sim65', () => {
  test.each(exampleSchemes().map(each => [each.name, each] as const))('%s', (_, { scheme, findings }) => {
    expect(runAll(scheme, findings)).toEqual([]);
  });

  test.each(Array.from({ length: 17 }, (_, dozen) => dozen * 12))('random schemes from %i on', from => {
    for (let seed = from; seed < from + 12; seed++)
      expect(runAll(randomRead(seed), [], 1), `random ${seed}`).toEqual([]);
  });
});

describe('the vectors of a scheme', () => {
  const all = () => [
    ...exampleSchemes().map(({ scheme }) => scheme),
    ...Array.from({ length: 12 }, (_, seed) => randomRead(seed)),
  ];

  test('hold a firing sequence for each binding that can fire alone, and its last read fires it', () => {
    for (const scheme of all()) {
      const handoff = createHandoff(scheme);
      const vectors = makeVectors(handoff, []);
      for (const vector of vectors.filter(({ kind }) => kind === 'fires'))
        expect(vector.fires.at(-1)).toContain(symbolOf(handoff, vector));
      for (const { unit } of handoff.routines) {
        const told = vectors.filter(vector => vector.unit === unit && vector.kind === 'fires');
        const silent = unit.bindings.filter(binding => told.every(vector => vector.binding !== binding));
        for (const binding of silent)
          expect(firesAlone(scheme, unit, binding), `${unit.mode.name}: ${binding.actionName}`).toBe(false);
      }
    }
  });

  test('are shortest: a search of everything its controls can do finds nothing shorter', () => {
    const seen = Array.from({ length: 12 }, (_, seed) => makeVectors(createHandoff(randomRead(seed)), []));
    for (const { kind, play, binding, unit, reads } of seen.flat()) {
      if (kind !== 'fires' || binding === null) continue;
      const situation = findSituation(play, unit.mode, binding.conditions);
      const found = situation === null ? null : searchReads(play, binding, situation);
      if (found !== null && unit.bindings.length > 0 && !isPositional(binding.gesture.kind))
        expect(found.length).toBe(reads.length);
    }
  });

  test('near misses do not fire what they are about', () => {
    for (const scheme of all()) {
      const handoff = createHandoff(scheme);
      for (const vector of makeVectors(handoff, [])) {
        if (vector.binding === null || vector.kind === 'fires' || vector.kind === 'entered engaged') continue;
        const { play, unit, settings, before, reads, binding } = vector;
        const values = new Map(
          [...settings].filter(([setting]) => play.sources.get(setting)?.kind === 'game'),
        );
        const { fired } = runReads(play, { mode: unit.mode, values, before }, reads);
        const count = fired.flat().filter(each => isSame(each, binding)).length;
        const once = vector.kind === 'one read long' && ['hold', 'repeat'].includes(binding.gesture.kind);
        expect(count, `${vector.kind} ${binding.actionName}`).toBe(once ? 1 : 0);
      }
    }
  });

  test('are the same in both files', () => {
    for (const scheme of all().slice(0, 4)) {
      const handoff = createHandoff(scheme);
      const entries = vectorEntries(makeVectors(handoff, []));
      const json = JSON.parse(writeVectorsJson(handoff, entries)) as { vectors: readonly VectorEntry[] };
      expect(json.vectors).toEqual(JSON.parse(JSON.stringify(entries)));
      const lines = writeVectorsCsv(entries).trimEnd().split('\r\n');
      expect(lines).toHaveLength(1 + entries.reduce((sum, { steps }) => sum + steps.length + 1, 0));
    }
  });
});

const ACCEPTED = `# Two lamps

Two lamps.

## Game

| Item | Value |
| --- | --- |
| Short name | TL |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| S | 1 | joystick | empty |

## Actions

| Action | Say it as |
| --- | --- |
| Fire | Fire |
| Aim | Aim |

## Mode: Play

| Who | Action | Control | Gesture |
| --- | --- | --- | --- |
| left | Fire | button | press |
| left | Aim | button | hold 4 frames |

## Accepted

| Rule | Where | Why |
| --- | --- | --- |
| on-the-way | Fire; Aim | meant |
`;

test('an accepted overlap has its witness, and it passes', () => {
  const { scheme, findings } = compile([{ path: 'lamps.md', text: ACCEPTED }]);
  if (scheme === null) throw new Error('no scheme');
  const entries = vectorEntries(makeVectors(createHandoff(scheme), findings));
  const [overlap, ...others] = entries.filter(({ kind }) => kind === 'accepted overlap');
  expect(others).toEqual([]);
  expect(overlap?.steps.map(({ times, fires }) => [times, fires])).toEqual([
    [1, ['TL_PLAY_FIRE']],
    [2, []],
    [1, ['TL_PLAY_AIM']],
  ]);
  expect(runAll(scheme, findings)).toEqual([]);
});

/** A section that accepts findings: `RULE | WHERE`. */
function accepting(...rows: readonly string[]): string {
  const lines = rows.map(row => `| ${row} | meant |`);
  return ['## Accepted', '', '| Rule | Where | Why |', '| --- | --- | --- |', ...lines, ''].join('\n');
}

// What holds a row back, and under which value, is no part of the overlap’s own rows.
const ACCEPTED_PADDLES = smallText(
  [
    { mode: 'Play', who: 'left A', action: 'Fire', control: 'paddle button', gesture: 'press' },
    { mode: 'Play', who: 'left A', action: 'Aim', control: 'paddle button', gesture: 'hold 4 frames' },
    {
      mode: 'Play',
      who: 'left A',
      action: 'Hide',
      control: 'paddle button',
      gesture: 'held',
      when: 'Lamp is lit',
      insteadOf: 'Fire',
    },
    { mode: 'Play', who: 'left A', action: 'Sway', control: 'paddle', gesture: 'turn' },
  ],
  {
    game: { 'Short name': 'TL' },
    seats: ['S | 2 | paddles | empty'],
    settings: ['Lamp | lit, out | lit | game'],
    extra: accepting('on-the-way | Fire; Aim', 'can-coincide | '),
  },
);

test('the witness of an accepted overlap begins where it can be seen, and turns no knob', () => {
  const { scheme, findings } = compile([{ path: 'lamps.md', text: ACCEPTED_PADDLES }]);
  if (scheme === null) throw new Error('no scheme');
  const entries = vectorEntries(makeVectors(createHandoff(scheme), findings));
  const overlaps = entries.filter(({ kind }) => kind === 'accepted overlap');
  const fires = overlaps.map(({ steps }) => steps.flatMap(step => step.fires));
  expect(fires).toContainEqual(['TL_PLAY_FIRE', 'TL_PLAY_AIM']);
  expect(fires.flat()).not.toContain('TL_PLAY_SWAY');
  for (const { before, steps } of overlaps)
    for (const { paddles } of steps) expect(paddles).toEqual(before.paddles);
  expect(runAll(scheme, findings)).toEqual([]);
});

const ACCEPTED_ENTRY = smallText(
  [
    { mode: 'Door', action: 'Enter', control: 'button', gesture: 'press', does: 'go to Play' },
    { mode: 'Play', action: 'Glow', control: 'button', gesture: 'held' },
    { mode: 'Play', action: 'Enter', control: 'stick up', gesture: 'press', does: 'go to Door' },
  ],
  { game: { 'Short name': 'TL' }, extra: accepting('carry-over | Glow') },
);

test('of an accepted overlap that leads into a mode, what comes then is shown there', () => {
  const { scheme, findings } = compile([{ path: 'lamps.md', text: ACCEPTED_ENTRY }]);
  if (scheme === null) throw new Error('no scheme');
  const entries = vectorEntries(makeVectors(createHandoff(scheme), findings));
  const [overlap, ...others] = entries.filter(({ kind }) => kind === 'accepted overlap');
  expect(others).toEqual([]);
  expect(overlap).toMatchObject({ mode: 'Play', before: { engaged: ['left button'] } });
  expect(overlap?.steps.map(({ engaged, fires }) => [engaged, fires])).toEqual([
    [['left button'], ['TL_PLAY_GLOW']],
  ]);
  expect(runAll(scheme, findings)).toEqual([]);
});

const isPositional = (kind: string) => ['at', 'flip', 'flip to', 'turn'].includes(kind);

function symbolOf(handoff: Handoff, { binding, unit }: Vector): string | undefined {
  return binding === null ? undefined : handoff.outputs.get(unit.mode)?.get(outputKey(binding))?.symbol;
}

/** Whether a search of all that a binding's own controls can do finds it firing on some standard. */
function firesAlone(scheme: Scheme, unit: Vector['unit'], binding: NonNullable<Vector['binding']>): boolean {
  return scheme.standards.some(standard => {
    const play = createPlay({ scheme, seats: unit.seats, profile: unit.consoles.profile, standard });
    const situation = findSituation(play, unit.mode, binding.conditions);
    return situation !== null && searchReads(play, binding, situation) !== null;
  });
}
