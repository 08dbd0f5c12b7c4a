import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { TestRunner } from 'vitest';
import { type FoundBrowser, findBrowser } from '../../src/print/browser.js';
import { missingToolNote } from './missing-tool.js';

/**
 * The path of an outside program, to be asked for inside a test. If it is not installed the test is left out,
 * and the summary says so; with LEVERLEAF_REQUIRE_TOOLS=1 it fails.
 */
export function tool(name: string): string {
  return findOnPath(name) ?? leaveOut(name);
}

/** As tool, for the browser the program would print with. */
export async function browserTool(): Promise<FoundBrowser> {
  return (await findBrowser()) ?? leaveOut('a browser');
}

/** Ends the test that is running: something it needs is missing. */
function leaveOut(name: string): never {
  if (process.env['LEVERLEAF_REQUIRE_TOOLS'] === '1') throw new Error(`${name} is not installed`);
  const test = TestRunner.getCurrentTest();
  if (!test) throw new Error(`ask for ${name} inside a test, so that the test can be left out`);
  return test.context.skip(missingToolNote + name);
}

function findOnPath(name: string): string | undefined {
  const endings = process.platform === 'win32' ? ['.exe', '.cmd', ''] : [''];
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter(Boolean);
  const candidates = folders.flatMap(folder => endings.map(ending => join(folder, name + ending)));
  return candidates.find(isRunnable);
}

function isRunnable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
