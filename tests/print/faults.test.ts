import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findBrowser } from '../../src/print/browser.js';
import { NoBrowserError, PrintError } from '../../src/print/errors.js';
import { printDocuments } from '../../src/print/print.js';
import { sweepProfiles } from '../../src/print/profile.js';
import { longJob } from '../support/long-job.js';
import { browserTool } from '../support/tools.js';
import { untilThere } from '../support/until.js';

let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'faults-'));
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const ownPrefix = `leverleaf-browser-${process.pid}-`;

const profilesLeft = () => readdirSync(tmpdir()).filter(name => name.startsWith(ownPrefix));

/** The browser processes below this process (Linux only). */
function browserProcesses(): readonly { readonly pid: number; readonly command: string }[] {
  const pids = readdirSync('/proc').filter(name => /^\d+$/.test(name));
  const parents = new Map(pids.map(pid => [Number(pid), parentOf(pid)]));
  const isBelow = (pid: number): boolean => {
    const parent = parents.get(pid) ?? 0;
    return parent === process.pid || (parent > 1 && isBelow(parent));
  };
  return pids
    .map(pid => ({ pid: Number(pid), command: readProc(pid, 'cmdline') }))
    .filter(({ pid, command }) => /chrom/.test(command) && isBelow(pid));
}

function parentOf(pid: string): number {
  return Number(
    readProc(pid, 'stat')
      .replace(/^.*\) /s, '')
      .split(' ')[1] ?? 0,
  );
}

function readProc(pid: string, file: string): string {
  try {
    return readFileSync(`/proc/${pid}/${file}`, 'utf8');
  } catch {
    return '';
  }
}

const renderers = () => browserProcesses().filter(({ command }) => command.includes('--type=renderer'));

async function failureOf(work: Promise<unknown>): Promise<Error> {
  const error: unknown = await work.then(
    () => new Error('it did not fail'),
    reason => reason,
  );
  return error instanceof Error ? error : new Error(String(error));
}

describe('what can go wrong while printing', () => {
  test('the deadline passes: an error, and nothing is left behind', async () => {
    const browser = await browserTool();
    const error = await failureOf(printDocuments([longJob().job], { browser, deadlineMs: 2500 }));
    expect(error).toBeInstanceOf(PrintError);
    expect(error.message).toMatch(/could not be printed: it took longer than 2\.5 s\.$/);
    expect(profilesLeft()).toEqual([]);
    if (process.platform === 'linux') expect(browserProcesses()).toEqual([]);
  });

  test.runIf(process.platform === 'linux')('the page is killed: told at once', async () => {
    const browser = await browserTool();
    const { job, begun } = longJob();
    const failure = failureOf(printDocuments([job], { browser }));
    await begun;
    for (const { pid } of renderers()) process.kill(pid, 'SIGKILL');
    const { message } = await failure;
    expect(message).toMatch(/^The manual could not be printed: /);
    expect(message).not.toContain('it took longer');
    expect(profilesLeft()).toEqual([]);
  });

  test.runIf(process.platform === 'linux')(
    'this process is told to end: the browser goes with it',
    async () => {
      const browser = await browserTool();
      const { job, begun } = longJob();
      const failure = failureOf(printDocuments([job], { browser }));
      await begun;
      const listener = () => undefined; // a listener of the program's own: the signal is not passed on
      process.once('SIGHUP', listener);
      process.emit('SIGHUP', 'SIGHUP');
      process.off('SIGHUP', listener);
      expect((await failure).message).toMatch(/could not be printed: .*(ended|closed)/i);
      expect(profilesLeft()).toEqual([]);
      await untilThere(() => browserProcesses().length === 0);
    },
  );

  test('a program that is no browser is a one-line error', async () => {
    const path = join(folder, 'no-browser');
    writeFileSync(path, '#!/bin/sh\nexit 3\n');
    chmodSync(path, 0o755);
    const browser = { path, isShell: true, foundIn: 'a test' };
    const error = await failureOf(printDocuments([longJob().job], { browser }));
    expect(error).toBeInstanceOf(PrintError);
    expect(error.message).toContain(`The browser ${path} did not start: `);
    expect(error.message).not.toContain('\n');
    expect(profilesLeft()).toEqual([]);
  });
});

describe('finding a browser', () => {
  function makeProgram(place: string, name: string): string {
    mkdirSync(join(folder, place), { recursive: true });
    const path = join(folder, place, name);
    writeFileSync(path, '');
    chmodSync(path, 0o755);
    return path;
  }

  const nowhere = { PUPPETEER_CACHE_DIR: '/nonexistent' };

  test('the one named by the variable comes first, and must be there', async () => {
    const path = makeProgram('named', 'my-browser');
    expect(await findBrowser({ ...nowhere, LEVERLEAF_BROWSER: path })).toMatchObject({
      path,
      isShell: false,
    });
    await expect(findBrowser({ LEVERLEAF_BROWSER: '/nonexistent/x' })).rejects.toThrow(NoBrowserError);
  });

  test.runIf(process.platform === 'linux')('on the PATH a headless shell is preferred', async () => {
    makeProgram('a', 'chromium');
    const shell = makeProgram('b', 'chromium-headless-shell');
    const environment = { ...nowhere, PATH: `${join(folder, 'a')}:${join(folder, 'b')}` };
    expect(await findBrowser(environment)).toEqual({ path: shell, isShell: true, foundIn: 'the PATH' });
  });
});

test('profiles of runs that are gone are swept, others stay', async () => {
  const place = mkdtempSync(join(folder, 'sweep-'));
  const old = new Date(Date.now() - 3_600_000);
  const gone = 4_194_305; // above the largest process id of Linux
  for (const name of [
    `leverleaf-browser-${gone}-old`,
    `leverleaf-browser-${process.pid}-mine`,
    'something-else',
  ]) {
    mkdirSync(join(place, name));
    utimesSync(join(place, name), old, old);
  }
  mkdirSync(join(place, `leverleaf-browser-${gone}-young`));
  await sweepProfiles(place);
  expect(readdirSync(place).sort()).toEqual(
    [`leverleaf-browser-${process.pid}-mine`, `leverleaf-browser-${gone}-young`, 'something-else'].sort(),
  );
});
