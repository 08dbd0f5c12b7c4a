import { readdir, readFile, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { SourceFile } from '../findings/place.js';
import { CliError, reasonOf } from './errors.js';

/**
 * The files of a scheme: one file, or the `.md` files of a folder in the order of their names, hidden ones (an
 * editor's) left out. Throws CliError
 * if there is none, or one can't be read or is no text.
 *
 * @param path as given, relative to `workingFolder`; findings use it as it is
 */
export async function readSchemeFiles(path: string, workingFolder: string): Promise<readonly SourceFile[]> {
  const paths = await findFiles(path, workingFolder);
  return Promise.all(paths.map(file => readText(file, workingFolder)));
}

async function findFiles(path: string, workingFolder: string): Promise<readonly string[]> {
  if (path.trim() === '') throw new CliError('No scheme is named: the name given is empty.');
  try {
    const info = await stat(resolve(workingFolder, path));
    if (!info.isDirectory()) return [path];
    const entries = await readdir(resolve(workingFolder, path), { withFileTypes: true });
    const names = entries.filter(entry => !entry.isDirectory() && /^[^.].*\.md$/i.test(entry.name));
    const files = names.map(({ name }) => name).sort();
    if (files.length > 0) return files.map(name => join(path, name));
  } catch (error) {
    throw new CliError(`${path} can't be read: ${reasonOf(error)}.`);
  }
  throw new CliError(`${path} holds no scheme: there is no .md file in this folder.`);
}

async function readText(path: string, workingFolder: string): Promise<SourceFile> {
  const bytes = await readFile(resolve(workingFolder, path)).catch((error: unknown) => {
    throw new CliError(`${path} can't be read: ${reasonOf(error)}.`);
  });
  if (bytes.includes(0)) throw new CliError(`${path} is no text: it holds zero bytes.`);
  try {
    return { path, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    throw new CliError(`${path} is no UTF-8 text: save it in that encoding.`);
  }
}
