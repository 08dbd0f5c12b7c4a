import { constants } from 'node:fs';
import { access } from 'node:fs/promises';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { NoBrowserError } from './errors.js';

/** A browser on this machine that can print. */
export interface FoundBrowser {
  readonly path: string;
  /** The headless shell starts faster than the full browser and is preferred. */
  readonly isShell: boolean;
  /** Where it was found, for people. */
  readonly foundIn: string;
}

/** The environment variable that names the browser to print with. */
export const browserVariable = 'LEVERLEAF_BROWSER';

type Environment = Readonly<Record<string, string | undefined>>;

/** Names looked for on the PATH, the headless shells first. */
const namesOnPath = [
  'chrome-headless-shell',
  'chromium-headless-shell',
  'google-chrome-stable',
  'google-chrome',
  'chromium',
  'chromium-browser',
] as const;

const macPlaces = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
] as const;

const windowsPlaces = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
] as const;

/**
 * Finds a browser to print with: the one named by `LEVERLEAF_BROWSER`; else, of those in puppeteer's cache,
 * installed as Chrome, on the PATH or in the usual places, the first headless shell, or else the first of all.
 * Undefined if there is none. Throws NoBrowserError if the variable names a file that can't be run.
 */
export async function findBrowser(environment: Environment = process.env): Promise<FoundBrowser | undefined> {
  const named = environment[browserVariable];
  if (named) {
    if (await isRunnable(named)) return describe(named, browserVariable);
    throw new NoBrowserError(`${browserVariable} names ${named}, which can't be run.`);
  }
  let first: FoundBrowser | undefined;
  for (const find of [findCached, findInstalled, findOnPath, findInUsualPlaces]) {
    const found = await find(environment);
    const shell = found.find(browser => browser.isShell);
    if (shell) return shell;
    first ??= found[0];
  }
  return first;
}

/** As findBrowser, but a machine without one is an error that says what to do. */
export async function requireBrowser(environment: Environment = process.env): Promise<FoundBrowser> {
  const found = await findBrowser(environment);
  if (found) return found;
  throw new NoBrowserError(
    `No Chrome or Chromium was found to print with: install one, or name one in ${browserVariable}.`,
  );
}

/** The folder in which puppeteer keeps the browsers it has downloaded. */
export function browserCache(environment: Environment = process.env): string {
  return environment['PUPPETEER_CACHE_DIR'] || join(homedir(), '.cache', 'puppeteer');
}

async function findCached(environment: Environment): Promise<readonly FoundBrowser[]> {
  const { Browser, getInstalledBrowsers } = await import('@puppeteer/browsers');
  const installed = await getInstalledBrowsers({ cacheDir: browserCache(environment) }).catch(() => []);
  const newestFirst = installed.toSorted((a, b) =>
    b.buildId.localeCompare(a.buildId, 'en', { numeric: true }),
  );
  const wanted = [Browser.CHROMEHEADLESSSHELL, Browser.CHROME, Browser.CHROMIUM];
  const paths = wanted.flatMap(name =>
    newestFirst.filter(({ browser }) => browser === name).map(({ executablePath }) => executablePath),
  );
  return describeRunnable(paths, "puppeteer's cache");
}

async function findInstalled(): Promise<readonly FoundBrowser[]> {
  const { Browser, ChromeReleaseChannel, computeSystemExecutablePath } = await import('@puppeteer/browsers');
  try {
    const path = computeSystemExecutablePath({
      browser: Browser.CHROME,
      channel: ChromeReleaseChannel.STABLE,
    });
    return await describeRunnable([path], 'the installed programs');
  } catch {
    return []; // thrown on platforms for which no place is known
  }
}

function findOnPath(environment: Environment): Promise<readonly FoundBrowser[]> {
  const folders = (environment['PATH'] ?? '').split(delimiter).filter(Boolean);
  const ending = process.platform === 'win32' ? '.exe' : '';
  const paths = namesOnPath.flatMap(name => folders.map(folder => join(folder, name + ending)));
  return describeRunnable(paths, 'the PATH');
}

function findInUsualPlaces(environment: Environment): Promise<readonly FoundBrowser[]> {
  const windowsRoots = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap(
    name => environment[name] ?? [],
  );
  const places: Partial<Record<NodeJS.Platform, readonly string[]>> = {
    darwin: [...macPlaces, ...macPlaces.map(place => join(homedir(), place))],
    win32: windowsRoots.flatMap(root => windowsPlaces.map(place => join(root, place))),
  };
  return describeRunnable(places[process.platform] ?? [], 'the usual places');
}

async function describeRunnable(paths: readonly string[], foundIn: string): Promise<readonly FoundBrowser[]> {
  const runnable = await Promise.all(paths.map(isRunnable));
  return paths.filter((_, index) => runnable[index]).map(path => describe(path, foundIn));
}

function describe(path: string, foundIn: string): FoundBrowser {
  return { path, isShell: /headless[-_]?shell/i.test(path), foundIn };
}

async function isRunnable(path: string): Promise<boolean> {
  try {
    await access(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
