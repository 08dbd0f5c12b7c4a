import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Finding } from '../../src/findings/finding.js';
import type { Place, SourceFile } from '../../src/findings/place.js';
import { createReport } from '../../src/findings/report.js';
import type { Scheme } from '../../src/language/model.js';
import { readScheme } from '../../src/language/read.js';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** A scheme of our own that uses every section and every kind of value. */
export const EVERYTHING = readFileSync(here('everything.md'), 'utf8');

/** Schemes that must read without a finding: our own, and the sample beside the project where it is there. */
export function goodSchemes(): readonly SourceFile[] {
  const folders = [here('../../schemes'), here('../../../shared/samples')].filter(path => existsSync(path));
  const found = folders.flatMap(folder => {
    const names = readdirSync(folder)
      .filter(name => name.endsWith('.md'))
      .sort();
    return names.map(name => ({ path: name, text: readFileSync(join(folder, name), 'utf8') }));
  });
  return [{ path: 'everything.md', text: EVERYTHING }, ...found];
}

export interface Read {
  readonly scheme: Scheme | null;
  readonly findings: readonly Finding[];
}

export function read(...texts: readonly string[]): Read {
  return readFiles(texts.map((text, index) => ({ path: `${index + 1}.md`, text })));
}

export function readFiles(files: readonly SourceFile[]): Read {
  const { report, findings } = createReport();
  return { scheme: readScheme(files, report), findings };
}

/** A complete scheme; fails where there are findings. */
export function readGood(...texts: readonly string[]): Scheme {
  const { scheme, findings } = read(...texts);
  if (scheme === null || findings.length > 0)
    throw new Error(`The scheme has findings: ${findings.map(({ message }) => message).join(' ')}`);
  return scheme;
}

export function wordsAt(text: string, { range }: Place): string {
  return text.slice(range.start.offset, range.end.offset);
}
