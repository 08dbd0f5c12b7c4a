import { describe, expect, it } from 'vitest';
import { checkCoverage } from '../../src/checks/coverage.js';
import { createReport } from '../../src/findings/report.js';
import { readScheme } from '../../src/language/read.js';
import { AWKWARD } from './awkward-schemes.js';

type IsUsable = NonNullable<Parameters<typeof checkCoverage>[3]>;

const { report } = createReport();
const scheme = readScheme(
  [{ path: 'scheme.md', text: AWKWARD['a flip that leaves the mode'] ?? '' }],
  report,
);
if (scheme === null) throw new Error('nothing was read');

/** Where Grove can be reached, of six-switch, four-switch and no-difficulty. */
const reachedWith = (isUsable: IsUsable | null) =>
  checkCoverage(scheme, createReport().report, {}, isUsable)
    .cells.filter(({ mode, recipe }) => mode.name === 'Grove' && recipe !== null)
    .map(({ console }) => console.name);

describe('which bindings fire', () => {
  it('is asked anew each time, though the scheme is the same', () => {
    const all = reachedWith(null);
    expect(all.length).toBeGreaterThan(0);
    expect(reachedWith(() => true)).toEqual(all);
    expect(reachedWith(({ actionName }) => actionName !== 'Begin')).toEqual([]);
    expect(reachedWith(() => true)).toEqual(all);
    expect(reachedWith(null)).toEqual(all);
    expect(reachedWith(() => false)).toEqual([]);
  });
});
