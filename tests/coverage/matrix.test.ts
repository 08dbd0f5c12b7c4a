import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { viewCoverageMatrix } from '../../src/checks/coverage/matrix.js';
import { checkCoverage } from '../../src/checks/coverage.js';
import type { CoverageCell, Verdict } from '../../src/checks/coverage-model.js';
import { createReport } from '../../src/findings/report.js';
import { readScheme } from '../../src/language/read.js';

const SWARM = readFileSync(new URL('../../schemes/swarm-season.md', import.meta.url), 'utf8');
const { report } = createReport();
const scheme = readScheme([{ path: 'scheme.md', text: SWARM }], report);
if (scheme === null) throw new Error('nothing was read');
const standards = scheme.standards.slice(0, 1).map(({ name }) => name);
const coverage = checkCoverage(scheme, report, { standards });

type Said = readonly [Verdict, ...string[]];

/** What one mode, Rest, is like on each console in each seats row; all other cells play. */
function matrixOf(said: readonly Said[]) {
  const rest = coverage.cells.filter(({ mode }) => mode.name === 'Rest');
  const change = (cell: CoverageCell): CoverageCell => {
    const [verdict, ...reasons] = said[rest.indexOf(cell)] ?? ['plays'];
    return { ...cell, verdict, reasons };
  };
  return viewCoverageMatrix({ ...coverage, cells: coverage.cells.map(change) });
}

const PLAYS: Said = ['plays'];
const places = (view: ReturnType<typeof matrixOf>) =>
  view.columns.map(({ consoles, seats }) => `${consoles.join('+')}/${seats.join('+')}`);

describe('the matrix', () => {
  it('is one column where nothing differs', () => {
    const { columns, rows, key } = matrixOf([]);
    expect(columns).toEqual([
      {
        covers: ['six-switch', 'four-switch', 'no-difficulty'].flatMap(console =>
          ['Alone', 'Pair'].map(seats => ({ console, seats, standard: 'NTSC' })),
        ),
        consoles: ['six-switch', 'four-switch', 'no-difficulty'],
        seats: ['Alone', 'Pair'],
        standards: ['NTSC'],
      },
    ]);
    expect(rows.map(({ mode, cells }) => `${mode} ${cells.map(({ word }) => word).join()}`)).toEqual(
      ['Hut', 'Hillside', 'Rest', 'Tally'].map(mode => `${mode} plays`),
    );
    expect(key).toEqual([{ verdict: 'plays', symbol: '●', word: 'plays' }]);
  });

  it('keeps apart what differs in the verdict of one mode, though nothing is said of it', () => {
    const view = matrixOf([PLAYS, ['not offered'], PLAYS, PLAYS, ['not offered'], PLAYS]);
    expect(places(view)).toEqual([
      'six-switch/Alone',
      'six-switch/Pair',
      'four-switch/Alone+Pair',
      'no-difficulty/Alone',
      'no-difficulty/Pair',
    ]);
    expect(view.rows.map(({ cells }) => cells.map(({ word }) => word).join(', '))).toEqual([
      'plays, plays, plays, plays, plays',
      'plays, plays, plays, plays, plays',
      'plays, not offered, plays, not offered, plays',
      'plays, plays, plays, plays, plays',
    ]);
  });

  it('keeps apart what differs in the reasons only', () => {
    const view = matrixOf([
      ['altered', 'it is slow'],
      ['altered', 'it is dark'],
      ['broken', 'it is dark'],
      ['broken', 'it is dark'],
      ['altered', 'it is dark', 'it is slow'],
      ['altered', 'it is dark'],
    ]);
    expect(places(view)).toEqual([
      'six-switch/Alone',
      'six-switch/Pair',
      'four-switch/Alone+Pair',
      'no-difficulty/Alone',
      'no-difficulty/Pair',
    ]);
    expect(view.rows[2]?.cells.map(({ sentence }) => sentence)).toEqual([
      'It is slow.',
      'It is dark.',
      'It is dark.',
      'It is dark; it is slow.',
      'It is dark.',
    ]);
  });

  it('has a key of the verdicts that occur, each with its own shape and word', () => {
    const { key, rows } = matrixOf([
      ['not offered'],
      ['broken', 'it is dark'],
      ['altered', 'it is slow'],
      PLAYS,
    ]);
    expect(key).toEqual([
      { verdict: 'plays', symbol: '●', word: 'plays' },
      { verdict: 'altered', symbol: '◐', word: 'altered' },
      { verdict: 'broken', symbol: '✕', word: 'broken' },
      { verdict: 'not offered', symbol: '–', word: 'not offered' },
    ]);
    expect(rows[2]?.cells.map(({ verdict, symbol }) => `${symbol} ${verdict}`)).toEqual([
      '– not offered',
      '✕ broken',
      '◐ altered',
      '● plays',
    ]);
  });
});
