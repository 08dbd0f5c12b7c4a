import { rmSync } from 'node:fs';
import { mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Browser profiles are folders `leverleaf-browser-PID-RANDOM` in the temporary folder; PID made and owns it. */
const prefix = 'leverleaf-browser-';
const ownedName = /^leverleaf-browser-(\d+)-/;

/** A profile younger than this is left alone even if its owner can't be seen (another PID namespace), ms. */
const graceMs = 15 * 60_000;

export function createProfile(): Promise<string> {
  return mkdtemp(join(tmpdir(), `${prefix}${process.pid}-`));
}

/** Deletes a profile; tries again while a dying browser still writes to it. Failure leaves it to a later sweep. */
export async function deleteProfile(path: string): Promise<void> {
  await rm(path, { recursive: true, force: true, maxRetries: 5, retryDelay: 50 }).catch(() => undefined);
}

/** As deleteProfile, for a process that is about to end. */
export function deleteProfileNow(path: string): void {
  try {
    rmSync(path, { recursive: true, force: true, maxRetries: 5, retryDelay: 20 });
  } catch {
    // A later run sweeps it.
  }
}

/** Deletes profiles that a killed run left behind. */
export async function sweepProfiles(folder: string = tmpdir()): Promise<void> {
  const names = await readdir(folder).catch((): string[] => []);
  for (const name of names) {
    const owner = Number(ownedName.exec(name)?.[1] ?? Number.NaN);
    if (Number.isNaN(owner) || isAlive(owner)) continue;
    const path = join(folder, name);
    const info = await stat(path).catch(() => undefined);
    if (info && Date.now() - info.mtimeMs > graceMs) await deleteProfile(path);
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
