import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { compile } from '../../compile.js';
import { countFindings } from '../../findings/summary.js';
import type { LogOrigin } from '../../handoff/trace/log.js';
import { traceLines, traceScheme } from '../../handoff/trace/trace.js';
import { CliError } from '../errors.js';
import type { ExitCode } from '../exit-code.js';
import { readSchemeFiles } from '../read-scheme-files.js';
import type { Terminal } from '../terminal.js';

/** `leverleaf trace`: where a build's log and the scheme differ; 1 where they do. */
export async function trace(
  scheme: string,
  log: string,
  options: LogOrigin,
  terminal: Terminal,
): Promise<ExitCode> {
  const compiled = compile(await readSchemeFiles(scheme, terminal.workingFolder));
  if (compiled.scheme === null || countFindings(compiled.findings).errors > 0) {
    throw new CliError('The scheme has errors: see leverleaf check.');
  }
  const text = await readLog(resolve(terminal.workingFolder, log));
  const result = traceScheme(compiled.scheme, text, options);
  if (result.reads === 0 && result.faults.length > 0) throw new CliError(result.faults.join(' '));
  await terminal.out(`${traceLines(result).join('\n')}\n`);
  return result.differences.length > 0 || result.faults.length > 0 ? 1 : 0;
}

async function readLog(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch {
    throw new CliError(`The log ${path} can’t be read.`);
  }
}
