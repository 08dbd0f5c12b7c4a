import { spawnSync } from 'node:child_process';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { judgePair } from '../../dist/checks/conflicts/pair.js';
import type { Program } from '../../dist/checks/conflicts/program.js';
import { checkConflicts } from '../../dist/checks/conflicts.js';
import { createReport } from '../../dist/findings/report.js';
import { readScheme } from '../../dist/language/read.js';
import { median, timeOf } from './measure.js';

/** The size that the check’s speed is stated for: times of seconds, three seats rows, two standards. */
export const CONFLICTS_SIZE = {
  modes: 64,
  rows: 32,
  settings: 3,
  variations: 4,
  consoles: 3,
  seats: 3,
  standards: 2,
} as const;

/** At most times the Markdown parse of the same text in the same run; at least times faster than the solver. */
export const CONFLICTS_LIMITS = { timesParse: 1, timesSolver: 20 } as const;

export interface ConflictsSpeed {
  /** Milliseconds, median of the rounds. */
  readonly parse: number;
  readonly conflicts: number;
  /** `conflicts` over `parse`; of the first round and of the medians. */
  readonly firstRatio: number;
  readonly ratio: number;
  readonly findings: number;
}

/**
 * Parses and checks a scheme’s text some times over and compares the two.
 *
 * @param text of a scheme of `CONFLICTS_SIZE` (tests/support/big-scheme.ts)
 * @param rounds at least 1
 */
export function benchConflicts(text: string, rounds = 5): ConflictsSpeed {
  const parses: number[] = [];
  const checks: number[] = [];
  let count = 0;
  for (let round = 0; round < rounds; round++) {
    parses.push(timeOf(() => unified().use(remarkParse).use(remarkGfm).parse(text)));
    // A scheme of its own for each round: nothing is kept from the one before.
    const scheme = readScheme([{ path: 'big.md', text }], createReport().report);
    if (scheme === null || !scheme.complete) throw new Error('the scheme of the benchmark has errors');
    const { report, findings } = createReport();
    checks.push(timeOf(() => checkConflicts(scheme, report)));
    count = findings.length;
  }
  return {
    parse: median(parses),
    conflicts: median(checks),
    firstRatio: (checks[0] ?? 0) / (parses[0] ?? 1),
    ratio: median(checks) / median(parses),
    findings: count,
  };
}

export interface SolverSpeed {
  readonly pairs: number;
  /** Milliseconds for all pairs. */
  readonly search: number;
  readonly solver: number;
  /** `solver` over `search`. */
  readonly ratio: number;
}

/**
 * The same pairs by the search and by Z3.
 *
 * @param programs pairs of bindings (tests/support/random-pairs.ts)
 * @param script what the rules rest on for the same pairs (tests/support/smt-claims.ts)
 * @param z3 path of the solver
 */
export function benchSolver(programs: readonly Program[], script: string, z3: string): SolverSpeed {
  const search = timeOf(() => programs.forEach(program => void judgePair(program)));
  const solver = timeOf(() => {
    const { error } = spawnSync(z3, ['-in'], { input: script, maxBuffer: 1 << 26 });
    if (error) throw error;
  });
  return { pairs: programs.length, search, solver, ratio: solver / search };
}
