import { resolve } from 'node:path';
import { compile } from '../../compile.js';
import type { SourceFile } from '../../findings/place.js';
import { countFindings } from '../../findings/summary.js';
import { createReader } from '../../language/read.js';
import { CliError, reasonOf } from '../errors.js';
import type { ExitCode } from '../exit-code.js';
import { narrow } from '../narrow.js';
import { readSchemeFiles } from '../read-scheme-files.js';
import type { Terminal } from '../terminal.js';
import { type CheckOptions, FORMATS } from './check.js';

/** Editors write a file in several steps: it is read when it has been left alone for so long, ms. */
const SETTLED = 50;

/**
 * `leverleaf check --watch`: prints the findings, and again after every change, until it is stopped. What is wrong
 * with a file is said, and it goes on. The exit code is that of the last check.
 */
export async function watchScheme(
  scheme: string,
  options: CheckOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  if (options.format !== 'text') throw new CliError('--watch prints for people: use it with --format text.');
  const look = createLook(scheme, options, terminal);
  let code = await look();
  let looking = Promise.resolve();
  const { watch } = await import('chokidar');
  const watcher = watch(resolve(terminal.workingFolder, scheme), {
    ignoreInitial: true,
    depth: 0,
    awaitWriteFinish: { stabilityThreshold: SETTLED, pollInterval: SETTLED / 2 },
  });
  watcher.on('all', () => {
    looking = looking.then(async () => {
      code = await look();
    });
  });
  watcher.on('error', error => terminal.say(`leverleaf: the folder can't be watched: ${reasonOf(error)}.`));
  watcher.on('ready', () => terminal.say(`Watching ${scheme}; stop with Ctrl+C.`));
  await terminal.stopped();
  await watcher.close();
  await looking;
  return code;
}

/** Checks what has changed since the last time; nothing where that is nothing. Never throws. */
function createLook(scheme: string, options: CheckOptions, terminal: Terminal): () => Promise<ExitCode> {
  const read = createReader();
  let last: readonly SourceFile[] = [];
  let code: ExitCode = 0;
  return async () => {
    try {
      const files = await readSchemeFiles(scheme, terminal.workingFolder);
      if (isSame(files, last)) return code;
      last = files;
      const begun = performance.now();
      const compiled = narrow(compile(files, { read }), options);
      const took = Math.round(performance.now() - begun);
      terminal.say(`\n${new Date().toLocaleTimeString('en-GB')}, checked in ${took} ms`);
      await terminal.out(await FORMATS.text({ ...compiled, files }, options, terminal));
      code = countFindings(compiled.findings).errors > 0 ? 1 : 0;
    } catch (error) {
      last = [];
      terminal.say(`leverleaf: ${reasonOf(error)}`);
      code = 2;
    }
    return code;
  };
}

const isSame = (one: readonly SourceFile[], other: readonly SourceFile[]): boolean =>
  one.length === other.length &&
  one.every(({ path, text }, index) => path === other[index]?.path && text === other[index]?.text);
