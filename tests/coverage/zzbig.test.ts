import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkCoverage } from '../../src/checks/coverage.js';
import type { Finding } from '../../src/findings/finding.js';
import { createReport } from '../../src/findings/report.js';
import { readScheme } from '../../src/language/read.js';
import { type Findings, searchPlainly } from './plain-rules.js';
import { randomScheme } from './random-scheme.js';
import { wideScheme } from './wide-scheme.js';

/**
 * Agreement with an independent method (plain-rules.ts): the same verdicts, reachable modes and variations,
 * recipe lengths, and the same rules for the same things in the same places.
 */
describe('coverage agrees with a plain search over explicit states', () => {
  test('on random schemes', () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(randomScheme, text => {
        const { theirs } = compareBoth(text);
        for (const hold of theirs.holds) count(seen, hold.split('|')[0] ?? '');
        for (const cell of theirs.cells.values()) count(seen, cell.replace(/ -?\d+$/, ''));
      }),
      { numRuns: 300 },
    );
    const rare = RULES.filter(rule => (seen.get(rule) ?? 0) < 20);
    expect(rare, 'rules that the random schemes hardly ever break').toEqual([]);
  });

  test('on random schemes with thousands of states', () => {
    let [most, longest] = [0, 0];
    fc.assert(
      fc.property(wideScheme, text => {
        const { theirs } = compareBoth(text);
        most = Math.max(most, theirs.states);
        longest = Math.max(longest, ...theirs.variations.values());
      }),
      { numRuns: 12000 },
    );
    expect(most).toBeGreaterThan(2000);
    expect(longest).toBeGreaterThan(8);
  });
});

function compareBoth(text: string): ReturnType<typeof judgeBoth> {
  const both = judgeBoth(text);
  const { ours, theirs } = both;
  expect([...ours.cells]).toEqual([...theirs.cells]);
  expect([...ours.variations]).toEqual([...theirs.variations]);
  expect([...ours.holds].sort()).toEqual([...theirs.holds].sort());
  return both;
}

const RULES = [
  'unreachable-mode',
  'unreachable-variation',
  'no-way-out',
  'no-fresh-start',
  'lost-action',
  'lost-value',
  'no-fallback',
  'dead-binding',
  'seat-gap',
  'behind-the-console',
  'one-sided',
  'plays',
  'altered',
  'broken',
  'not offered',
];

const count = (seen: Map<string, number>, what: string) => seen.set(what, (seen.get(what) ?? 0) + 1);

function judgeBoth(text: string): { ours: Omit<Findings, 'states'>; theirs: Findings } {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'test.md', text }], report);
  if (scheme === null) throw new Error('the random scheme has no mode');
  const before = findings.length;
  const coverage = checkCoverage(scheme, report);
  const rowAt = new Map(
    scheme.modes.flatMap(mode => mode.rows.map(row => [row.at.range.start.offset, row.index] as const)),
  );
  const holds = new Set(
    findings
      .slice(before)
      .filter(({ rule }) => rule !== 'idle-control')
      .flatMap(finding => holdsOf(finding, rowAt)),
  );
  const lengthOf = (recipe: readonly unknown[] | null) => recipe?.length ?? -1;
  const cells = coverage.cells.map(
    ({ console, seats, standard, mode, verdict, recipe }) =>
      [
        `${console.name}|${seats.name}|${standard.name}|${mode.name}`,
        `${verdict} ${lengthOf(recipe)}`,
      ] as const,
  );
  const variations = coverage.variations.map(
    ({ console, seats, standard, variation, recipe }) =>
      [`${console.name}|${seats.name}|${standard.name}|${variation.name}`, lengthOf(recipe)] as const,
  );
  return {
    ours: { holds, cells: new Map(cells), variations: new Map(variations) },
    theirs: searchPlainly(scheme),
  };
}

/** A finding as the plain search writes it: one text for each place it holds in. */
function holdsOf(finding: Finding, rowAt: ReadonlyMap<number, number>): readonly string[] {
  const { rule, mode = '', actions, settings, players, values, variation, where } = finding;
  if (rule === 'dead-binding') {
    const row = rowAt.get(finding.at.range.start.offset);
    return row === undefined ? [] : [`${rule}|${mode}|${actions?.[0]}|row ${row}`];
  }
  const hasPlayer = rule === 'lost-action' || rule === 'behind-the-console';
  const subject = variation ?? actions?.[0] ?? settings?.[0] ?? '';
  const player = hasPlayer ? (players?.[0] ?? '') : '';
  const value = rule === 'lost-value' ? (values?.[0] ?? '') : '';
  return (where ?? []).map(place => [rule, mode, subject, player, value, ...place].join('|'));
}
