/** `npm run fuzz`: examines random schemes in two processes, or with `--faults` kills builds at random moments. */
import { fork } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { createCases } from './generate.js';
import type { FuzzJob, FuzzResult } from './jobs.js';
import { killBuilds } from './kill-builds.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const USAGE =
  'usage: npm run fuzz -- [--runs 20000] [--seed 1] [--workers 2]\n       npm run fuzz -- --faults [--runs 200] [--seed 1]';

/** A worker that says nothing for so long hangs, ms of the clock; twenty times what a check may take on a busy machine. */
const SILENCE_MS = 40_000;
const SEEDS_IN_JOB = 25;

interface Fuzzed {
  runs: number;
  findings: number;
  slowest: { readonly seed: number; readonly ms: number };
  readonly failed: Map<number, readonly string[]>;
}

process.exitCode = await main();

async function main(): Promise<number> {
  const wish = readWish();
  if (wish === null) {
    console.error(USAGE);
    return 2;
  }
  return wish.faults
    ? runFaults(wish.runs ?? 200, wish.seed)
    : runFuzz(wish.runs ?? 20_000, wish.seed, wish.workers);
}

function readWish() {
  try {
    const { values } = parseArgs({
      options: {
        runs: { type: 'string' },
        seed: { type: 'string', default: '1' },
        workers: { type: 'string', default: String(Math.max(1, Math.min(2, cpus().length))) },
        faults: { type: 'boolean', default: false },
      },
    });
    const runs = values.runs === undefined ? undefined : Number(values.runs);
    const wish = { runs, seed: Number(values.seed), workers: Number(values.workers), faults: values.faults };
    const isSound = [wish.runs ?? 1, wish.seed, wish.workers].every(
      number => Number.isSafeInteger(number) && number > 0,
    );
    return isSound ? wish : null;
  } catch {
    return null;
  }
}

async function runFuzz(runs: number, firstSeed: number, workers: number): Promise<number> {
  const begun = performance.now();
  const fuzzed: Fuzzed = { runs: 0, findings: 0, slowest: { seed: 0, ms: 0 }, failed: new Map() };
  const nextJob = createJobs(firstSeed, runs);
  await Promise.all(Array.from({ length: workers }, () => work(nextJob, fuzzed)));
  const seconds = (performance.now() - begun) / 1000;
  keepFailed(fuzzed);
  const { slowest, failed, findings } = fuzzed;
  console.log(
    `fuzz: ${fuzzed.runs} runs from seed ${firstSeed} in ${seconds.toFixed(0)} s (${(fuzzed.runs / seconds).toFixed(0)} a second, ${workers} processes), ${findings} findings, slowest check ${slowest.ms.toFixed(0)} ms of CPU (seed ${slowest.seed}), ${failed.size} failed`,
  );
  return failed.size > 0 || fuzzed.runs !== runs ? 1 : 0;
}

function createJobs(firstSeed: number, runs: number): () => FuzzJob | null {
  let done = 0;
  return () => {
    if (done >= runs) return null;
    const count = Math.min(SEEDS_IN_JOB, runs - done);
    const seeds = Array.from({ length: count }, (_, index) => firstSeed + done + index);
    done += count;
    return { seeds };
  };
}

/** Keeps one worker process busy until there are no jobs; one that ends or hangs is a failure, and replaced. */
async function work(nextJob: () => FuzzJob | null, fuzzed: Fuzzed): Promise<void> {
  let rest: readonly number[] = [];
  for (;;) {
    const left = await workOnce(rest, nextJob, fuzzed);
    if (left === null) return;
    rest = left;
  }
}

/** Resolves with the seeds of its job that are left when the process is lost; null when all is done. */
function workOnce(
  first: readonly number[],
  nextJob: () => FuzzJob | null,
  fuzzed: Fuzzed,
): Promise<readonly number[] | null> {
  const script = fileURLToPath(new URL('worker.ts', import.meta.url));
  const child = fork(script, [root, join(root, 'templates')], {
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    // Less time goes into collecting what a check leaves behind.
    execArgv: ['--max-semi-space-size=32', '--import', 'tsx'],
  });
  let rest = first;
  let isDone = false;
  let watchdog = setTimeout(() => child.kill('SIGKILL'), SILENCE_MS);
  return new Promise(settle => {
    child.on('message', (result: FuzzResult) => {
      clearTimeout(watchdog);
      watchdog = setTimeout(() => child.kill('SIGKILL'), SILENCE_MS);
      if (result.kind === 'done') {
        rest = rest.slice(1);
        note(result, fuzzed);
      } else if (result.kind === 'free') {
        const job = rest.length > 0 ? { seeds: rest } : nextJob();
        if (job === null) {
          isDone = true;
          child.disconnect();
        } else {
          rest = job.seeds;
          child.send(job);
        }
      }
    });
    child.on('exit', (code, signal) => {
      clearTimeout(watchdog);
      if (isDone) return settle(null);
      const [lost, ...left] = rest;
      if (lost !== undefined)
        fail(lost, [`its process ended (${signal ?? `code ${code}`}): a crash or a hang`], fuzzed);
      settle(left);
    });
  });
}

function note({ seed, faults, ms, findings }: FuzzResult & { readonly kind: 'done' }, fuzzed: Fuzzed): void {
  fuzzed.findings += findings;
  if (ms > fuzzed.slowest.ms) fuzzed.slowest = { seed, ms };
  if (faults.length > 0) fail(seed, faults, fuzzed);
  else fuzzed.runs++;
}

function fail(seed: number, faults: readonly string[], fuzzed: Fuzzed): void {
  fuzzed.runs++;
  fuzzed.failed.set(seed, faults);
  console.log(`seed ${seed}: ${faults.slice(0, 3).join('\n  ')}`);
}

/** Writes the schemes that failed to reports/fuzz/failed/, so that they can be made into cases. */
function keepFailed({ failed }: Fuzzed): void {
  if (failed.size === 0) return;
  const folder = join(root, 'reports', 'fuzz', 'failed');
  mkdirSync(folder, { recursive: true });
  const makeCase = createCases(root);
  for (const [seed, faults] of failed) {
    const { files, changed } = makeCase(seed);
    writeFileSync(join(folder, `${seed}.json`), JSON.stringify({ seed, faults, files, changed }, null, 1));
  }
  console.log(`the failed cases are in ${folder}`);
}

async function runFaults(runs: number, seed: number): Promise<number> {
  const begun = performance.now();
  const { faults, killed, placed } = await killBuilds({ root, runs, seed });
  const seconds = (performance.now() - begun) / 1000;
  for (const fault of faults) console.log(fault);
  console.log(
    `faults: ${runs} builds, ${killed} killed (${placed} of them after the new set was in place), in ${seconds.toFixed(0)} s, ${faults.length} failed`,
  );
  return faults.length > 0 ? 1 : 0;
}
