import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { browserCache, type FoundBrowser, findBrowser } from './browser.js';

/** A way to get a browser: resolves when it has done its work, rejects if it could not. */
interface InstallWay {
  readonly name: string;
  isPossible(): boolean;
  install(): Promise<void>;
}

const ways: readonly InstallWay[] = [
  { name: 'downloading a headless browser', isPossible: () => true, install: download },
  { name: "installing Debian's headless browser", isPossible: isDebianRoot, install: installDebianPackage },
];

/**
 * Gets a browser: puppeteer's own download, then, as root on Debian, the package. `tell` hears one short line
 * for each step. Undefined if no way led to a browser; nothing is thrown.
 */
export async function installBrowser(tell: (line: string) => void): Promise<FoundBrowser | undefined> {
  for (const way of ways.filter(({ isPossible }) => isPossible())) {
    tell(`${way.name} …`);
    try {
      await way.install();
    } catch (error) {
      tell(`${way.name} failed: ${firstLine(error)}`);
      continue;
    }
    const found = await findBrowser();
    if (found) return found;
  }
  return undefined;
}

async function download(): Promise<void> {
  const { Browser, detectBrowserPlatform, install, resolveBuildId } = await import('@puppeteer/browsers');
  const platform = detectBrowserPlatform();
  if (!platform) throw new Error('there is no download for this kind of machine');
  const browser = Browser.CHROMEHEADLESSSHELL;
  const buildId = await within(30_000, resolveBuildId(browser, platform, 'stable'));
  await within(600_000, install({ browser, platform, buildId, cacheDir: browserCache() }));
}

/** A network that swallows everything must not hold up the set-up for good. */
async function within<T>(limitMs: number, work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const limit = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`no answer within ${limitMs / 1000} s`)), limitMs);
  });
  try {
    return await Promise.race([work, limit]);
  } finally {
    clearTimeout(timer);
  }
}

function isDebianRoot(): boolean {
  return process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
}

async function installDebianPackage(): Promise<void> {
  await run('apt-get', ['update', '-qq']);
  const install = ['install', '-y', '-qq', '--no-install-recommends'];
  await run('apt-get', [...install, 'chromium-headless-shell']).catch(() =>
    run('apt-get', [...install, 'chromium']),
  );
}

function run(command: string, args: readonly string[]): Promise<void> {
  return new Promise((resolve, reject) => {
    const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    const child = spawn(command, args, { stdio: ['ignore', 'ignore', 'pipe'], env: environment });
    let complaint = '';
    child.stderr.on('data', chunk => {
      complaint += chunk;
    });
    child.on('error', reject);
    child.on('close', code =>
      code === 0 ? resolve() : reject(new Error(complaint.trim() || `${command} ended with ${code}`)),
    );
  });
}

function firstLine(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return text.split('\n', 1)[0] ?? text;
}
