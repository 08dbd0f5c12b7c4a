import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { compile } from '../../../src/compile.js';
import type { DocumentInput } from '../../../src/documents/document.js';
import { builtInTemplates } from '../../../src/documents/page/templates.js';
import type { SourceFile } from '../../../src/findings/place.js';
import type { Mode, Scheme, SeatsRow } from '../../../src/language/model.js';

/** A scheme with every controller, an own controller and an own console, chords, settings of both kinds. */
export const DYE_WORKS = readFileSync(fileURLToPath(new URL('dye-works.md', import.meta.url)), 'utf8');

/** Compiles one file; throws where nothing can be made of it. */
export function inputOf(text: string, path = 'scheme.md'): DocumentInput {
  const files: readonly SourceFile[] = [{ path, text }];
  const { scheme, findings, coverage } = compile(files);
  if (scheme === null) throw new Error(findings.map(({ message }) => message).join('\n'));
  return { scheme, findings, coverage, files, templates: builtInTemplates };
}

export function modeAndSeats(scheme: Scheme, mode: string, seats: string): { mode: Mode; seats: SeatsRow } {
  const foundMode = scheme.modes.find(({ name }) => name === mode);
  const foundSeats = scheme.seats.find(({ name }) => name === seats);
  if (foundMode === undefined || foundSeats === undefined) throw new Error(`no ${mode} or no ${seats}`);
  return { mode: foundMode, seats: foundSeats };
}
