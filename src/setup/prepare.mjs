import { existsSync, mkdirSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root, runNode, runNpm, say } from './run.mjs';

const lockFile = join(root, 'package-lock.json');
/** npm writes it at the end of each installation. */
const installedMark = join(root, 'node_modules', '.package-lock.json');
/** Written after each build that went well. */
const builtMark = join(root, 'node_modules', '.cache', 'leverleaf', 'built');

/** Installs the packages if there are none or the lock file is newer. False if that failed. */
export function installPackages() {
  if (timeOf(installedMark) >= timeOf(lockFile)) return true;
  say('installing the packages …');
  const args = ['ci', '--no-audit', '--no-fund', '--loglevel=error'];
  // A browser is looked for later; a failed download must not fail the installation.
  if (runNpm(args, { PUPPETEER_SKIP_DOWNLOAD: '1' }) !== 0) return false;
  // npm may leave its mark with the time of an older installation.
  if (timeOf(installedMark) < timeOf(lockFile)) touch(installedMark);
  return true;
}

/** Compiles src/ to dist/ if a source is newer than the last build. False if it does not compile. */
export function buildPackage() {
  const newest = Math.max(
    newestIn(join(root, 'src')),
    timeOf(join(root, 'tsconfig.json')),
    timeOf(installedMark),
  );
  if (existsSync(join(root, 'dist')) && timeOf(builtMark) > newest) return true;
  say('compiling the sources …');
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  if (runNode(['node_modules/typescript/bin/tsc', '-p', 'tsconfig.json']) !== 0) return false;
  if (runNode(['src/setup/bundle.mjs']) !== 0) return false;
  mkdirSync(dirname(builtMark), { recursive: true });
  writeFileSync(builtMark, '');
  return true;
}

/** Sees to it that there is a browser to print with, if one can be had, and says what came of it. */
export async function findOrInstallBrowser() {
  const load = name => import(pathToFileURL(join(root, 'dist', 'print', name)).href);
  const [{ browserVariable, findBrowser }, { installBrowser }] = await Promise.all([
    load('browser.js'),
    load('install.js'),
  ]);
  try {
    const found = (await findBrowser()) ?? (await installBrowser(say));
    if (found) say(`printing with ${found.path}`);
    else
      say(
        `no browser to print with could be found or installed: install Chrome or Chromium, or name one in ${browserVariable}. Without it there are no PDFs.`,
      );
  } catch (error) {
    say(`${error.message} Without a browser there are no PDFs.`);
  }
}

/** The time a file was last written, ms; 0 if it is not there. */
function timeOf(path) {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0;
}

/** The newest time of a folder's files and folders; a deleted file makes its folder newer. */
function newestIn(folder) {
  const times = readdirSync(folder, { withFileTypes: true, recursive: true }).map(entry =>
    timeOf(join(entry.parentPath ?? entry.path, entry.name)),
  );
  return Math.max(timeOf(folder), ...times);
}

function touch(path) {
  const now = new Date();
  utimesSync(path, now, now);
}
