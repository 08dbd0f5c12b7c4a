import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkCoverage } from '../../src/checks/coverage.js';
import type { Finding } from '../../src/findings/finding.js';
import { createReport } from '../../src/findings/report.js';
import type { Scheme } from '../../src/language/model.js';
import { readScheme } from '../../src/language/read.js';
import { searchPlainly } from './plain-rules.js';
import { randomScheme } from './random-scheme.js';

/**
 * What a cell says besides its verdict, held against what the plain search (plain-rules.ts) finds wrong there, and
 * the lists of places in findings, held against the scheme's order.
 */
describe('on random schemes', () => {
  test('cells name the actions and values that are lost there, and a reason for each verdict but plays', () => {
    let [actions, values] = [0, 0];
    fc.assert(
      fc.property(randomScheme, text => {
        const { scheme, coverage } = check(text);
        const lost = lossesOf(scheme);
        for (const { console: profile, seats, standard, mode, ...cell } of coverage.cells) {
          const place = `${profile.name}|${seats.name}|${standard.name}`;
          const isOffered = cell.verdict !== 'not offered';
          const wanted = (key: string): readonly string[] => (isOffered ? (lost.get(key) ?? []) : []);
          const lostValues = cell.lostValues.map(({ setting, value }) => `${setting.name}: ${value}`);
          expect([...cell.lostActions].sort()).toEqual(wanted(`${place}|${mode.name}`));
          expect([...lostValues].sort()).toEqual(wanted(place));
          expect(cell.reasons.length > 0).toBe(cell.verdict === 'altered' || cell.verdict === 'broken');
          expect(cell.reasons.filter(reason => reason.trim() === '')).toEqual([]);
          expect(new Set(cell.reasons).size).toBe(cell.reasons.length);
          actions += cell.lostActions.length;
          values += lostValues.length;
        }
      }),
      { numRuns: 40 },
    );
    expect(actions).toBeGreaterThan(20);
    expect(values).toBeGreaterThan(20);
  });

  test('findings list where they hold in the order of the scheme, each place once', () => {
    let listed = 0;
    fc.assert(
      fc.property(randomScheme, text => {
        const { scheme, findings } = check(text);
        for (const finding of findings) {
          if (finding.where === undefined) continue;
          expectOrder(finding, scheme);
          if (finding.where.length > 1) listed++;
        }
      }),
      { numRuns: 25 },
    );
    expect(listed).toBeGreaterThan(20);
  });
});

function check(text: string) {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'test.md', text }], report);
  if (scheme === null) throw new Error('the random scheme has no mode');
  const before = findings.length;
  const coverage = checkCoverage(scheme, report);
  return { scheme, coverage, findings: findings.slice(before) };
}

/** By `console|seats|standard|mode` the lost actions, by `console|seats|standard` the lost values, in rising order. */
function lossesOf(scheme: Scheme): ReadonlyMap<string, readonly string[]> {
  const losses = new Map<string, Set<string>>();
  for (const hold of searchPlainly(scheme).holds) {
    const [rule, mode, subject = '', , value, ...place] = hold.split('|');
    if (rule !== 'lost-action' && rule !== 'lost-value') continue;
    const key = [...place, ...(rule === 'lost-action' ? [mode] : [])].join('|');
    const name = rule === 'lost-action' ? subject : `${subject}: ${value}`;
    losses.set(key, (losses.get(key) ?? new Set()).add(name));
  }
  return new Map([...losses].map(([key, names]) => [key, [...names].sort()]));
}

function expectOrder({ where = [], consoles, seats, standards }: Finding, scheme: Scheme): void {
  const names = (list: readonly { readonly name: string }[]) => list.map(({ name }) => name);
  const all = names(scheme.consoles).flatMap(profile =>
    names(scheme.seats).flatMap(row =>
      names(scheme.standards).map(standard => [profile, row, standard] as const),
    ),
  );
  const said = new Set(where.map(place => place.join('|')));
  expect(where).toEqual(all.filter(place => said.has(place.join('|'))));
  expect(consoles).toEqual(names(scheme.consoles).filter(name => where.some(([each]) => each === name)));
  expect(seats).toEqual(names(scheme.seats).filter(name => where.some(([, each]) => each === name)));
  expect(standards).toEqual(
    names(scheme.standards).filter(name => where.some(([, , each]) => each === name)),
  );
}
