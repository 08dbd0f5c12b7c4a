import { type ChildProcess, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A folder in which the program itself is run, with a temporary folder of its own. */
export interface BuildFolder {
  readonly path: string;
  /** Where the sets go. */
  readonly out: string;
  /** The temporary folder of the builds. */
  readonly temporary: string;
  write(name: string, text: string): void;
  /** Runs `leverleaf WORDS` in the folder. */
  start(...words: readonly string[]): StartedBuild;
  /** One hash of the names and contents of a set; null where there is none. */
  setHash(name: string): string | null;
  /** What stands beside the sets, and in the temporary folder. */
  leftovers(sets: readonly string[]): readonly string[];
  /** The browser processes that builds in this folder have started (Linux only). */
  browsers(): readonly number[];
  remove(): void;
}

export interface StartedBuild {
  readonly child: ChildProcess;
  /** What it has written to standard error so far. */
  readonly told: () => string;
  readonly ended: Promise<EndedBuild>;
}

export interface EndedBuild {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  /** Of standard error: progress and complaints. */
  readonly lines: readonly string[];
}

/**
 * @param root the folder of the project, compiled
 * @param outFolder in place of a folder within
 */
export function createBuildFolder(root: string, outFolder?: string): BuildFolder {
  const path = mkdtempSync(join(tmpdir(), 'leverleaf-fault-'));
  const temporary = join(path, 'tmp');
  const out = outFolder ?? join(path, 'out');
  mkdirSync(temporary);
  return {
    path,
    out,
    temporary,
    write: (name, text) => writeFileSync(join(path, name), text),
    start(...words) {
      const child = spawn(process.execPath, [join(root, 'dist', 'cli', 'main.js'), ...words], {
        cwd: path,
        stdio: ['ignore', 'ignore', 'pipe'],
        env: { ...process.env, TMPDIR: temporary, NO_COLOR: '1' },
      });
      const pieces: string[] = [];
      return { child, told: () => pieces.join(''), ended: endOf(child, pieces) };
    },
    setHash: name => hashOf(join(out, name)),
    leftovers(sets) {
      const beside = existsSync(out) ? readdirSync(out).filter(name => !sets.includes(name)) : [];
      return [...beside, ...readdirSync(temporary)];
    },
    browsers: () => processesWith(`\0TMPDIR=${temporary}\0`, 'environ').filter(pid => !isProgram(pid)),
    remove: () => rmSync(path, { recursive: true, force: true, maxRetries: 5 }),
  };
}

/** @param pieces takes up what comes from standard error */
function endOf(child: ChildProcess, pieces: string[]): Promise<EndedBuild> {
  child.stderr?.setEncoding('utf8').on('data', (piece: string) => pieces.push(piece));
  return new Promise((settle, reject) => {
    child.on('error', reject);
    child.on('close', (code, signal) => {
      const lines = pieces
        .join('')
        .split('\n')
        .filter(line => line !== '');
      settle({ code, signal, lines });
    });
  });
}

function hashOf(folder: string): string | null {
  if (!existsSync(folder)) return null;
  const hash = createHash('sha256');
  for (const name of readdirSync(folder).sort())
    hash.update(`\0${name}\0`).update(readFileSync(join(folder, name)));
  return hash.digest('hex');
}

const isProgram = (pid: number): boolean => readProcess(pid, 'cmdline').includes(join('cli', 'main.js'));

/** The processes that have a text in their command line or environment (Linux only). */
export function processesWith(text: string, file: 'cmdline' | 'environ' = 'cmdline'): readonly number[] {
  if (process.platform !== 'linux') return [];
  const pids = readdirSync('/proc').filter(name => /^\d+$/.test(name));
  return pids.map(Number).filter(pid => readProcess(pid, file).includes(text));
}

/** What the system tells of a process; nothing where it has ended. */
export function readProcess(pid: number, file: 'cmdline' | 'environ' | 'stat'): string {
  try {
    return readFileSync(`/proc/${pid}/${file}`, 'utf8');
  } catch {
    return '';
  }
}
