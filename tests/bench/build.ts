import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ratioOf } from './measure.js';
import { type BenchRow, ratioRow } from './row.js';

/** A whole build, cold and in place of one that is there, against the check of the same scheme. */
export async function benchBuild(): Promise<readonly BenchRow[]> {
  const out = mkdtempSync(join(tmpdir(), 'leverleaf-bench-'));
  const run = (...args: readonly string[]) => {
    spawnSync(process.execPath, ['dist/cli/main.js', ...args, 'schemes/kiln-yard.md']);
  };
  try {
    const check = () => run('check');
    const cold = await ratioOf(
      () => {
        rmSync(out, { recursive: true, force: true });
        run('build', '--out', out);
      },
      check,
      3,
    );
    const warm = await ratioOf(() => run('build', '--out', out), check, 3);
    return [
      ratioRow('whole build, cold, against check', null, cold),
      ratioRow('whole build over the last one, against check', null, warm),
    ];
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
}
