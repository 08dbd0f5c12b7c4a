import { createHash, randomBytes } from 'node:crypto';
import { constants, readFileSync, rmSync } from 'node:fs';
import { copyFile, link, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { CliError, errorCode } from '../errors.js';

export interface Lock {
  release(): Promise<void>;
  /** For a process that is about to end. */
  releaseNow(): void;
}

/**
 * Takes the lock, a file at `path`, for this process. A lock whose process, of this machine, is gone is taken
 * over. Throws CliError where somebody else holds it.
 *
 * @param force take it over from whoever has it
 */
export async function takeLock(path: string, force: boolean): Promise<Lock> {
  const token = randomBytes(8).toString('hex');
  const text = JSON.stringify({ pid: process.pid, host: hostname(), token });
  const own = `${path}.${token}`;
  await sweepUnfinished(path);
  try {
    // Written aside, then linked or renamed: a lock is there with its content or not at all.
    await writeFile(own, text);
    if (force) await rename(own, path);
    else if (!(await linked(own, path))) await replaceStale(own, path);
  } finally {
    await rm(own, { force: true });
  }
  return {
    async release() {
      if ((await readText(path)) === text) await rm(path, { force: true });
    },
    releaseNow() {
      try {
        if (readFileSync(path, 'utf8') === text) rmSync(path, { force: true });
      } catch {
        // Gone already.
      }
    },
  };
}

/** What a try leaves behind whose process can’t be told is this old before another sweeps it, ms. */
const GRACE_MS = 60 * 60_000;

/** Removes what tries to take the lock have left that were killed, their claims too. */
async function sweepUnfinished(path: string): Promise<void> {
  const [folder, name] = [dirname(path), `${basename(path)}.`];
  const entries = await readdir(folder);
  for (const entry of entries.filter(one => one.startsWith(name))) {
    const file = join(folder, entry);
    if ((await isAbandoned(file)) || (await isOld(file))) await rm(file, { force: true });
  }
}

async function isAbandoned(path: string): Promise<boolean> {
  const text = await readText(path).catch(() => null);
  return text !== null && ownerOf(text) !== null && !isLive(text);
}

async function isOld(path: string): Promise<boolean> {
  const info = await stat(path).catch(() => null);
  return info !== null && Date.now() - info.mtimeMs > GRACE_MS;
}

/** True if `to` was not there and now is the same file as `from`. */
async function linked(from: string, to: string): Promise<boolean> {
  try {
    await link(from, to).catch(error => copyWhereNoLinks(error, from, to));
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    throw error;
  }
}

const NO_LINKS: readonly (string | null)[] = ['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'];

/** Memory sticks and the like have file systems without links. */
async function copyWhereNoLinks(error: unknown, from: string, to: string): Promise<void> {
  if (!NO_LINKS.includes(errorCode(error))) throw error;
  await copyFile(from, to, constants.COPYFILE_EXCL);
}

/**
 * Puts the own lock in place of a stale one. Who may replace this stale lock is settled by a claim that bears
 * its content’s hash; as only the claimant replaces it, and by renaming, there is never a moment without a lock.
 */
async function replaceStale(own: string, path: string): Promise<void> {
  const stale = await readText(path);
  if (stale === null) {
    if (await linked(own, path)) return; // let go in the meantime
    throw await busy(path);
  }
  if (isLive(stale)) throw await busy(path);
  const claim = `${path}.${createHash('sha256').update(stale).digest('hex').slice(0, 16)}.claim`;
  if (!(await linked(own, claim))) throw await busy(path);
  try {
    if ((await readText(path)) !== stale) throw await busy(path);
    await rename(own, path);
  } finally {
    await rm(claim, { force: true });
  }
}

/** Null where there is no lock. */
async function readText(path: string): Promise<string | null> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  }
}

/** Who holds a lock. */
interface Owner {
  readonly pid: number;
  readonly host: string;
}

function ownerOf(text: string): Owner | null {
  try {
    const data: unknown = JSON.parse(text);
    if (typeof data !== 'object' || data === null || !('pid' in data) || !('host' in data)) return null;
    const { pid, host } = data;
    return typeof pid === 'number' && typeof host === 'string' ? { pid, host } : null;
  } catch {
    return null;
  }
}

/** A process of another machine can’t be seen, and counts as live; a lock that names nobody does not. */
function isLive(text: string): boolean {
  const owner = ownerOf(text);
  return owner !== null && (owner.host !== hostname() || isProcess(owner.pid));
}

function isProcess(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return errorCode(error) === 'EPERM';
  }
}

async function busy(path: string): Promise<CliError> {
  const owner = ownerOf((await readText(path)) ?? '');
  const who = owner === null ? 'another process' : `process ${owner.pid} on ${owner.host}`;
  return new CliError(
    `Another build of this game is at work (${who}): wait for it, or use --force if it hangs (lock ${path}).`,
  );
}
