import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import type { schema } from '@stryker-mutator/api/core';

/**
 * `npx tsx tests/mutation/survivors.ts [FOLDER OR FILE] [REPORT]`: the score of each folder, and the mutants that no
 * test has found there, one a line: `file:line status mutator original → replacement`.
 */

const [wanted = 'src', path = 'reports/mutation/mutation.json'] = process.argv.slice(2);
const LONGEST_TEXT = 70;
const FOUND: ReadonlySet<schema.MutantStatus> = new Set(['Killed', 'Timeout']);
const MISSED: ReadonlySet<schema.MutantStatus> = new Set(['Survived', 'NoCoverage']);

const report = JSON.parse(readFileSync(path, 'utf8')) as schema.MutationTestResult;
const files = Object.entries(report.files)
  .filter(([file]) => file.startsWith(wanted))
  .sort(([a], [b]) => (a < b ? -1 : 1));

const lines = [...scores(), '', ...files.flatMap(([file, result]) => missedIn(file, result))];
process.stdout.write(`${lines.join('\n')}\n`);

/** Found, of all that could be found, in percent; and the numbers behind it. */
function scores(): readonly string[] {
  const folders = [...new Set(files.map(([file]) => posix.dirname(file)))];
  return [...folders, 'all'].map(folder => {
    const own = files.filter(([file]) => folder === 'all' || posix.dirname(file) === folder);
    const statuses = own.flatMap(([, { mutants }]) => mutants.map(({ status }) => status));
    const count = (which: ReadonlySet<schema.MutantStatus>) =>
      statuses.filter(each => which.has(each)).length;
    const [found, missed] = [count(FOUND), count(MISSED)];
    const score = ((100 * found) / (found + missed)).toFixed(1).padStart(5);
    const others = statuses.length - found - missed;
    return `${score} %  ${folder}: ${found} of ${found + missed}${others > 0 ? `, ${others} not judged` : ''}`;
  });
}

function missedIn(file: string, { source, mutants }: schema.FileResult): readonly string[] {
  return mutants
    .filter(({ status }) => !FOUND.has(status))
    .toSorted((a, b) => a.location.start.line - b.location.start.line)
    .map(({ status, location, mutatorName, replacement = '' }) => {
      const original = short(textAt(source, location));
      return `${file}:${location.start.line} ${status} ${mutatorName} ${original} → ${short(replacement)}`;
    });
}

/** Lines and columns are counted from 1; the end is exclusive. */
function textAt(source: string, { start, end }: schema.Location): string {
  const lines = source.split('\n').slice(start.line - 1, end.line);
  const last = lines.length - 1;
  return lines
    .map((line, index) => (index === last ? line.slice(0, end.column - 1) : line))
    .map((line, index) => (index === 0 ? line.slice(start.column - 1) : line))
    .join(' ');
}

function short(text: string): string {
  const line = text.replaceAll(/\s+/g, ' ').trim();
  return line.length > LONGEST_TEXT ? `${line.slice(0, LONGEST_TEXT)}…` : line;
}
