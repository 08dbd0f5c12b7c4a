import { createReport } from '../../dist/findings/report.js';
import type { Scheme } from '../../dist/language/model.js';
import { readScheme } from '../../dist/language/read.js';

/** The scheme of a text without faults of language; throws where it has one. */
export function readWhole(text: string): Scheme {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'bench.md', text }], report);
  if (scheme === null || !scheme.complete) {
    throw new Error(`the scheme of the benchmark has errors: ${findings[0]?.message ?? 'no mode'}`);
  }
  return scheme;
}
