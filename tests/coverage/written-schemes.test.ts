import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COVERAGE_RULES } from '../../src/findings/catalogue/coverage.js';
import { listCases, readMarked } from '../support/cases.js';
import { AWKWARD } from './awkward-schemes.js';
import { judgeBoth, wrongRecipes } from './both-opinions.js';

const ofCases = listCases()
  .filter(({ rule }) => rule in COVERAGE_RULES && rule !== 'too-many-states')
  .map(({ rule, name, folder }) => ({
    name: `${rule}/${name}`,
    text: readMarked('scheme.md', readFileSync(join(folder, 'scheme.md'), 'utf8')).file.text,
  }));

const awkward = Object.entries(AWKWARD).map(([name, text]) => ({ name, text }));

/** The check and the plain search (plain-rules.ts), on schemes that were written to be hard rather than drawn. */
describe('coverage agrees with a plain search over explicit states', () => {
  it.each([...awkward, ...ofCases])('on $name', ({ text }) => {
    const { scheme, coverage, ours, theirs } = judgeBoth(text);
    expect(scheme.complete).toBe(true);
    expect([...ours.cells]).toEqual([...theirs.cells]);
    expect([...ours.variations]).toEqual([...theirs.variations]);
    expect([...ours.losses]).toEqual([...theirs.losses]);
    expect([...ours.holds].sort()).toEqual([...theirs.holds].sort());
    expect(wrongRecipes(scheme, coverage)).toEqual([]);
  });

  it('on as many as there are', () => {
    expect(ofCases.length).toBeGreaterThan(80);
    expect(awkward.length).toBeGreaterThan(10);
  });
});
