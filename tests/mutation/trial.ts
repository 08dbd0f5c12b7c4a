import type { Instance } from './bundle.js';
import { guarded, TookTooLongError } from './guard.js';
import type { KnownTest } from './order.js';
import { ENOUGH, limitRuns } from './packages.js';
import { LEFT_OUT, type NotedFile, noteTests } from './stand-in.js';
import { TEST_FILES } from './tests.js';

/** The tests of one instance: each file is read when one of its tests is first wanted. */
export interface Trial {
  readonly read: (path: string) => NotedFile;
  /** Runs tests up to the first that fails; null where none does. */
  readonly run: (tests: readonly KnownTest[]) => Promise<Failure | null>;
  readonly end: () => Promise<void>;
}

export interface Failure {
  readonly test: KnownTest;
  readonly message: string;
  /** Null where it did not take too long; `waiting` where this process did little in that time. */
  readonly tookTooLong: 'busy' | 'waiting' | null;
}

/** Time that tests may take together: this much (ms), and so many times what they took without a mutant. */
const LEAST_TIME = 1000;
const TIMES = 3;
/** Tests share a watch over their time as long as they took less than this together (ms): each takes half of one. */
const SHARED_TIME = 150;
const LONGEST_MESSAGE = 300;

/** `patience`: by how much more time than usual tests may take. */
export function createTrial(instance: Instance, patience = 1): Trial {
  const files = new Map<string, NotedFile>();
  const read = (path: string): NotedFile => {
    const known = files.get(path) ?? noteTests(instance.tests[path] ?? missing(path));
    files.set(path, known);
    return known;
  };
  return {
    read,
    run: async tests => {
      for (const group of groupsOf(tests)) {
        const failure = await runWatched(read, group, patience);
        if (failure !== null) return failure;
      }
      return null;
    },
    end: async () => {
      for (const { clearAway } of files.values()) for (const body of clearAway) await body();
    },
  };
}

const missing = (path: string) => (): never => {
  throw new Error(`${path} is not in the bundle`);
};

const timeOf = (tests: readonly KnownTest[]): number => tests.reduce((sum, { time }) => sum + time, 0);

function groupsOf(tests: readonly KnownTest[]): readonly (readonly KnownTest[])[] {
  const groups: KnownTest[][] = [];
  for (const test of tests) {
    const last = groups.at(-1);
    if (last !== undefined && timeOf([...last, test]) < SHARED_TIME) last.push(test);
    else groups.push([test]);
  }
  return groups;
}

/** What is still going on when a test has returned is waited for after the last. */
async function runWatched(
  read: Trial['read'],
  tests: readonly KnownTest[],
  patience: number,
): Promise<Failure | null> {
  const timeout = Math.ceil(patience * (LEAST_TIME + TIMES * timeOf(tests)));
  const before = process.cpuUsage();
  const goingOn: { test: KnownTest; results: readonly unknown[] }[] = [];
  let [running] = tests;
  try {
    guarded(() => {
      for (const test of tests) {
        running = test;
        goingOn.push({ test, results: begin(read, test) });
      }
    }, timeout);
    for (const { test, results } of goingOn) {
      running = test;
      await Promise.all(results);
    }
    return null;
  } catch (error) {
    if (running === undefined) throw error;
    const { user, system } = process.cpuUsage(before);
    const pace = (user + system) / 1000 > timeout / 2 ? 'busy' : 'waiting';
    const tookTooLong = error instanceof TookTooLongError ? pace : null;
    return { test: running, message: messageOf(error), tookTooLong };
  }
}

/** What the test returned; of a whole file, what each of its tests did. */
function begin(read: Trial['read'], { path, name }: KnownTest): readonly unknown[] {
  limitRuns(TEST_FILES.find(file => file.path === path)?.runs ?? 100);
  const { tests } = read(path);
  const wanted = name === null ? tests : tests.filter(test => test.name === name);
  if (wanted.length === 0) throw new Error('There is no test.');
  return wanted.map(({ run }) => {
    try {
      return run();
    } catch (error) {
      if (error === ENOUGH || error === LEFT_OUT) return null;
      throw error;
    }
  });
}

export function messageOf(error: unknown): string {
  return String(error instanceof Error ? error.message : error).slice(0, LONGEST_MESSAGE);
}
