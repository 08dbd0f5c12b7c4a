import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { canFire, judgePair } from '../../dist/checks/conflicts/pair.js';
import { checkConflicts } from '../../dist/checks/conflicts.js';
import { createReport } from '../../dist/findings/report.js';
import { bigScheme } from '../support/big-scheme.js';
import type { BrutePair } from '../support/brute-force.js';
import { momentaryPairs, programOf } from '../support/random-pairs.js';
import { scriptFor } from '../support/smt.js';
import { claimsOf } from '../support/smt-claims.js';
import { parseMarkdown } from './markdown.js';
import { ratioOf, timeOf } from './measure.js';
import { type BenchRow, ratioRow } from './row.js';
import { readWhole } from './scheme.js';

/** Times of seconds, three seats rows, two standards. */
const SIZE = {
  modes: 64,
  rows: 32,
  settings: 3,
  variations: 4,
  consoles: 3,
  seats: 3,
  standards: 2,
} as const;

/** The conflict rules against the Markdown parse of the same text. */
export async function benchConflicts(): Promise<readonly BenchRow[]> {
  const text = bigScheme(SIZE);
  // A scheme of its own for each round: nothing is kept from the one before.
  const schemes = Array.from({ length: 6 }, () => readWhole(text));
  const compared = await ratioOf(
    () => {
      const scheme = schemes.pop();
      if (scheme !== undefined) checkConflicts(scheme, createReport().report);
    },
    () => parseMarkdown(text),
    schemes.length - 1,
  );
  return [ratioRow('conflicts, 64 × 32, 3 seats rows, 2 standards, against the parse', 1, compared)];
}

const PAIRS = 60;
const READS = 12;

/** The same random pairs by the search and by Z3; nothing where the solver is not installed. */
export function benchSolver(): readonly BenchRow[] {
  const z3 = 'z3';
  if (spawnSync(z3, ['--version']).error) return [];
  const pairs = fc
    .sample(momentaryPairs(2, READS), { numRuns: 4 * PAIRS, seed: 7 })
    .filter(isLive)
    .slice(0, PAIRS);
  const programs = pairs.map(programOf);
  const script = scriptFor(pairs.flatMap(pair => claimsOf(pair, judgePair(programOf(pair)), 2 * READS + 5)));
  const search = timeOf(() => {
    for (const program of programs) judgePair(program);
  });
  const solver = timeOf(() => void spawnSync(z3, ['-in'], { input: script, maxBuffer: 1 << 26 }));
  return [
    {
      what: 'Z3 on random pairs, against the search on the same',
      value: solver / search,
      unit: '×',
      limit: { least: 20 },
      detail: `${pairs.length} pairs: ${solver.toFixed(0)} ms against ${search.toFixed(0)} ms`,
    },
  ];
}

/** True where each of the two can fire at all. */
function isLive(pair: BrutePair): boolean {
  const program = programOf(pair);
  if (program.y === null) return false;
  const holdBacks = program.holdBacks.map(hold => ({
    ...hold,
    target: hold.target === 'x' ? ('y' as const) : ('x' as const),
  }));
  return canFire(program) && canFire({ ...program, x: program.y, y: program.x, holdBacks });
}
