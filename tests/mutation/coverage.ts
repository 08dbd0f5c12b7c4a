import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { CoverageData, MutantCoverage } from '@stryker-mutator/api/core';
import { type TestResult, TestStatus } from '@stryker-mutator/api/test-runner';
import type { Bundle } from './bundle.js';
import type { KnownTest } from './order.js';
import { SWITCH_BOARD } from './switch-board.js';
import { isFor, TEST_FILES, type TestFile } from './tests.js';
import { createTrial, type Trial } from './trial.js';

export interface CoveredRun {
  readonly known: readonly KnownTest[];
  readonly results: readonly TestResult[];
  readonly coverage: MutantCoverage;
}

/** Time enough (ms) for any test without a mutant. */
const MOST_TIME = 10_000;

/**
 * Runs every test without a mutant, each in modules of its own, so that none finds ready what another has worked out
 * and kept; and counts which mutants each comes by. `sourceOf`: the path of a mutant’s source.
 */
export async function runCovered(
  root: string,
  bundle: Bundle,
  sourceOf: ReadonlyMap<string, string>,
): Promise<CoveredRun> {
  const known: KnownTest[] = [];
  const results: TestResult[] = [];
  const perTest: Record<string, CoverageData> = {};
  for (const file of TEST_FILES) {
    for (const name of namesIn(bundle, file)) {
      const { test, result, hits } = await runOne(root, bundle, file, name);
      known.push(test);
      results.push(result);
      const wanted = Object.entries(hits).filter(([id]) => isFor(file, sourceOf.get(id)));
      perTest[test.id] = Object.fromEntries(wanted);
    }
  }
  return { known, results, coverage: { static: SWITCH_BOARD.mutantCoverage.static, perTest } };
}

/** The tests of a file; only null, for all of them, where it runs the sources while it is read. */
function namesIn(bundle: Bundle, file: TestFile): readonly (string | null)[] {
  const trial = begin(bundle);
  SWITCH_BOARD.currentTestId = file.path;
  const names = trial.read(file.path).tests.map(({ name }) => name);
  if (Object.keys(SWITCH_BOARD.mutantCoverage.perTest[file.path] ?? {}).length > 0) return [null];
  return names.filter(name => file.without?.test(name) !== true);
}

function begin(bundle: Bundle): Trial {
  SWITCH_BOARD.currentTestId = undefined;
  SWITCH_BOARD.mutantCoverage = { static: {}, perTest: {} };
  const instance = bundle();
  instance.readSources();
  return createTrial(instance);
}

async function runOne(
  root: string,
  bundle: Bundle,
  file: TestFile,
  name: string | null,
): Promise<{ test: KnownTest; result: TestResult; hits: CoverageData }> {
  const { path } = file;
  const id = name === null ? path : `${path} > ${name}`;
  const trial = begin(bundle);
  SWITCH_BOARD.currentTestId = id;
  const before = performance.now();
  const failure = await trial.run([{ id, path, name, time: MOST_TIME }]);
  const time = performance.now() - before;
  await trial.end();
  const shared = {
    id,
    name: name ?? path,
    timeSpentMs: Math.ceil(time),
    fileName: join(root, placeOf(root, file, name)),
  };
  const result: TestResult =
    failure === null
      ? { ...shared, status: TestStatus.Success }
      : { ...shared, status: TestStatus.Failed, failureMessage: failure.message };
  return { test: { id, path, name, time }, result, hits: SWITCH_BOARD.mutantCoverage.perTest[id] ?? {} };
}

/** The file that makes a test what it is: for a case its scheme, so that a later run sees which cases are new. */
function placeOf(root: string, { path }: TestFile, name: string | null): string {
  const [, rule, own] = /^rule (\S+) > (\S+)$/.exec(name ?? '') ?? [];
  const scheme = `tests/cases/${rule}/${own}/scheme.md`;
  return existsSync(join(root, scheme)) ? scheme : path;
}
