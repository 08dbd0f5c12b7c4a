import { readdirSync } from 'node:fs';

/** The tests that mutants are tried on: they run in one process, without a browser. */
export interface TestFile {
  /** Path from the project's root. */
  readonly path: string;
  /** The source files whose mutants it is run for. */
  readonly for: RegExp;
  /** Tests of these names are too slow to be run for thousands of mutants. */
  readonly without?: RegExp;
  /** How often at most each random property is tried: 100 where it is left out. */
  readonly runs?: number;
}

const ALL = /^src\//;
const CHECKS = /^src\/checks\//;
const CONFLICTS = /^src\/(checks\/conflicts|gestures)\//;
const COVERAGE = /^src\/(checks\/coverage|gestures)\//;
const GESTURES = /^src\/gestures\//;
const HARDWARE = /^src\/hardware\//;
const MACHINE = /^src\/(gestures|hardware)\//;

/** Every test file of these folders, a new one too. */
const FOLDERS: Readonly<Record<string, RegExp>> = {
  'tests/checks': ALL,
  'tests/conflicts': CONFLICTS,
  'tests/coverage': COVERAGE,
  'tests/gestures': GESTURES,
  'tests/hardware': HARDWARE,
  'tests/documents/bits': HARDWARE,
};

/** What is different for single files, and files of other folders; null for one that is left out. */
const FILES: Readonly<Record<string, Partial<TestFile> | null>> = {
  'tests/cases.test.ts': { for: ALL, without: /sixteen-settings-in-a-knot/ },
  'tests/language/read.test.ts': { for: MACHINE },
  // It tests src/language.
  'tests/checks/symbol.test.ts': null,
  'tests/conflicts/brute-force.test.ts': { runs: 80 },
  'tests/conflicts/clean.test.ts': { for: ALL },
  // The solver takes minutes.
  'tests/conflicts/z3.test.ts': null,
  'tests/coverage/agreement.test.ts': { runs: 20 },
  'tests/coverage/coverage.test.ts': { for: ALL },
  'tests/coverage/diagrams.test.ts': { runs: 40 },
  'tests/coverage/replay.test.ts': { runs: 20 },
  'tests/documents/bits/view.test.ts': { for: MACHINE },
  'tests/documents/report/matrix.test.ts': { for: COVERAGE },
  'tests/findings/words.test.ts': { for: CHECKS, without: /too-many-states/ },
  'tests/gestures/engine.test.ts': { runs: 80 },
  'tests/gestures/play.test.ts': { for: MACHINE },
};

/** In which order their tests run: order.ts. StrykerJS runs this in the mutated copy of the project. */
export const TEST_FILES = listTestFiles();

function listTestFiles(): readonly TestFile[] {
  const found = readdirSync('tests', { recursive: true, encoding: 'utf8' })
    .map(name => `tests/${name.replaceAll('\\', '/')}`)
    .filter(
      path => path.endsWith('.test.ts') && Object.keys(FOLDERS).some(each => path.startsWith(`${each}/`)),
    );
  return [...new Set([...found, ...Object.keys(FILES)])].sort().flatMap(path => {
    const own = FILES[path];
    const folder = path.slice(0, path.lastIndexOf('/'));
    return own === null ? [] : [{ path, for: FOLDERS[folder] ?? ALL, ...own }];
  });
}

export const isFor = (file: TestFile | undefined, source = ''): boolean => file?.for.test(source) === true;
