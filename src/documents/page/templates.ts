import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of templates that comes with the program. */
export const builtInTemplates = fileURLToPath(new URL('../../../templates', import.meta.url));

export type StyleName = 'base' | 'drawings' | 'manual' | 'overlays' | 'sheets' | 'tryout' | 'index';

/**
 * A template's text: the one in `folder` where there is one, else the built-in one. So a publisher replaces
 * single files. Throws where neither is there: the built-in ones always are.
 *
 * @param path parts of its path in the folder: `['styles', 'base.css']`
 */
export function readTemplate(folder: string, path: readonly string[]): string {
  const own = join(folder, ...path);
  return readFileSync(existsSync(own) ? own : join(builtInTemplates, ...path), 'utf8');
}

/** True where the template is not the built-in one. */
export function isOwnTemplate(folder: string, path: readonly string[]): boolean {
  return folder !== builtInTemplates && existsSync(join(folder, ...path));
}

/** Style sheets joined, in their order. */
export function readStyles(folder: string, names: readonly StyleName[]): string {
  return names.map(name => readTemplate(folder, ['styles', `${name}.css`])).join('\n');
}

/** The language tags for which `folder` or the built-in templates have phrases, sorted. */
export function listPhraseLanguages(folder: string): readonly string[] {
  const tags = [folder, builtInTemplates].flatMap(root => {
    const phrases = join(root, 'phrases');
    return existsSync(phrases) ? readdirSync(phrases) : [];
  });
  const languages = tags.filter(name => name.endsWith('.md')).map(name => name.slice(0, -'.md'.length));
  return [...new Set(languages)].sort();
}
