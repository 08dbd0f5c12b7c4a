import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { compile } from '../../src/compile.js';
import { createBits } from '../../src/documents/bits/write.js';
import type { DocumentInput } from '../../src/documents/document.js';
import { createManual } from '../../src/documents/manual/manual.js';
import { createOverlays } from '../../src/documents/overlays/overlays.js';
import { builtInTemplates } from '../../src/documents/page/templates.js';
import { createReportDocument } from '../../src/documents/report/write.js';
import { handoffFacts } from '../../src/handoff/index.js';
import { routineFacts } from '../../src/routine-facts.js';
import { crowded, EVERYTHING, longest } from './everything-scheme.js';

/** What documents are made from, for the text of a scheme. Throws where the language itself has a fault. */
export function inputOf(text: string, path = 'scheme.md'): DocumentInput {
  const files = [{ path, text }];
  const { scheme, findings, coverage } = compile(files);
  if (scheme?.complete !== true) throw new Error(findings.map(({ message }) => message).join('\n'));
  return { scheme, findings, coverage, files, templates: builtInTemplates };
}

/** Puts items into the `## Game` table in place of what it says. */
export function withGame(text: string, items: Readonly<Record<string, string>>): string {
  return Object.entries(items).reduce((now, [item, value]) => {
    const without = now.replace(new RegExp(`^\\| ${item} +\\|.*\\n`, 'm'), '');
    return without.replace(/(## Game\n\n\|.*\n\|.*\n)/, `$1| ${item} | ${value} |\n`);
  }, text);
}

/** The text of a file of the project. */
export const file = (path: string): string =>
  readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8');

/** Schemes of every shape: those that come with the program, all features, the longest names, many modes. */
export const SCHEMES: Readonly<Record<string, () => string>> = {
  'kiln-yard': () => file('schemes/kiln-yard.md'),
  'night-exchange': () => file('schemes/night-exchange.md'),
  everything: () => EVERYTHING,
  'longest, joystick': () => longest('joystick'),
  'longest words, keypad': () => longest('keypad', 'word'),
  crowded: () => crowded(16),
};

export const documentsOf = (input: DocumentInput) => [
  createManual(input),
  createOverlays(input),
  createBits(input, routineFacts(handoffFacts(input.scheme))),
  createReportDocument(input),
];
