import { readlinkSync, rmSync } from 'node:fs';
import { mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * Browser profiles are folders `leverleaf-browser-PID-PLACE-RANDOM` in the temporary folder; the process PID made
 * and owns it. PLACE tells processes apart that can't see each other: containers may share a temporary folder.
 */
const prefix = 'leverleaf-browser-';
const ownedName = /^leverleaf-browser-(\d+)-(?:([a-z0-9]+)-)?/;

/** A profile younger than this is left alone if its owner may be at work in another place, ms. */
const graceMs = 15 * 60_000;

export function createProfile(): Promise<string> {
  return mkdtemp(join(tmpdir(), `${prefix}${process.pid}-${processPlace()}-`));
}

/** Of Linux the process id namespace; other systems have one place only. */
function processPlace(): string {
  try {
    return readlinkSync('/proc/self/ns/pid').replace(/\D/g, '') || 'here';
  } catch {
    return 'here';
  }
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
  const here = processPlace();
  for (const name of names) {
    const [, pid = '', place] = ownedName.exec(name) ?? [];
    if (pid === '' || isAlive(Number(pid))) continue;
    const path = join(folder, name);
    if (place === here || (await isOld(path))) await deleteProfile(path);
  }
}

async function isOld(path: string): Promise<boolean> {
  const info = await stat(path).catch(() => undefined);
  return info !== undefined && Date.now() - info.mtimeMs > graceMs;
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
