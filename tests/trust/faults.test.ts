import { execFileSync, spawnSync } from 'node:child_process';
import {
  closeSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, onTestFinished, type TestContext } from 'vitest';
import { PrintError } from '../../src/print/errors.js';
import { printDocuments } from '../../src/print/print.js';
import { type BuildFolder, createBuildFolder, processesWith, readProcess } from '../fuzz/build-folder.js';
import { killBuilds } from '../fuzz/kill-builds.js';
import { longJob } from '../support/long-job.js';
import { missingToolNote } from '../support/missing-tool.js';
import { browserTool } from '../support/tools.js';
import { untilThere } from '../support/until.js';

const SET = 'moth-and-lamp';
const isLinux = process.platform === 'linux';
const project = fileURLToPath(new URL('../..', import.meta.url));
const starter = readFileSync(join(project, 'templates', 'starter.md'), 'utf8');

/** The program itself is run: compiled anew into a folder like the package's. */
let root = '';

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'leverleaf-program-'));
  const compiler = join(project, 'node_modules', 'typescript', 'bin', 'tsc');
  const output = ['--outDir', join(root, 'dist'), '--declaration', 'false'];
  execFileSync(process.execPath, [compiler, '-p', join(project, 'tsconfig.json'), ...output]);
  execFileSync(process.execPath, [join(project, 'src', 'setup', 'bundle.mjs'), join(root, 'dist')]);
  cpSync(join(project, 'templates'), join(root, 'templates'), { recursive: true });
  cpSync(join(project, 'package.json'), join(root, 'package.json'));
  symlinkSync(join(project, 'node_modules'), join(root, 'node_modules'), 'junction');
});

afterAll(() => rmSync(root, { recursive: true, force: true }));

/** A folder with a set of one version of a game, and another version to build. */
async function folderWithSet(outFolder?: string): Promise<BuildFolder> {
  const folder = createBuildFolder(root, outFolder);
  onTestFinished(() => folder.remove());
  folder.write('game.md', starter);
  const { code, lines } = await folder.start('build', 'game.md', '--out', folder.out).ended;
  expect(code, lines.join('\n')).toBe(0);
  folder.write('game.md', starter.replace('Find the way to it', 'Find your way there'));
  return folder;
}

const build = (folder: BuildFolder) => folder.start('build', 'game.md', '--out', folder.out);

/** The line that a failed build complains with; there is one only, and no stack trace. */
function complaintOf(lines: readonly string[]): string {
  const complaints = lines.filter(line => line.startsWith('leverleaf: '));
  expect(complaints, lines.join('\n')).toHaveLength(1);
  expect(lines.join('\n')).not.toMatch(/unforeseen|^\s+at |\.[jt]s:\d+/m);
  return complaints[0] ?? '';
}

it('a build killed at any moment leaves the old set or the new one, and no rubbish for long', {
  timeout: 300_000,
}, async () => {
  await browserTool();
  const { faults, killed } = await killBuilds({ root, runs: 8, seed: 20, mendEvery: 4 });
  expect(faults).toEqual([]);
  expect(killed).toBeGreaterThan(0);
});

describe.runIf(isLinux)('the browser', () => {
  it.each([
    ['when it has just started', ''],
    ['in the midst of printing', 'printed the '],
  ])('is killed %s: a line, exit code 2, the old set as it was', async (_, awaited) => {
    await browserTool();
    const folder = await folderWithSet();
    const { before, ended } = await killBrowser(folder, awaited);
    expect(ended.code).toBe(2);
    expect(complaintOf(ended.lines)).toMatch(
      awaited === '' ? /did not start: |The set is left as it was\.$/ : /The set is left as it was\.$/,
    );
    expect(folder.setHash(SET)).toBe(before);
    expect(folder.leftovers([SET])).toEqual([]);
    expect(folder.browsers()).toEqual([]);
  });

  it('hangs: the deadline ends it', async () => {
    const browser = await browserTool();
    const folder = createBuildFolder(root);
    onTestFinished(() => folder.remove());
    const ours = () => processesWith(`leverleaf-browser-${process.pid}-`);
    const { job, begun } = longJob();
    const failure = printDocuments([job], { browser, deadlineMs: 6000 }).catch((error: unknown) => error);
    await begun;
    const stopped = ours();
    for (const pid of stopped) process.kill(pid, 'SIGSTOP');
    // One that runs on the other core stops a moment later.
    await untilThere(() => stopped.some(pid => /\) T/.test(readProcess(pid, 'stat'))));
    const error = await failure;
    expect(error).toBeInstanceOf(PrintError);
    expect(String(error)).toMatch(/could not be printed: it took longer than 6 s\.$/);
    await untilThere(() => ours().length === 0);
  });
});

describe.runIf(process.platform !== 'win32')('two builds of one scheme at once', () => {
  it('one is built, the other told to wait with exit code 2, and nothing is lost', async () => {
    await browserTool();
    const folder = await folderWithSet();
    const first = build(folder);
    await untilThere(() => first.told().includes('writing the documents'));
    first.child.kill('SIGSTOP'); // at work, however slow the second is
    const { code, lines } = await build(folder).ended;
    first.child.kill('SIGCONT');
    expect(code).toBe(2);
    expect(complaintOf(lines)).toMatch(/Another build of this game is at work \(process \d+ on /);
    expect((await first.ended).code).toBe(0);
    const alone = folder.setHash(SET);
    expect((await build(folder).ended).code).toBe(0);
    expect(folder.setHash(SET)).toBe(alone);
    expect(folder.leftovers([SET])).toEqual([]);
  });
});

/** Mounts a small disk in memory; the test is left out where that can't be done. */
function mountDisk(context: TestContext, folder: string, kilobytes: number): void {
  mkdirSync(folder, { recursive: true });
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'tmpfs', folder], { stdio: 'pipe' });
  } catch {
    context.skip(`${missingToolNote}the right to mount a disk`);
  }
  onTestFinished(() => void execFileSync('umount', ['-l', folder]));
}

describe.runIf(isLinux)('the disk', () => {
  it.each([['check', 'game.md'], ['explain'], ['--help']])(
    'has no room for what is printed: %s %s',
    (...words) => {
      const folder = createBuildFolder(root);
      onTestFinished(() => folder.remove());
      folder.write('game.md', starter);
      const full = openSync('/dev/full', 'w');
      onTestFinished(() => closeSync(full));
      const program = [join(root, 'dist', 'cli', 'main.js'), ...words];
      const { status, stderr } = spawnSync(process.execPath, program, {
        cwd: folder.path,
        stdio: ['ignore', full, 'pipe'],
        encoding: 'utf8',
      });
      expect(stderr).toBe("leverleaf: The result can't be written: the disk is full.\n");
      expect(status).toBe(2);
    },
  );

  it('is full: a line that says so, exit code 2, the old set as it was', async context => {
    await browserTool();
    const folder = createBuildFolder(root);
    onTestFinished(() => folder.remove());
    mountDisk(context, folder.out, 3500);
    folder.write('game.md', starter);
    expect((await build(folder).ended).code).toBe(0);
    const before = folder.setHash(SET);
    for (const kilobytes of [1500, 0]) {
      fill(folder.out, kilobytes);
      const { code, lines } = await build(folder).ended;
      expect(code).toBe(2);
      expect(complaintOf(lines)).toMatch(/can't be written: the disk is full\.$/);
      expect(folder.setHash(SET)).toBe(before);
      expect(folder.leftovers([SET, 'filling'])).toEqual([]);
    }
  });

  it('of temporary files is full: a line, exit code 2, the old set as it was', async context => {
    await browserTool();
    const folder = await folderWithSet();
    const before = folder.setHash(SET);
    mountDisk(context, folder.temporary, 64);
    const { code, lines } = await build(folder).ended;
    expect(code).toBe(2);
    complaintOf(lines);
    expect(folder.setHash(SET)).toBe(before);
    expect(folder.leftovers([SET])).toEqual([]);
  });

  it('may only be read: a line that says so, exit code 2, the old set as it was', async context => {
    await browserTool();
    const folder = createBuildFolder(root);
    onTestFinished(() => folder.remove());
    mountDisk(context, folder.out, 20_000);
    folder.write('game.md', starter);
    expect((await build(folder).ended).code).toBe(0);
    const before = folder.setHash(SET);
    execFileSync('mount', ['-o', 'remount,ro', folder.out]);
    const { code, lines } = await build(folder).ended;
    expect(code).toBe(2);
    expect(complaintOf(lines)).toMatch(/can't be written: the disk is read-only\.$/);
    expect(folder.setHash(SET)).toBe(before);
    expect(folder.leftovers([SET])).toEqual([]);
  });
});

/** Fills a disk up to a rest, by a file of zeros. */
function fill(folder: string, restKilobytes: number): void {
  const free = Number(
    execFileSync('df', ['--output=avail', '-k', folder], { encoding: 'utf8' }).split('\n')[1],
  );
  const file = join(folder, 'filling');
  writeFileSync(file, Buffer.alloc(Math.max(0, free - restKilobytes) * 1024), { flag: 'a' });
}

/**
 * Kills the browser of a build that has told what is awaited, and whatever it starts meanwhile (the browser may be
 * a script that starts others), until the build has ended. A build that was quicker than that is followed by
 * another.
 */
async function killBrowser(folder: BuildFolder, awaited: string) {
  for (let tries = 0; tries < 10; tries++) {
    const before = folder.setHash(SET);
    const { ended, told } = build(folder);
    let hasEnded = false;
    const end = ended.finally(() => {
      hasEnded = true;
    });
    for (; !hasEnded; await wait(5))
      if (told().includes(awaited)) for (const pid of folder.browsers()) kill(pid);
    if ((await end).code !== 0) return { before, ended: await end };
  }
  throw new Error('no build could be caught');
}

function kill(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // It has ended.
  }
}
