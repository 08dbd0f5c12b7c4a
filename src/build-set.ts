import type { Compiled } from './compile.js';
import { createBits } from './documents/bits/write.js';
import type { BuiltFile, DocumentInput, PrintableDocument } from './documents/document.js';
import { createIndex, type Thumbnail } from './documents/index-page/index-page.js';
import { createManual } from './documents/manual/manual.js';
import { createOverlays } from './documents/overlays/overlays.js';
import { createReportDocument } from './documents/report/write.js';
import { writeReportJson } from './documents/report-json.js';
import { createTryout } from './documents/tryout/tryout.js';
import type { SourceFile } from './findings/place.js';
import { handoffFacts, writeHandoff } from './handoff/index.js';
import type { Scheme } from './language/model.js';
import { routineFacts } from './routine-facts.js';
import { unreadScheme } from './unread-scheme.js';

/** Everything that is built from a scheme, before printing. */
export interface BuildSet {
  readonly files: readonly BuiltFile[];
  readonly printables: readonly PrintableDocument[];
  /** What is made last, from the names of all other files and pictures of them: the page that the set opens with. */
  readonly last: (names: readonly string[], thumbnails: readonly Thumbnail[]) => readonly BuiltFile[];
}

export interface BuildSetOptions {
  readonly files: readonly SourceFile[];
  /** Path of the folder of templates. */
  readonly templates: string;
}

/** The whole set of a scheme without errors. */
export function buildSet(
  compiled: Compiled & { readonly scheme: Scheme },
  options: BuildSetOptions,
): BuildSet {
  const input: DocumentInput = { ...compiled, ...options };
  const { scheme } = compiled;
  const printables = [
    createManual(input),
    createOverlays(input),
    createBits(input, routineFacts(handoffFacts(scheme))),
    createReportDocument(input),
  ];
  return {
    printables,
    files: [
      ...htmlOf(printables),
      createTryout(input),
      ...writeHandoff(compiled),
      reportJson(compiled, options),
    ],
    last: (names, thumbnails) => [createIndex(input, names, thumbnails)],
  };
}

/** What a scheme with errors gets: the report. */
export function buildReport(compiled: Compiled, options: BuildSetOptions): BuildSet {
  const { findings, coverage } = compiled;
  const scheme = compiled.scheme ?? unreadScheme(options.files.map(({ path }) => path));
  const printables = [createReportDocument({ scheme, findings, coverage, ...options })];
  return { printables, files: [...htmlOf(printables), reportJson(compiled, options)], last: () => [] };
}

function htmlOf(printables: readonly PrintableDocument[]): readonly BuiltFile[] {
  return printables.map(({ name, html }) => ({ name: `${name}.html`, content: html }));
}

function reportJson({ scheme, findings, coverage }: Compiled, { files }: BuildSetOptions): BuiltFile {
  return { name: 'report.json', content: writeReportJson({ scheme, findings, coverage, files }) };
}
