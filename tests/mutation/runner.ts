import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import {
  type DryRunResult,
  DryRunStatus,
  determineHitLimitReached,
  type MutantRunOptions,
  type MutantRunResult,
  MutantRunStatus,
  type TestRunner,
} from '@stryker-mutator/api/test-runner';
import '../support/seed.js';
import { type Bundle, makeBundle, mutantsIn } from './bundle.js';
import { runCovered } from './coverage.js';
import { guarded } from './guard.js';
import { type Kills, type KnownTest, noteKill, orderTests } from './order.js';
import { SWITCH_BOARD } from './switch-board.js';
import { isFor, TEST_FILES } from './tests.js';
import { createTrial, type Failure, messageOf, type Trial } from './trial.js';

/** Time that the modules of the sources may take to be read, in ms. */
const LONGEST_READ = 5000;

/** How much more time the tests get where the process did little in the time that was up. */
const MORE_PATIENCE = 5;

/**
 * Runs the tests in this process. For each mutant sources and tests are read anew, from a script that is ready
 * compiled: so nothing is left of the mutant before, and a mutant in a table of a module is like any other.
 * `root` is the folder of the mutated copy.
 */
export async function createWarmRunner(
  root: string,
): Promise<Required<Pick<TestRunner, 'dryRun' | 'mutantRun'>>> {
  const sources = mutatedSources(root);
  const tests = TEST_FILES.map(({ path }) => path);
  const make = (counts: boolean) => makeBundle({ root, sources: [...sources.keys()], tests, counts });
  const bundle = await make(false);
  const kills: Kills = new Map();
  return {
    dryRun: async () => {
      const sourceOf = new Map([...sources].flatMap(([path, ids]) => ids.map(id => [id, path] as const)));
      const { known, results, coverage } = await runCovered(root, await make(true), sourceOf);
      noteTests(root, known);
      return {
        status: DryRunStatus.Complete,
        tests: [...results],
        mutantCoverage: coverage,
      } satisfies DryRunResult;
    },
    mutantRun: async options => {
      const source = relative(root, options.sandboxFileName).replaceAll('\\', '/');
      const wanted = orderTests(wantedTests(notedTests(root), options, source), kills, source);
      const result = await runMutant(bundle, wanted, options);
      if (result.status === MutantRunStatus.Killed)
        for (const id of result.killedBy) noteKill(kills, source, id);
      return result;
    },
  };
}

/** By path from the root, the numbers of the mutants in each mutated source. */
function mutatedSources(root: string): ReadonlyMap<string, readonly string[]> {
  const paths = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .filter(path => path.endsWith('.ts'))
    .map(path => `src/${path.replaceAll('\\', '/')}`)
    .sort();
  const found = paths.map(path => [path, mutantsIn(readFileSync(join(root, path), 'utf8'))] as const);
  return new Map(found.filter(([, ids]) => ids.length > 0));
}

function wantedTests(
  tests: readonly KnownTest[],
  { testFilter }: MutantRunOptions,
  source: string,
): readonly KnownTest[] {
  const wanted = testFilter && new Set(testFilter);
  if (wanted) return tests.filter(({ id }) => wanted.has(id));
  return tests.filter(({ path }) =>
    isFor(
      TEST_FILES.find(file => file.path === path),
      source,
    ),
  );
}

async function runMutant(
  bundle: Bundle,
  tests: readonly KnownTest[],
  options: MutantRunOptions,
  patience = 1,
): Promise<MutantRunResult> {
  const { activeMutant, mutantActivation, hitLimit, disableBail } = options;
  const instance = bundle();
  Object.assign(SWITCH_BOARD, { currentTestId: undefined, hitCount: 0, hitLimit });
  SWITCH_BOARD.activeMutant = mutantActivation === 'static' ? activeMutant.id : undefined;
  try {
    guarded(instance.readSources, LONGEST_READ);
  } catch (error) {
    const killedBy = tests.slice(0, 1).map(({ id }) => id);
    return { status: MutantRunStatus.Killed, killedBy, failureMessage: messageOf(error), nrOfTests: 1 };
  }
  SWITCH_BOARD.activeMutant = activeMutant.id;
  const trial = createTrial(instance, patience);
  const failures = await runTests(trial, tests, disableBail);
  await trial.end();
  const slow = failures.find(({ tookTooLong }) => tookTooLong !== null);
  // Where other programs had the processor all that time it is tried again.
  if (slow?.tookTooLong === 'waiting' && patience === 1)
    return runMutant(bundle, tests, options, MORE_PATIENCE);
  return judge(slow, failures, tests.length, hitLimit);
}

async function runTests(
  trial: Trial,
  tests: readonly KnownTest[],
  goesOn: boolean,
): Promise<readonly Failure[]> {
  const failures: Failure[] = [];
  let left = tests;
  while (left.length > 0) {
    const failure = await trial.run(left);
    if (failure === null) break;
    failures.push(failure);
    left = goesOn && failure.tookTooLong === null ? left.slice(left.indexOf(failure.test) + 1) : [];
  }
  return failures;
}

function judge(
  slow: Failure | undefined,
  failures: readonly Failure[],
  nrOfTests: number,
  hitLimit: number | undefined,
): MutantRunResult {
  const [first] = failures;
  if (first === undefined) return { status: MutantRunStatus.Survived, nrOfTests };
  if (slow !== undefined || determineHitLimitReached(SWITCH_BOARD.hitCount, hitLimit)) {
    const { test, message } = slow ?? first;
    return { status: MutantRunStatus.Timeout, reason: `${test.id}: ${message}` };
  }
  const killedBy = failures.map(({ test }) => test.id);
  return { status: MutantRunStatus.Killed, killedBy, failureMessage: first.message, nrOfTests };
}

/** Where a process that takes the place of another finds the tests. */
const NOTED = '.tests-without-mutants.json';

function noteTests(root: string, tests: readonly KnownTest[]): void {
  writeFileSync(join(root, NOTED), JSON.stringify(tests));
  noted = tests;
}

let noted: readonly KnownTest[] | null = null;

function notedTests(root: string): readonly KnownTest[] {
  noted ??= JSON.parse(readFileSync(join(root, NOTED), 'utf8')) as readonly KnownTest[];
  return noted;
}
