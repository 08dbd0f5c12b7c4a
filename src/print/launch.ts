import type { Browser, Page } from 'puppeteer-core';
import type { FoundBrowser } from './browser.js';
import { PrintError } from './errors.js';
import { isolatePage, isolationArguments } from './isolation.js';
import { createProfile, deleteProfile, deleteProfileNow } from './profile.js';

/** A running browser that prints. It must be closed. */
export interface PrintBrowser {
  /** A page that runs no script and reaches nothing; the first call reuses the page the browser opens with. */
  openPage(): Promise<Page>;
  /** Settles with `work`, or rejects as soon as the browser is gone, a page has crashed or time is up. */
  race<T>(work: Promise<T>): Promise<T>;
  close(): Promise<void>;
}

/** How long the browser may take to end by itself, ms. */
const closeMs = 1000;

const fixedArguments = [
  // Without this, text widths in the headless shell are off by up to 22 %.
  '--font-render-hinting=none',
  '--lang=en-US',
  '--disable-extensions',
  '--disable-breakpad',
  '--hide-scrollbars',
  '--mute-audio',
  ...isolationArguments,
] as const;

/**
 * Starts a browser. After `deadlineMs` it is killed with all its processes, and so it is when this process is
 * told to end. Throws PrintError if it does not start.
 */
export async function launchBrowser(found: FoundBrowser, deadlineMs: number): Promise<PrintBrowser> {
  const [{ default: puppeteer }, profile] = await Promise.all([import('puppeteer-core'), createProfile()]);
  let browser: Browser;
  try {
    browser = await puppeteer.launch({
      executablePath: found.path,
      headless: found.isShell ? 'shell' : true,
      args: [...fixedArguments, ...(isRoot() ? ['--no-sandbox'] : [])],
      userDataDir: profile,
      pipe: true,
      defaultViewport: null,
      timeout: deadlineMs,
      protocolTimeout: deadlineMs,
      handleSIGINT: false,
      handleSIGTERM: false,
      handleSIGHUP: false,
    });
  } catch (error) {
    await deleteProfile(profile);
    throw new PrintError(`The browser ${found.path} did not start: ${firstLine(error)}`, undefined, {
      cause: error,
    });
  }
  return guardBrowser(browser, profile, deadlineMs);
}

function guardBrowser(browser: Browser, profile: string, deadlineMs: number): PrintBrowser {
  const failure = defer<never>();
  failure.promise.catch(() => undefined); // nobody may be racing when it fails
  const timer = setTimeout(() => {
    failure.reject(new Error(`it took longer than ${deadlineMs / 1000} s.`));
    killGroup(browser);
  }, deadlineMs);
  // A browser that is killed resets its pipes; that it ended is heard below.
  for (const pipe of browser.process()?.stdio ?? []) pipe?.on('error', () => undefined);
  browser.on('disconnected', () => failure.reject(new Error('the browser ended.')));
  const stopWatching = killWithProcess(browser, profile);
  let isFirst = true;
  return {
    async openPage() {
      const reused = isFirst ? (await browser.pages())[0] : undefined;
      isFirst = false;
      const page = reused ?? (await browser.newPage());
      page.on('error', () => failure.reject(new Error('the page crashed.')));
      await isolatePage(page);
      return page;
    },
    race: work => Promise.race([work, failure.promise]),
    async close() {
      clearTimeout(timer);
      await endBrowser(browser);
      await deleteProfile(profile);
      stopWatching();
    },
  };
}

/**
 * Asks the browser to end, so that it sees to its own helper processes, and kills it if it takes too long.
 * Resolves when its process is gone.
 */
async function endBrowser(browser: Browser): Promise<void> {
  const child = browser.process();
  if (!child || child.exitCode !== null || child.signalCode !== null) return;
  const ended = new Promise(resolve => child.once('exit', resolve));
  const impatience = setTimeout(() => killGroup(browser), closeMs);
  await Promise.race([browser.close().catch(() => killGroup(browser)), ended]);
  await ended;
  clearTimeout(impatience);
}

/** Kills the browser and its helper processes: puppeteer starts it as the leader of a process group. */
function killGroup(browser: Browser): void {
  const child = browser.process();
  if (child?.pid === undefined || child.exitCode !== null || child.signalCode !== null) return;
  try {
    if (process.platform === 'win32') child.kill('SIGKILL');
    else process.kill(-child.pid, 'SIGKILL');
  } catch {
    child.kill('SIGKILL');
  }
}

/** Takes the browser and its profile along when this process ends. Returns a function that undoes this. */
function killWithProcess(browser: Browser, profile: string): () => void {
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  const end = () => {
    killGroup(browser);
    deleteProfileNow(profile);
  };
  const endAndPassOn = (signal: NodeJS.Signals) => {
    end();
    stop();
    // With no other listener the signal now does what it does by default: it ends the process.
    if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
  };
  const stop = () => {
    process.off('exit', end);
    for (const signal of signals) process.off(signal, endAndPassOn);
  };
  process.on('exit', end);
  for (const signal of signals) process.on(signal, endAndPassOn);
  return stop;
}

/** A promise that is settled from outside. */
function defer<T>() {
  let reject: (reason: Error) => void = () => undefined;
  const promise = new Promise<T>((_, rejectIt) => {
    reject = rejectIt;
  });
  return { promise, reject };
}

function isRoot(): boolean {
  return process.platform === 'linux' && process.getuid?.() === 0;
}

function firstLine(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return text.split('\n', 1)[0] ?? text;
}
