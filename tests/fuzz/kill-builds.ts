import { mkdirSync, readdirSync, readFileSync, watch } from 'node:fs';
import { join } from 'node:path';
import { createRandom, type Random } from '../support/random.js';
import { type BuildFolder, createBuildFolder } from './build-folder.js';

export interface KillOptions {
  /** The folder of the project, compiled. */
  readonly root: string;
  /** How many builds are killed. */
  readonly runs: number;
  readonly seed: number;
  /** After so many killed builds one is let through; 4 if left out. */
  readonly mendEvery?: number;
}

export interface KillOutcome {
  /** What was found wrong, a line each. */
  readonly faults: readonly string[];
  /** Builds that were still at work when they were killed. */
  readonly killed: number;
  /** Of these, how many had put the new set in its place. */
  readonly placed: number;
  /** Killed while the sets changed places: the old one is whole, and the next build puts it back. */
  readonly between: number;
}

const SET = 'moth-and-lamp';

/**
 * Builds two versions of a game in turn, and kills most builds at a random moment: whatever the moment, one of
 * the two sets is there, whole, and a build that is let through leaves nothing else.
 */
export async function killBuilds({ root, runs, seed, mendEvery = 4 }: KillOptions): Promise<KillOutcome> {
  const folder = createBuildFolder(root);
  const faults: string[] = [];
  const outcome = { killed: 0, placed: 0, between: 0 };
  try {
    const whole = await writeVersions(folder, root);
    const random = createRandom(seed);
    for (let run = 0; run < runs; run++) {
      const name = run % 2 === 0 ? 'one.md' : 'two.md';
      const before = folder.setHash(SET);
      const wasKilled = await killOnce(folder, name, whole, random);
      if (wasKilled) outcome.killed++;
      const now = folder.setHash(SET);
      if (now === null) outcome.between++;
      else if (!whole.hashes.includes(now))
        faults.push(`run ${run}: the set is neither the old nor the new one`);
      else if (wasKilled && now !== before) outcome.placed++;
      if (now === null && findAside(folder) === null) faults.push(`run ${run}: the set is gone`);
      if (run % mendEvery === mendEvery - 1 || run === runs - 1)
        faults.push(...(await mend(folder, name, whole.hashes)).map(fault => `run ${run}: ${fault}`));
    }
    return { ...outcome, faults };
  } finally {
    folder.remove();
  }
}

interface Whole {
  readonly hashes: readonly (string | null)[];
  /** How long a build takes, and how long from when it begins to write the set, of the clock. */
  readonly ms: number;
  readonly writingMs: number;
}

async function writeVersions(folder: BuildFolder, root: string): Promise<Whole> {
  const text = readFileSync(join(root, 'templates', 'starter.md'), 'utf8');
  folder.write('one.md', text);
  folder.write('two.md', text.replace('Find the way to it', 'Find your way there'));
  mkdirSync(folder.out);
  const hashes: (string | null)[] = [];
  let whole = { ms: 0, writingMs: 0 };
  for (const name of ['one.md', 'two.md']) {
    const begun = performance.now();
    let writing = begun;
    const stop = whenWriting(folder, () => {
      writing = performance.now();
    });
    const { code, lines } = await folder.start('build', name, '--out', folder.out).ended;
    stop();
    if (code !== 0) throw new Error(`a build that nobody disturbed ended with ${code}: ${lines.join(' ')}`);
    whole = { ms: performance.now() - begun, writingMs: performance.now() - writing };
    hashes.push(folder.setHash(SET));
  }
  return { hashes, ...whole };
}

/** Calls once a build begins to write its set beside the old one. Returns a function that stops listening. */
function whenWriting(folder: BuildFolder, call: () => void): () => void {
  const watcher = watch(folder.out, (_, changed) => {
    if (!changed?.includes('.new-')) return;
    watcher.close();
    call();
  });
  return () => watcher.close();
}

/** Half the builds are killed at any time, half while the set is written and put in its place. */
async function killOnce(folder: BuildFolder, name: string, whole: Whole, random: Random): Promise<boolean> {
  const { child, ended } = folder.start('build', name, '--out', folder.out);
  const timers: NodeJS.Timeout[] = [];
  const killAfter = (ms: number) => void timers.push(setTimeout(() => child.kill('SIGKILL'), ms));
  const [isAnyTime, part] = [random.chance(0.5), random.next()];
  if (isAnyTime) killAfter(part * whole.ms);
  const stop = whenWriting(folder, () => {
    if (!isAnyTime) killAfter(part * whole.writingMs);
  });
  const { signal } = await ended;
  stop();
  for (const timer of timers) clearTimeout(timer);
  return signal === 'SIGKILL';
}

/** The name of a set that was caught between two places. */
function findAside(folder: BuildFolder): string | null {
  return readdirSync(folder.out).find(name => name.startsWith(`.${SET}.old-`)) ?? null;
}

/** Lets one build through; tells what is wrong after it. */
async function mend(
  folder: BuildFolder,
  name: string,
  hashes: readonly (string | null)[],
): Promise<readonly string[]> {
  const { code, lines } = await folder.start('build', name, '--out', folder.out).ended;
  const faults = code === 0 ? [] : [`a later build ended with ${code}: ${lines.at(-1)}`];
  if (folder.setHash(SET) !== hashes[name === 'one.md' ? 0 : 1])
    faults.push('a later build made another set');
  const left = folder.leftovers([SET]);
  if (left.length > 0) faults.push(`a later build left ${left.join(', ')}`);
  const browsers = folder.browsers();
  if (browsers.length > 0) faults.push(`browsers still run: ${browsers.join(', ')}`);
  return faults;
}
