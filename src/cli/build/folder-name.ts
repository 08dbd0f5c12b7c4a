import slugify from '@sindresorhus/slugify';

/** Long enough for any title, short enough for any file system with our own endings. */
const LONGEST = 60;

/** Names that some system keeps for devices (Windows, “Naming files, paths, and namespaces”). */
const RESERVED = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/**
 * The title in kebab case: a to z, 0 to 9 and `-` only, never empty, never a name that a system keeps for itself.
 *
 * @param others what to call it where the title has no such letters, the best first
 */
export function folderName(title: string, ...others: readonly string[]): string {
  const name = [title, ...others].map(kebab).find(candidate => candidate !== '') ?? 'scheme';
  return RESERVED.test(name) ? `${name}-game` : name;
}

function kebab(text: string): string {
  return slugify(text)
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '');
}
