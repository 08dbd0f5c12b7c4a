import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fail, runNode, runNpm, say } from './run.mjs';

/**
 * Runs `npm run check` and the tests; with arguments (file names, vitest options) only those tests. The last
 * line is always `tests: N passed, N failed, N skipped`. Returns the exit code.
 */
export function runTests(args, environment = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'leverleaf-tests-'));
  const summary = join(folder, 'summary.txt');
  try {
    const checked = args.length === 0 ? runCheck() : 0;
    say('running the tests …');
    const tested = runNode(
      ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts', ...args],
      { ...environment, LEVERLEAF_TEST_SUMMARY: summary },
    );
    if (checked !== 0) fail('types, lint, format or dead code are not in order (npm run check, see above).');
    console.log(readSummary(summary));
    return checked || tested;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function runCheck() {
  say('checking types, lint, format and dead code …');
  return runNpm(['run', '--silent', 'check']);
}

function readSummary(path) {
  try {
    return readFileSync(path, 'utf8').trimEnd();
  } catch {
    return 'The test runner itself failed (see above).\ntests: 0 passed, 1 failed, 0 skipped';
  }
}
