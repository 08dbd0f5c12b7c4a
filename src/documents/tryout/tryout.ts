import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import type { BuiltFile, DocumentInput } from '../document.js';
import { writePage } from '../page/shell.js';
import { readStyles } from '../page/templates.js';
import { findPhrases } from '../phrases.js';
import { writePageData } from './page-data.js';
import { tryoutTree } from './tree.js';

/** The page that plays the scheme: `tryout.html`, in the scheme’s language. */
export function createTryout({ scheme, findings, templates }: DocumentInput): BuiltFile {
  const program = readProgram();
  const { phrases, texts } = findPhrases(scheme.game.language.value, templates);
  const data = writePageData({ scheme, findings, language: phrases.language, texts });
  const content = writePage({
    title: `${scheme.title.value} – ${phrases.say('try name')}`,
    language: phrases.language,
    kind: 'tryout',
    styles: [readStyles(templates, ['base', 'drawings', 'tryout'])],
    body: tryoutTree(scheme, findings, phrases),
    extraText: EXTRA_TEXT + data,
    scripts: { data, program, programHash: sha256(program) },
  });
  return { name: 'tryout.html', content };
}

/** Signs that only the program writes. */
const EXTRA_TEXT = '→←↑↓×·…−◀▶⏎●■';

let known: string | undefined;

/** The program of the page, bundled from `src/tryout` when the package is built. */
function readProgram(): string {
  const path = new URL('../../../dist/tryout/program.js', import.meta.url);
  if (known === undefined && !existsSync(path))
    throw new Error('a part of the program is missing (dist/tryout/program.js): install or build it again');
  known ??= readFileSync(path, 'utf8');
  return known;
}

const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('base64');
