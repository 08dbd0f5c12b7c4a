import { randomBytes } from 'node:crypto';
import { rmSync } from 'node:fs';
import { cp, mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { constants } from 'node:os';
import { join } from 'node:path';
import type { BuiltFile } from '../../documents/document.js';
import { CliError, errorCode } from '../errors.js';
import { takeLock } from './lock.js';

/**
 * The folder of one game's set, and its hidden neighbours while a build is at work:
 *
 *     out/
 *       lantern-harbour/            the last good set
 *       .lantern-harbour.lock       who is building
 *       .lantern-harbour.new-…/     the set that is being written
 *       .lantern-harbour.old-…/     the one before, for the moment in which they change places
 */
export interface SetFolder {
  /** `out/lantern-harbour` */
  readonly path: string;
  /** Puts a complete set in place of the one before. */
  replace(files: readonly BuiltFile[]): Promise<void>;
  /** Puts a set in place that has these files new, lacks those that they have outdated, and is else as the one before. */
  update(files: readonly BuiltFile[], outdated: readonly string[]): Promise<void>;
  close(): Promise<void>;
}

/**
 * Takes the folder for this process until `close`, and first mends what a killed build has left. Throws
 * CliError where another build has it, or where the folder was not made by a build and `force` is not set.
 *
 * @param out the folder of all sets; made if it is not there
 * @param name a plain name, see `folderName`
 */
export async function openSetFolder(out: string, name: string, force: boolean): Promise<SetFolder> {
  await mkdir(out, { recursive: true });
  const path = join(out, name);
  const lock = await takeLock(join(out, `.${name}.lock`), force);
  const aside = (kind: Kind) =>
    join(out, `.${name}.${kind}-${process.pid}-${randomBytes(4).toString('hex')}`);
  const staging = aside('new');
  const stopWatching = onProcessEnd(() => {
    rmSync(staging, { recursive: true, force: true });
    lock.releaseNow();
  });
  const close = async () => {
    stopWatching();
    await rm(staging, { recursive: true, force: true });
    await lock.release();
  };
  try {
    await recover(out, name);
    if (!force) await requireOwn(path);
  } catch (error) {
    await close();
    throw error;
  }
  return {
    path,
    async replace(files) {
      await writeFiles(staging, files);
      await swap(staging, path, aside('old'));
    },
    async update(files, outdated) {
      const gone = new Set(
        [...files.map(({ name: file }) => file), ...outdated].map(file => join(path, file)),
      );
      if (await exists(path)) await cp(path, staging, { recursive: true, filter: from => !gone.has(from) });
      await writeFiles(staging, files);
      await swap(staging, path, aside('old'));
    },
    close,
  };
}

type Kind = 'new' | 'old';

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Runs `clear` when the process ends or is told to end. Returns a function that undoes this. */
function onProcessEnd(clear: () => void): () => void {
  // Exit as a shell would report it; whoever listens to the exit clears up as well.
  const end = (signal: NodeJS.Signals) => process.exit(128 + constants.signals[signal]);
  process.once('exit', clear);
  for (const signal of SIGNALS) process.once(signal, end);
  return () => {
    process.off('exit', clear);
    for (const signal of SIGNALS) process.off(signal, end);
  };
}

async function writeFiles(folder: string, files: readonly BuiltFile[]): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const { name, content } of files) {
    if (!/^[a-z0-9][a-z0-9.-]*$/.test(name)) throw new RangeError(`${name} is no plain file name`);
    await writeFile(join(folder, name), content, { flag: 'wx' });
  }
}

async function swap(next: string, path: string, aside: string): Promise<void> {
  const isThere = await exists(path);
  if (isThere) await rename(path, aside);
  try {
    await rename(next, path);
  } catch (error) {
    if (isThere) await rename(aside, path);
    throw error;
  }
  await rm(aside, { recursive: true, force: true });
}

/** Whoever made these is gone, as we hold the lock: the set is put back if it was caught between two places. */
async function recover(out: string, name: string): Promise<void> {
  const entries = await readdir(out);
  const left = (kind: Kind) => entries.filter(entry => entry.startsWith(`.${name}.${kind}-`));
  for (const old of left('old')) {
    if (await exists(join(out, name))) await rm(join(out, old), { recursive: true, force: true });
    else await rename(join(out, old), join(out, name));
  }
  for (const unfinished of left('new')) await rm(join(out, unfinished), { recursive: true, force: true });
}

async function exists(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return false;
    throw error;
  }
}

/** Every set holds its report: a folder with files but without one was made by somebody else. */
async function requireOwn(path: string): Promise<void> {
  const entries = await readdir(path).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return [];
    throw error;
  });
  if (entries.length === 0) return;
  const report = await readFile(join(path, 'report.json'), 'utf8').catch(() => '');
  if (report.includes('"leverleaf-report"')) return;
  throw new CliError(
    `${path} holds files that no build has made: move them away, or use --force to replace it.`,
  );
}
