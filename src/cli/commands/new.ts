import { readFile, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { CliError, errorCode, reasonOf } from '../errors.js';
import type { ExitCode } from '../exit-code.js';
import type { Terminal } from '../terminal.js';

/** `leverleaf new`: writes the starter scheme; never over a file that is there. */
export async function writeStarter(file: string, terminal: Terminal): Promise<ExitCode> {
  if (file.trim() === '') throw new CliError('The file has no name.');
  const starter = await readFile(new URL('../../../templates/starter.md', import.meta.url), 'utf8');
  try {
    await writeFile(resolve(terminal.workingFolder, file), starter, { flag: 'wx' });
  } catch (error) {
    const isThere = errorCode(error) === 'EEXIST';
    throw new CliError(
      isThere
        ? `${file} is there already and stays as it is: give another name.`
        : `${file} can't be written: ${reasonOf(error)}.`,
    );
  }
  terminal.say(`${file} is written. Next: leverleaf check ${/[^\w./-]/.test(file) ? `"${file}"` : file}`);
  return 0;
}
