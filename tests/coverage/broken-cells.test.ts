import { describe, expect, it } from 'vitest';
import { checkCoverage } from '../../src/checks/coverage.js';
import { createReport } from '../../src/findings/report.js';
import { readScheme } from '../../src/language/read.js';
import { AWKWARD } from './awkward-schemes.js';

describe('a broken cell', () => {
  it('says each thing that breaks it: what concerns a setting in every mode, an action in its own', () => {
    const text = AWKWARD['one console, which lacks what is needed'] ?? '';
    const { report } = createReport();
    const scheme = readScheme([{ path: 'scheme.md', text }], report);
    if (scheme === null) throw new Error('nothing was read');
    const { cells } = checkCoverage(scheme, report);
    const wind = 'nothing is said about “Wind” without the left difficulty switch';
    const whistle = 'nothing is said about “Whistle” without the right difficulty switch';
    expect(cells.map(({ mode, verdict, reasons }) => [mode.name, verdict, ...reasons])).toEqual([
      ['Title', 'broken', wind],
      ['Grove', 'broken', wind, whistle],
    ]);
  });
});
