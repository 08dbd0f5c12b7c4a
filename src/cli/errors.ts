/** Why a command could not do its work: one sentence for the person who gave it. Ends with exit code 2. */
export class CliError extends Error {
  override readonly name = 'CliError';
}

/** What an error of the system means, in a few words. */
const MEANINGS: Readonly<Record<string, string>> = {
  ENOENT: 'it is not there',
  EEXIST: 'a file has that name',
  EACCES: 'it may not be read or written',
  EPERM: 'it may not be read or written',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is no folder',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk is read-only',
  ENAMETOOLONG: 'its name is too long',
  ELOOP: 'its links lead in a circle',
  EMFILE: 'too many files are open',
};

export function errorCode(error: unknown): string | null {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : null;
}

/** The first line of what went wrong, in words where the system gives a code only. */
export function reasonOf(error: unknown): string {
  const meaning = MEANINGS[errorCode(error) ?? ''];
  if (meaning !== undefined) return meaning;
  const text = error instanceof Error ? error.message : String(error);
  return text.split(/\r?\n/, 1)[0] ?? text;
}
