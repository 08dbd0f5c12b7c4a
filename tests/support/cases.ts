import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Compiled, compile } from '../../src/compile.js';
import { writeReportJson } from '../../src/documents/report-json.js';
import type { Finding } from '../../src/findings/finding.js';
import type { SourceFile } from '../../src/findings/place.js';

/**
 * A case is a folder `tests/cases/RULE/NAME/` with a scheme (`scheme.md`, or several `.md` files read in name
 * order) and `expected.json`:
 *
 *     { "findings": [ { "at": 1, "mode": "Yard", "witness": { "length": 3 } } ] }
 *
 * Each expected finding matches on the fields it names, as the JSON report has them; `rule` is the folder's
 * where it is left out, `message` is a part of the message, `witness` may give the `length` of the steps.
 * `"at": n` says that the finding points at the words between the n-th pair of marks `⟦words⟧` of the scheme;
 * the marks are taken out before it is compiled. The findings of the folder's rule must be exactly those
 * listed, those of other rules are only looked at where listed; `"only": true` asks for no others at all,
 * `"only": false` allows others of the rule too.
 */
export interface Case {
  readonly rule: string;
  readonly name: string;
  readonly folder: string;
}

export interface Expected {
  readonly only?: boolean;
  readonly findings: readonly ExpectedFinding[];
}

export interface ExpectedFinding {
  readonly rule?: string;
  readonly at?: number;
  readonly [field: string]: unknown;
}

/** A stretch of a file that a pair of marks stood around. */
interface Mark {
  readonly file: string;
  readonly start: number;
  readonly end: number;
}

/** A finding as the JSON report has it. */
type Reported = Readonly<Record<string, unknown>>;

const CASES = fileURLToPath(new URL('../cases', import.meta.url));
const OPEN = '⟦';
const CLOSE = '⟧';

export function listCases(): readonly Case[] {
  return foldersIn(CASES).flatMap(rule =>
    foldersIn(join(CASES, rule)).map(name => ({ rule, name, folder: join(CASES, rule, name) })),
  );
}

function foldersIn(path: string): readonly string[] {
  const entries = readdirSync(path, { withFileTypes: true });
  return entries
    .filter(entry => entry.isDirectory())
    .map(entry => entry.name)
    .sort();
}

/** True where a finding of the case's own rule must come out. */
export function expectsFinding({ rule, folder }: Case): boolean {
  return readExpected(folder).findings.some(finding => (finding.rule ?? rule) === rule);
}

function readExpected(folder: string): Expected {
  const expected = JSON.parse(readFileSync(join(folder, 'expected.json'), 'utf8')) as Expected;
  if (!Array.isArray(expected.findings)) throw new Error(`${folder}: expected.json has no list "findings"`);
  return expected;
}

function readFiles(folder: string): readonly { file: SourceFile; marks: readonly Mark[] }[] {
  const files = readdirSync(folder)
    .filter(name => name.endsWith('.md'))
    .sort();
  return files.map(name => readMarked(name, readFileSync(join(folder, name), 'utf8')));
}

/** The case's scheme, compiled. */
export function compileCase({ folder }: Case): Compiled {
  return compile(readFiles(folder).map(({ file }) => file));
}

/** The findings of the case's own rule. */
export function findingsOf(of: Case): readonly Finding[] {
  return compileCase(of).findings.filter(finding => finding.rule === of.rule);
}

/** What is wrong with a case; empty where all is as expected. */
export function runCase({ rule, folder }: Case): readonly string[] {
  const read = readFiles(folder);
  if (read.length === 0) return ['There is no .md file in the folder.'];
  const expected = readExpected(folder);
  const compiled = compile(read.map(({ file }) => file));
  return compare(
    rule,
    expected,
    reportedBy(
      compiled,
      read.map(({ file }) => file),
    ),
    read.flatMap(({ marks }) => marks),
  );
}

/** Takes the marks out of a text. */
export function readMarked(path: string, marked: string): { file: SourceFile; marks: readonly Mark[] } {
  const marks: Mark[] = [];
  let text = '';
  let start: number | null = null;
  for (const piece of marked.split(/([⟦⟧])/)) {
    if (piece === OPEN) start = text.length;
    else if (piece === CLOSE && start !== null) {
      marks.push({ file: path, start, end: text.length });
      start = null;
    } else text += piece;
  }
  return { file: { path, text }, marks };
}

function reportedBy(compiled: Compiled, files: readonly SourceFile[]): readonly Reported[] {
  const report: { findings: Reported[] } = JSON.parse(writeReportJson({ ...compiled, files }));
  return report.findings;
}

function compare(
  rule: string,
  { only, findings }: Expected,
  reported: readonly Reported[],
  marks: readonly Mark[],
): readonly string[] {
  const problems: string[] = [];
  const left = [...reported];
  for (const expected of findings) {
    const wanted = { ...expected, rule: expected.rule ?? rule };
    const index = left.findIndex(finding => matches(finding, wanted, marks));
    if (index >= 0) left.splice(index, 1);
    else problems.push(`Missing: ${JSON.stringify(wanted)}`);
  }
  const unwanted = left.filter(finding => only === true || (only !== false && finding['rule'] === rule));
  for (const finding of unwanted) problems.push(`Not expected: ${textOf(finding)}`);
  if (problems.length > 0) problems.push(...reported.map(finding => `Reported: ${textOf(finding)}`));
  return problems;
}

function textOf(finding: Reported): string {
  const { waysOut: _, ...rest } = finding;
  return JSON.stringify(rest);
}

function matches(finding: Reported, wanted: ExpectedFinding, marks: readonly Mark[]): boolean {
  return Object.entries(wanted).every(([field, value]) => {
    if (field === 'at') return pointsAt(finding, marks[Number(value) - 1]);
    if (field === 'message') return String(finding['message']).includes(String(value));
    return holds(finding[field], value);
  });
}

function pointsAt({ file, range }: Reported, mark: Mark | undefined): boolean {
  if (mark === undefined) return false;
  return file === mark.file && holds(range, { start: { offset: mark.start }, end: { offset: mark.end } });
}

/** Lists and plain values must be the same; of an object only the fields that are asked for. */
function holds(value: unknown, wanted: unknown): boolean {
  if (Array.isArray(wanted))
    return (
      Array.isArray(value) &&
      value.length === wanted.length &&
      wanted.every((item, index) => holds(value[index], item))
    );
  if (typeof wanted !== 'object' || wanted === null) return value === wanted;
  if (typeof value !== 'object' || value === null) return false;
  const fields = value as Readonly<Record<string, unknown>>;
  return Object.entries(wanted).every(([field, item]) => {
    if (field === 'length' && Array.isArray(fields['steps'])) return fields['steps'].length === item;
    return holds(fields[field], item);
  });
}
