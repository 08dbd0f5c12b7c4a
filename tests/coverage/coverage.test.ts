import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { viewCoverageMatrix } from '../../src/checks/coverage/matrix.js';
import { recipeText } from '../../src/checks/coverage/recipe-text.js';
import { type CoverageFocus, checkCoverage } from '../../src/checks/coverage.js';
import { createReport } from '../../src/findings/report.js';
import { readScheme } from '../../src/language/read.js';

const SWARM = readFileSync(new URL('../../schemes/swarm-season.md', import.meta.url), 'utf8');

type IsUsable = Parameters<typeof checkCoverage>[3];

function check(text: string, focus?: CoverageFocus, isUsable?: IsUsable) {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'scheme.md', text }], report);
  if (scheme === null || findings.length > 0) throw new Error(findings[0]?.message ?? 'nothing was read');
  return { scheme, coverage: checkCoverage(scheme, report, focus, isUsable), findings };
}

describe('the example scheme for consoles without difficulty switches', () => {
  const { coverage, findings } = check(SWARM);

  test('has no errors and no warnings', () => {
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  test('plays with the switches and is altered without them, by fallbacks of both kinds', () => {
    const verdicts = new Map(coverage.cells.map(({ console, verdict }) => [console.name, verdict]));
    expect([...verdicts]).toEqual([
      ['six-switch', 'plays'],
      ['four-switch', 'plays'],
      ['no-difficulty', 'altered'],
    ]);
    const cell = coverage.cells.find(({ console }) => console.name === 'no-difficulty');
    expect(cell?.reasons).toEqual([
      'without the left difficulty switch “Bees” is chosen with left stick up in “Hut”',
      'without the right difficulty switch “Swallows” stays “away”',
    ]);
  });

  test('tells the way to a variation in plain English', () => {
    const recipeOn = (name: string) =>
      coverage.variations.find(({ variation, console }) => variation.name === '8' && console.name === name)
        ?.recipe ?? [];
    const rest = [
      ...Array.from({ length: 3 }, () => 'Hut: anyone taps SELECT for less than 0.4 s (Choose a slope)'),
      'Hut: anyone presses RESET (Set out)',
    ];
    expect(recipeText(recipeOn('six-switch'))).toEqual(['Hut: move left difficulty to A', ...rest]);
    expect(recipeText(recipeOn('no-difficulty'))).toEqual([
      'Hut: the left player presses left stick up (Bees: next)',
      ...rest,
    ]);
  });
});

describe('the matrix', () => {
  const { coverage } = check(SWARM);

  test('puts neighbouring columns together that say the same', () => {
    const { columns, rows, key } = viewCoverageMatrix(coverage);
    expect(columns.map(({ consoles }) => consoles)).toEqual([
      ['six-switch', 'four-switch'],
      ['no-difficulty'],
    ]);
    expect(columns.map(({ covers }) => covers.length)).toEqual([8, 4]);
    expect(rows.map(({ mode }) => mode)).toEqual(['Hut', 'Hillside', 'Rest', 'Tally']);
    expect(rows[0]?.cells.map(({ symbol, word }) => `${symbol} ${word}`)).toEqual(['● plays', '◐ altered']);
    expect(key.map(({ word }) => word)).toEqual(['plays', 'altered']);
  });

  test('can keep every column', () => {
    const { columns, rows } = viewCoverageMatrix(coverage, { merge: false });
    expect(columns).toHaveLength(3 * 2 * 2);
    expect(columns[1]?.covers).toEqual([{ console: 'six-switch', seats: 'Alone', standard: 'PAL' }]);
    expect(rows.every(({ cells }) => cells.length === columns.length)).toBe(true);
  });

  test('explains each altered or broken cell in one sentence, and no other', () => {
    for (const { cells } of viewCoverageMatrix(coverage).rows)
      for (const { verdict, sentence } of cells) expect(sentence === '').toBe(verdict === 'plays');
  });
});

describe('a focus', () => {
  const lossy = SWARM.replace('| left difficulty  | Bees     | Hut: left stick up press |\n', '');

  test('narrows cells, variations and the places of findings', () => {
    const { coverage, findings } = check(lossy, { seats: ['Pair'], standards: ['PAL'] });
    expect(new Set(coverage.cells.map(({ seats, standard }) => `${seats.name} ${standard.name}`))).toEqual(
      new Set(['Pair PAL']),
    );
    expect(coverage.variations.every(({ seats }) => seats.name === 'Pair')).toBe(true);
    expect(findings.find(({ rule }) => rule === 'no-fallback')?.where).toEqual([
      ['no-difficulty', 'Pair', 'PAL'],
    ]);
  });

  test('leaves out what is wrong elsewhere', () => {
    const { findings } = check(lossy, { consoles: ['six-switch'] });
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  test('still compares with consoles that are not asked about', () => {
    const text = SWARM.replace(
      '| SELECT  | press                 |                    | go to Rest',
      '| left difficulty | flip | | go to Rest',
    );
    expect(text).not.toBe(SWARM);
    const { findings } = check(text, { consoles: ['no-difficulty'] });
    expect(findings.map(({ rule }) => rule)).toContain('lost-action');
  });
});

describe('bindings that never fire', () => {
  test('are no way to anywhere', () => {
    const { coverage, findings } = check(
      SWARM,
      {},
      (binding, { standard }) => binding.actionName !== 'Set out' || standard.name === 'NTSC',
    );
    const lost = findings.find(({ rule, mode }) => rule === 'unreachable-mode' && mode === 'Hillside');
    expect(lost?.standards).toEqual(['PAL']);
    const verdicts = coverage.cells
      .filter(({ mode, console }) => mode.name === 'Hillside' && console.name === 'six-switch')
      .map(({ standard, verdict }) => `${standard.name} ${verdict}`);
    expect(new Set(verdicts)).toEqual(new Set(['NTSC plays', 'PAL broken']));
  });
});
