/**
 * `npm run bench`: one table of ratios, each against its floor in the same run. The machine's own speed and load
 * weigh on both sides; absolute times are only there to tell what was measured. `-- --keep` writes RESULTS.md.
 */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { benchBuild } from './build.js';
import { benchCheck, benchGrowth, benchStart } from './check.js';
import { benchConflicts, benchSolver } from './conflicts.js';
import { benchCoverage, benchPlainSearch } from './coverage.js';
import { benchPrint } from './print.js';
import { benchReadingRoutine } from './reading-routine.js';
import type { BenchRow } from './row.js';

const BENCHES: readonly (() => Promise<readonly BenchRow[]> | readonly BenchRow[])[] = [
  benchCoverage,
  benchCheck,
  benchConflicts,
  benchSolver,
  benchPlainSearch,
  benchGrowth,
  benchStart,
  benchPrint,
  benchBuild,
  benchReadingRoutine,
];

const rows: BenchRow[] = [];
for (const bench of BENCHES) {
  for (const row of await bench()) {
    rows.push(row);
    process.stdout.write(`${lineOf(row)}\n`);
  }
}
if (process.argv.includes('--keep')) keep(rows);

function lineOf({ what, value, unit, limit, detail }: BenchRow): string {
  const verdict = limit === null ? '' : `${isMet({ value, limit }) ? 'within' : 'OVER'} ${limitText(limit)}`;
  return [what.padEnd(64), `${format(value)} ${unit}`.padStart(14), verdict.padEnd(20), detail].join('  ');
}

type Limit = NonNullable<BenchRow['limit']>;

function isMet({ value, limit }: { readonly value: number; readonly limit: Limit }): boolean {
  return 'most' in limit ? value <= limit.most : value >= limit.least;
}

function limitText(limit: Limit): string {
  return 'most' in limit ? `≤ ${limit.most}` : `≥ ${limit.least}`;
}

function format(value: number): string {
  return value.toFixed(value >= 100 ? 0 : value >= 0.1 ? 2 : 3);
}

function keep(results: readonly BenchRow[]): void {
  const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim();
  const date = new Date().toISOString().slice(0, 10);
  const lines = results.map(
    ({ what, value, unit, limit, detail }) =>
      `| ${what} | ${format(value)} ${unit} | ${limit === null ? '—' : limitText(limit)} | ${detail} |`,
  );
  const text = `# Last kept results\n\n${date}, commit ${commit}. Made by \`npm run bench -- --keep\`; ratios are within one run.\n\n| What | Result | Bound | Measured |\n| --- | --- | --- | --- |\n${lines.join('\n')}\n`;
  writeFileSync(new URL('RESULTS.md', import.meta.url), text);
}
