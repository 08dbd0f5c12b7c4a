import { expect, test } from 'vitest';
import { createPlay, startPlay, stepPlay } from '../../src/gestures/play.js';
import { createHandoff } from '../../src/handoff/create.js';
import { writeHandoff } from '../../src/handoff/index.js';
import { outputKey } from '../../src/handoff/outputs.js';
import { INPUT_REGISTERS, registersOf } from '../../src/handoff/registers.js';
import { traceLines, traceScheme } from '../../src/handoff/trace/trace.js';
import { inputOf } from '../../src/handoff/vectors/situation.js';
import type { Scheme } from '../../src/language/model.js';
import { createRandom } from '../support/random.js';
import { exampleSchemes, randomRead, readText } from './schemes.js';
import { wildHands } from './session.js';

/** A log of a build that does what the scheme says. */
function faithfulLog(scheme: Scheme, seed: number): readonly Record<string, unknown>[] {
  const handoff = createHandoff(scheme);
  const [seats] = scheme.startMode.seats;
  const [profile] = scheme.consoles;
  const [standard] = scheme.standards;
  if (seats === undefined || profile === undefined || standard === undefined)
    throw new Error('an empty scheme');
  const play = createPlay({ scheme, seats, profile, standard });
  const hands = wildHands(scheme, { seats, profile, standard }, createRandom(seed));
  let state = startPlay(play);
  return Array.from({ length: 150 }, () => {
    const levels = hands(state.levels, state);
    const { values, rows, paddles } = registersOf(play.contacts, levels);
    const step = stepPlay(play, state, inputOf(play, levels));
    const own = handoff.outputs.get(state.mode);
    const line = {
      ...values,
      rows: [...rows].map(([row, driven]) => ({ row, values: driven })),
      paddles: [...paddles].map(([control, position]) => ({ control, position })),
      mode: state.mode.name,
      fires: [...new Set(step.fired.map(binding => own?.get(outputKey(binding))?.symbol ?? ''))],
    };
    state = step.state;
    return line;
  });
}

const asLines = (log: readonly object[]) => log.map(line => JSON.stringify(line)).join('\n');

function startOptions(scheme: Scheme) {
  return { seats: scheme.startMode.seats[0]?.name ?? '' };
}

test('a build that does what the scheme says is in agreement', () => {
  const schemes = [
    ...exampleSchemes().map(({ scheme }) => scheme),
    ...Array.from({ length: 30 }, (_, seed) => randomRead(seed)),
  ];
  for (const scheme of schemes) {
    const { differences, faults, reads } = traceScheme(
      scheme,
      asLines(faithfulLog(scheme, 1)),
      startOptions(scheme),
    );
    expect(faults).toEqual([]);
    expect(differences).toEqual([]);
    expect(reads).toBe(150);
  }
});

test('an action left out and one too many are each told at their read', () => {
  let seen = 0;
  for (let seed = 0; seed < 20; seed++) {
    const scheme = randomRead(seed);
    const log = faithfulLog(scheme, 2);
    const at = log.findIndex(({ fires }) => Array.isArray(fires) && fires.length > 0);
    if (at < 0) continue;
    seen++;
    const without = log.map((line, index) => (index === at ? { ...line, fires: [] } : line));
    expect(traceScheme(scheme, asLines(without), startOptions(scheme)).differences[0]?.read).toBe(at);
    const added = log.map((line, index) =>
      index === 0 ? { ...line, fires: [...(line['fires'] as string[]), 'NOTHING'] } : line,
    );
    const [first] = traceScheme(scheme, asLines(added), startOptions(scheme)).differences;
    expect(first).toMatchObject({ read: 0, line: 1 });
    expect(first?.says.join()).toContain('NOTHING');
  }
  expect(seen).toBeGreaterThan(10);
});

const SMALL = readText(`# Bell tower

Ring it.

## Game

| Item | Value |
| --- | --- |
| Short name | BT |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Alone | 1 | joystick | empty |

## Actions

| Action | Say it as |
| --- | --- |
| Ring | Ring the bell |

## Mode: Tower

| Who | Action | Control | Gesture |
| --- | --- | --- | --- |
| left | Ring | button | hold 3 frames |
`);

test('CSV is read too, and differences are told in the designer’s words', () => {
  const csv = [
    'SWCHA,SWCHB,INPT4,fires',
    '$FF,$0B,$80,',
    '$FF,$0B,$00,',
    '255,11,0,BT_TOWER_RING',
    '0xFF,$0B,$00,',
  ].join('\n');
  expect(traceLines(traceScheme(SMALL, csv))).toEqual([
    'Read 2 (line 4), Tower, left button:',
    '  The build does “Ring” (left), but by the scheme it should not.',
    'Read 3 (line 5), Tower, left button:',
    '  “Ring” (left) should happen by left button, hold 3 frames, but the build does not do it.',
    '4 reads, 2 where the build and the scheme differ.',
  ]);
});

const NO_FIRES = 'The log does not say what the build did: `fires` is missing, so nothing can be compared.';

test('where something of a log can’t be read, nobody says that all of it agrees', () => {
  expect(traceLines(traceScheme(SMALL, 'SWCHA,fires\n$FF,'))).toEqual([
    '1 read: the build and the scheme agree.',
  ]);
  expect(traceLines(traceScheme(SMALL, 'SWCHA,fires\nfoo,'))).toEqual([
    'Line 2: SWCHA is no byte: foo.',
    '1 read: no other difference is seen.',
  ]);
});

const NO_LOG = 'This is no log: nothing in it names a register (SWCHA, SWCHB, INPT0 to INPT5).';

test('a file that is no log has no reads, and one sentence says so', () => {
  const told = (text: string) => {
    const { reads, faults } = traceScheme(SMALL, text);
    return [reads, ...faults];
  };
  expect(told('{"a":1}')).toEqual([0, NO_LOG]);
  expect(told('{"a":1}\n{"b":[2]}\n')).toEqual([0, NO_LOG]);
  expect(told('{\n "a": 1\n}\n')).toEqual([0, NO_LOG]);
  expect(told('[\n {"SWCHA":255}\n]')).toEqual([
    0,
    'This is a JSON array; a log has a JSON object on each line, or is CSV.',
  ]);
  expect(told('{\n eggs\n milk\n}')).toEqual([0, 'No line of this file is a JSON object.']);
  expect(told('{\n "SWCHA": 255,\n "fires": []\n}')).toEqual([1]);
  expect(told('{"values":{"SWCHA":255},"fires":[]}')).toEqual([1]);
});

test('of many faults of one kind the first are told and the others counted', () => {
  const lines = (count: number) => Array.from({ length: count }, () => 'nonsense');
  const faults = (count: number) =>
    traceScheme(SMALL, ['{"SWCHA":255,"fires":[]}', ...lines(count)].join('\n')).faults;
  expect(faults(3)).toHaveLength(3);
  expect(faults(4).slice(2)).toEqual(['Line 4 is no JSON object.', '… and 1 more line like that.']);
  expect(faults(338).slice(2)).toEqual(['Line 4 is no JSON object.', '… and 335 more lines like that.']);
});

test('a log that can’t be read is told in a sentence, without an exception', () => {
  const faults = (text: string) => traceScheme(SMALL, text).faults;
  expect(faults('')).toEqual(['The log is empty.']);
  expect(faults('a,b\n1,2')).toEqual(['The first line names no register: SWCHA, SWCHB, INPT0 to INPT5.']);
  expect(faults('{"SWCHA":255}\nnonsense')).toEqual(['Line 2 is no JSON object.']);
  expect(faults('SWCHA,fires\n$1FF,')).toEqual(['Line 2: SWCHA is no byte: $1FF.']);
  expect(faults('SWCHA,fires')).toEqual(['There is no read in the log.']);
  expect(faults('SWCHA,fires\n$FF')).toEqual(['Line 2 has 1 cells, the first line 2.']);
  expect(faults('SWCHA\n$FF')).toEqual([NO_FIRES]);
  expect(faults('SWCHA,fire\n$FF,Ring')).toEqual([
    '“fire” is nothing that a log has. Did you mean “fires”?',
    NO_FIRES,
  ]);
  expect(faults('frame,SWCHA,comment,fires\n1,$FF,calm,')).toEqual([]);
  const vectors = writeHandoff({ scheme: SMALL, findings: [] }).find(({ name }) => name === 'vectors.csv');
  expect(faults(String(vectors?.content))).toEqual([
    expect.stringMatching(/^These are the acceptance vectors of a scheme, not a log/),
  ]);
  const [json, report] = ['vectors.json', 'controls.json'].map(
    wanted => writeHandoff({ scheme: SMALL, findings: [] }).find(({ name }) => name === wanted)?.content,
  );
  expect(faults(String(json))).toEqual([
    expect.stringMatching(/^These are the acceptance vectors of a scheme, not a log/),
  ]);
  expect(faults(String(report))).toEqual([NO_LOG]);
  expect(traceScheme(SMALL, 'SWCHA\n$FF', { seats: 'Both' }).faults).toEqual([
    'The scheme has no seats row “Both”; it has Alone.',
  ]);
  expect(INPUT_REGISTERS).toHaveLength(8);
});
