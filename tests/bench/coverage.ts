import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { checkCoverage } from '../../dist/checks/coverage.js';
import { createReport } from '../../dist/findings/report.js';
import { readScheme } from '../../dist/language/read.js';
import { median, timeOf } from './measure.js';

/** The size that coverage must bear: see `LIMITS`. */
export const COVERAGE_SIZE = {
  modes: 64,
  rows: 32,
  settings: 8,
  variations: 112,
  consoles: 5,
  seats: 4,
  standards: 3,
} as const;

/** At most: times the Markdown parse of the same text in the same run, and megabytes of the whole process. */
export const COVERAGE_LIMITS = { timesParse: 4, megabytes: 300 } as const;

export interface CoverageSpeed {
  /** Milliseconds, median of the rounds. */
  readonly parse: number;
  readonly coverage: number;
  /** `coverage` over `parse`; of the first round and of the medians. */
  readonly firstRatio: number;
  readonly ratio: number;
  /** The most that the process has held at any time up to the end of the first check (resident set). */
  readonly megabytes: number;
  readonly cells: number;
}

/**
 * Parses and checks a scheme's text some times over and compares the two.
 *
 * @param text of a scheme of `COVERAGE_SIZE` (tests/support/big-scheme.ts)
 * @param rounds at least 1
 */
export function benchCoverage(text: string, rounds = 5): CoverageSpeed {
  const parses: number[] = [];
  const checks: number[] = [];
  let cells = 0;
  let megabytes = 0;
  for (let round = 0; round < rounds; round++) {
    const scheme = readScheme([{ path: 'big.md', text }], createReport().report);
    if (scheme === null || !scheme.complete) throw new Error('the scheme of the benchmark has errors');
    checks.push(
      timeOf(() => {
        cells = checkCoverage(scheme, createReport().report).cells.length;
      }),
    );
    // Before the Markdown parse, which is only there to compare with and takes more than the check.
    if (round === 0) megabytes = process.resourceUsage().maxRSS / 1024;
    parses.push(timeOf(() => unified().use(remarkParse).use(remarkGfm).parse(text)));
  }
  return {
    parse: median(parses),
    coverage: median(checks),
    firstRatio: (checks[0] ?? 0) / (parses[0] ?? 1),
    ratio: median(checks) / median(parses),
    megabytes,
    cells,
  };
}
