import { describe, expect, it } from 'vitest';
import type { BindingRow, Mode, Scheme } from '../../src/language/model.js';
import { bigScheme, USUAL_SIZE } from '../support/big-scheme.js';
import { EVERYTHING, goodSchemes, read, readFiles, readGood } from './fixture.js';

const scheme: Scheme = readGood(EVERYTHING);
const modeOf = (name: string): Mode => {
  const mode = scheme.modes.find(candidate => candidate.name === name);
  if (mode === undefined) throw new Error(`no mode ${name}`);
  return mode;
};
const rowsOf = (mode: string, action: string): readonly BindingRow[] =>
  modeOf(mode).rows.filter(row => row.action.name === action);

describe('a scheme', () => {
  it.each(goodSchemes())('reads without a finding: $path', file => {
    const { scheme: read, findings } = readFiles([file]);
    expect(findings).toEqual([]);
    expect(read?.complete).toBe(true);
  });

  it('has its facts', () => {
    const { game } = scheme;
    expect(scheme.title.value).toBe('The Bell Tower');
    expect(scheme.opening).toHaveLength(1);
    expect(game.shortName.value).toBe('Bell');
    expect(game.version).toBe('1.0 | draft & dream');
    expect(game.readEvery.value).toBe(2);
    expect(game.latch.value).toBe('cleared each read');
    expect(game.language.value).toBe('en-GB');
    expect([game.manualPage, game.sheetPaper]).toEqual(['half letter', 'letter']);
    expect(scheme.standards.map(({ name }) => name)).toEqual(['NTSC', 'PAL', 'SECAM']);
    expect(scheme.startMode).toBe(modeOf('Yard'));
  });

  it('has what is left out as the language says', () => {
    const least = readGood(
      EVERYTHING.replace(
        /^\| (Version|Consoles|TV standards|Starts in|Reads|Button|Language|Manual|Sheet) .*\n/gm,
        '',
      ),
    );
    expect(least.consoles.map(({ name }) => name)).toEqual(['six-switch', 'four-switch', 'no-difficulty']);
    expect(least.standards.map(({ name }) => name)).toEqual(['NTSC']);
    expect(least.startMode.name).toBe('Yard');
    expect(least.game).toMatchObject({
      version: '',
      readEvery: { value: 1 },
      latch: { value: 'off' },
      language: { value: 'en' },
      manualPage: 'A5',
      sheetPaper: 'A4',
    });
    expect(least.actions.find(({ name }) => name === 'Swing')?.need).toBe('must');
  });

  it('has its seats filled left to right', () => {
    const seated = scheme.seats.map(({ players }) => players.map(({ name }) => name));
    expect(seated).toEqual([
      ['left'],
      ['left A', 'left B', 'right A', 'right B'],
      ['left', 'right'],
      ['left'],
    ]);
    expect(scheme.seats[2]?.right).toBe(scheme.controllers[0]?.controller);
    expect(scheme.seats[0]?.right).toBeNull();
  });

  it('has its consoles, the own one with the switches it lacks', () => {
    expect(scheme.consoles.map(({ name }) => name)).toEqual(['six-switch', 'attic console']);
    expect(scheme.consoles[1]?.switches).toEqual({
      RESET: { kind: 'front' },
      SELECT: { kind: 'absent' },
      'TV type': { kind: 'rear' },
      'left difficulty': { kind: 'fixed', position: 'A' },
      'right difficulty': { kind: 'fixed', position: 'B' },
    });
  });

  it('has its settings', () => {
    const [wind, sky, peal] = scheme.settings;
    expect(wind).toMatchObject({ values: ['calm', 'gusty'], startsAs: 'calm' });
    expect(wind?.setBy.kind === 'switch' && [...wind.setBy.values]).toEqual([
      ['B', 'calm'],
      ['A', 'gusty'],
    ]);
    expect(sky?.setBy).toMatchObject({ kind: 'switch', name: 'TV type' });
    expect(peal?.values).toHaveLength(12);
    expect(peal?.setBy).toEqual({ kind: 'game' });
  });

  it('has its modes', () => {
    expect(modeOf('Yard')).toMatchObject({ kind: 'menu', seats: scheme.seats });
    expect(modeOf('Tower').seats.map(({ name }) => name)).toEqual(['One', 'Four', 'Mixed']);
    expect(modeOf('Tower').prose.map(({ type }) => type)).toEqual(['paragraph']);
  });
});

describe('a made-up scheme of any size', () => {
  it.each([
    USUAL_SIZE,
    { modes: 2, rows: 4, settings: 0, variations: 0, consoles: 1, seats: 1, standards: 1 },
    { modes: 5, rows: 90, settings: 9, variations: 40, consoles: 7, seats: 6, standards: 3 },
  ])('reads without a finding: $modes modes of $rows rows', size => {
    const made = readGood(bigScheme(size));
    expect(made.modes.map(({ rows }) => rows.length)).toEqual(Array(size.modes).fill(size.rows));
    expect([made.settings.length, made.variations.length]).toEqual([size.settings, size.variations]);
    expect([made.consoles.length, made.seats.length]).toEqual([size.consoles, size.seats]);
    expect(made.standards).toHaveLength(size.standards);
  });
});

describe('a row', () => {
  it('has alternatives, with the other names of keys', () => {
    const [choose] = rowsOf('Yard', 'Choose a peal');
    expect(choose?.alternatives.map(({ parts }) => parts)).toMatchObject([
      [{ kind: 'switch', name: 'SELECT' }],
      [{ kind: 'control', port: null, letter: '', name: 'key hash' }],
    ]);
    expect(choose?.gesture?.value).toMatchObject({
      kind: 'repeat',
      time: { unit: 'seconds', amount: { numerator: 700n, denominator: 1000n }, name: null },
    });
  });

  it('has chords of own controls, named ports and groups', () => {
    const [, chord, group] = rowsOf('Tower', 'Swing');
    expect(chord?.alternatives[0]?.parts).toMatchObject([
      { port: null, name: 'left pedal' },
      { port: 'right', name: 'button' },
    ]);
    expect(group?.alternatives[0]?.parts).toMatchObject([{ name: 'stick left/right' }, { name: 'button' }]);
    expect(rowsOf('Tower', 'Swing')[0]?.who.value).toEqual({ kind: 'player', player: 'left A' });
  });

  it('has conditions, effects and links to other actions', () => {
    const [ring] = rowsOf('Tower', 'Ring');
    expect(ring?.conditions).toMatchObject([
      { setting: scheme.settings[0], is: true, value: 'calm' },
      { setting: scheme.settings[2], is: false, value: '12' },
    ]);
    expect(ring?.alongWith.map(({ value }) => value.name)).toEqual(['Hold the bell']);
    expect(rowsOf('Yard', 'Ring')[0]?.effects).toMatchObject([
      { kind: 'set', value: '3' },
      { kind: 'go to', mode: modeOf('Tower') },
    ]);
    const [, swing] = rowsOf('Tower', 'Swing');
    expect(swing?.effects).toMatchObject([{ kind: 'step', by: -1 }]);
    expect(swing?.insteadOf.map(({ value }) => value.name)).toEqual(['Ring', 'Hold the bell']);
  });

  it('has its gesture', () => {
    const kinds = modeOf('Tower').rows.map(({ gesture }) => gesture?.value.kind ?? null);
    expect(kinds).toEqual([
      'tap',
      'hold',
      'turn',
      'held',
      'release',
      'flip',
      'flip to',
      'at',
      'double tap',
      null,
    ]);
    expect(rowsOf('Yard', 'Go home')[0]?.gesture?.value).toMatchObject({
      time: { name: 'long pull', text: '1.5 s' },
    });
    expect(rowsOf('Tower', 'Hold the bell')[0]?.gesture?.value).toMatchObject({ time: { unit: 'frames' } });
  });

  it('of the game has neither control nor gesture', () => {
    expect(rowsOf('Tower', 'Dusk')[0]).toMatchObject({
      who: { value: { kind: 'game' } },
      alternatives: [],
      gesture: null,
    });
  });
});

describe('the other sections', () => {
  it('are read', () => {
    const [storm] = scheme.variations.slice(1);
    expect(storm?.seats).toEqual(scheme.seats);
    expect([...(storm?.values ?? [])]).toEqual([[scheme.settings[0], 'gusty']]);
    expect(scheme.fallbacks).toMatchObject([
      { without: 'left difficulty', instead: { kind: 'stays', value: 'calm' } },
      {
        without: 'SELECT',
        instead: { kind: 'binding', mode: { name: 'Yard' }, gesture: { value: { kind: 'hold' } } },
      },
    ]);
    expect(scheme.switchWords.map(({ position, use }) => [position, use])).toEqual([
      ['COLOR', 'COLOR'],
      ['B-W', 'B-W'],
      [null, 'in the yard'],
    ]);
    expect(scheme.accepted.map(({ where }) => where)).toEqual([
      [
        { name: 'Four', things: [{ kind: 'seats', name: 'Four' }] },
        { name: 'One', things: [{ kind: 'seats', name: 'One' }] },
      ],
      [],
    ]);
    expect(scheme.overlays.map(({ item, mm }) => [item, mm])).toEqual([
      ['Overlay width', 58.5],
      ['Corner radius', 0],
    ]);
    expect(scheme.chapters.map(({ title, content }) => [title, content.length])).toEqual([
      ['Good manners', 3],
    ]);
  });
});

describe('a scheme with faults', () => {
  it('is read in part, and each fault is reported', () => {
    const faulty = EVERYTHING.replace('go to Tower', 'go to Towr')
      .replace('| One     | 1 ', '| One     | 9 ')
      .replace('## Overlays', '## Overlay')
      .replace('| long pull | 1.5 s |', '| long pull | 1.5 |');
    const { scheme: partial, findings } = read(faulty);
    expect(findings.map(({ rule }) => rule).sort()).toEqual([
      'bad-value',
      'bad-value',
      'unknown-heading',
      'unknown-name',
    ]);
    expect(partial?.complete).toBe(false);
    expect(partial?.modes.map(({ rows }) => rows.length)).toEqual([1, 10]);
    expect(partial?.fallbacks).toHaveLength(1);
  });

  it('is nothing where there is no mode', () => {
    expect(read('# Only a title').scheme).toBeNull();
    expect(read('').scheme).toBeNull();
    expect(read().scheme).toBeNull();
    expect(read().findings).not.toEqual([]);
  });
});
