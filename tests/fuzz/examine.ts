import { buildReport, buildSet } from '../../src/build-set.js';
import { type Compiled, compile } from '../../src/compile.js';
import { writeReportJson } from '../../src/documents/report-json.js';
import type { Finding } from '../../src/findings/finding.js';
import { createColours } from '../../src/findings/formats/colours.js';
import { writeGithub } from '../../src/findings/formats/github.js';
import { writeSarif } from '../../src/findings/formats/sarif.js';
import { writeText } from '../../src/findings/formats/text.js';
import type { SourceFile } from '../../src/findings/place.js';
import { countFindings } from '../../src/findings/summary.js';
import { createReader } from '../../src/language/read.js';
import { plainText } from '../support/plain.js';
import type { FuzzCase } from './generate.js';
import { checkPlaces } from './places.js';

export interface ExamineOptions {
  /** Path of the folder of templates. */
  readonly templates: string;
  /** Check the scheme with one section changed too, and again as it was, with what the checks before have kept. */
  readonly rechecks?: boolean;
  /** Also write the findings in every format. */
  readonly formats?: boolean;
  /** CPU time that one check may take, ms; 2000 if left out. */
  readonly mostMs?: number;
  /** Also make every file of the set, but no PDF. */
  readonly builds?: boolean;
}

/** What costs more time than the check itself is done for some seeds only. */
export function examinedToo(seed: number, plays: boolean): Omit<ExamineOptions, 'templates'> {
  return { rechecks: seed % 4 === 1, formats: seed % 4 === 2, builds: plays || seed % 64 === 3 };
}

export interface Examined {
  /** What went wrong, a line each; none where all is well. */
  readonly faults: readonly string[];
  /** CPU time of one check, ms. */
  readonly ms: number;
  readonly findings: number;
}

/** Compiles a case and tells what is wrong with what comes out. Never throws. */
export async function examine(fuzzCase: FuzzCase, options: ExamineOptions): Promise<Examined> {
  try {
    return await examineOrThrow(fuzzCase, options);
  } catch (error) {
    const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { faults: [text.split('\n').slice(0, 8).join('\n')], ms: 0, findings: 0 };
  }
}

async function examineOrThrow({ files, changed }: FuzzCase, options: ExamineOptions): Promise<Examined> {
  const { templates, mostMs = 2000 } = options;
  const first = createReader();
  const begun = process.cpuUsage();
  const compiled = compile(files, { templates, read: first });
  const { user, system } = process.cpuUsage(begun);
  const ms = (user + system) / 1000;
  const { findings } = compiled;
  const faults = [...checkPlaces(findings, files), ...findings.flatMap(checkWords)];
  if (ms > mostMs) faults.push(`the check took ${Math.round(ms)} ms`);

  const whole = toldBy(compiled, files);
  const again = compile(files, { templates, read: first });
  if (dataOf(again, files) !== whole.data) faults.push('a second check differs from the first');
  if (options.rechecks) faults.push(...recheck({ files, changed, whole, templates }));
  if (options.formats) faults.push(...(await checkFormats(findings, files)));
  if (options.builds) faults.push(...build(again, files, templates));
  return { faults, ms, findings: findings.length };
}

/** All that a check tells, as texts: a later check moves the scheme of an earlier one. */
interface Told {
  readonly data: string;
  readonly scheme: string;
}

const toldBy = (compiled: Compiled, files: readonly SourceFile[]): Told => ({
  data: dataOf(compiled, files),
  scheme: plainText(compiled.scheme),
});

interface Recheck extends Pick<FuzzCase, 'files' | 'changed'> {
  /** Of `files`, by a new reader. */
  readonly whole: Told;
  readonly templates: string;
}

/** What a reader and the checks keep, of a scheme that differs in a section, must not show. */
function recheck({ files, changed, whole, templates }: Recheck): readonly string[] {
  const read = createReader();
  const compare = (texts: readonly SourceFile[], expected: Told): readonly string[] => {
    const told = toldBy(compile(texts, { templates, read }), texts);
    const faults: string[] = [];
    if (told.data !== expected.data) faults.push('a check of what was kept differs');
    if (told.scheme !== expected.scheme) faults.push('a kept reader reads another scheme');
    return faults;
  };
  return [
    ...compare(files, whole),
    ...compare(changed, toldBy(compile(changed, { templates }), changed)),
    ...compare(files, whole),
  ];
}

function dataOf({ scheme, findings, coverage }: Compiled, files: readonly SourceFile[]): string {
  return writeReportJson({ scheme, findings, coverage, files });
}

function checkWords({ rule, message, waysOut, witness }: Finding): readonly string[] {
  const faults: string[] = [];
  if (message.trim() === '') faults.push(`${rule}: says nothing`);
  if (waysOut.length === 0) faults.push(`${rule}: has no way out`);
  const reads = witness?.steps.map(({ read }) => read) ?? [];
  if (reads.some((read, index) => read !== index)) faults.push(`${rule}: its witness leaves out reads`);
  return faults;
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is sought
const ACTIVE = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

/** A terminal acts on what looks like a command to it; other programs expect their format whole. */
async function checkFormats(
  findings: readonly Finding[],
  files: readonly SourceFile[],
): Promise<readonly string[]> {
  const faults: string[] = [];
  const text = await writeText(findings, files, { colours: createColours(false), width: 80 });
  if (ACTIVE.test(text)) faults.push('the findings as text hold a character that a terminal acts on');
  const sarif: unknown = JSON.parse(writeSarif(findings, '0.0.0'));
  if (typeof sarif !== 'object') faults.push('the findings as SARIF are no object');
  const lines = writeGithub(findings)
    .split(/\r\n|\n|\r/)
    .filter(line => line !== '');
  const strange = lines.filter(line => !/^::(?:error|warning|notice) /.test(line));
  if (strange.length > 0) faults.push(`a workflow command is broken: ${strange[0]}`);
  return faults;
}

function build(compiled: Compiled, files: readonly SourceFile[], templates: string): readonly string[] {
  const { scheme, findings } = compiled;
  const hasErrors = scheme === null || countFindings(findings).errors > 0;
  const set = hasErrors
    ? buildReport(compiled, { files, templates })
    : buildSet({ ...compiled, scheme }, { files, templates });
  const names = set.files.map(({ name }) => name);
  const made = [...set.files, ...set.last(names, [])];
  return made.flatMap(({ name, content }) => (content.length === 0 ? [`${name} is empty`] : []));
}
