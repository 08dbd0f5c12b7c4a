import type { SourceFile } from '../findings/place.js';
import type { Report } from '../findings/report.js';
import { badPlace, createSpot } from './faults.js';
import { createSourceText, placeBetween } from './source-text.js';

/** What a scheme may hold, so that no text can keep the compiler busy for long. All in UTF-16 code units. */
export const LIMITS = {
  /** All files together. */
  characters: 2_000_000,
  lineCharacters: 20_000,
  /** Markdown marks of quotes and lists at the beginning of a line. */
  nestedMarks: 60,
  /** White space at the beginning of a line. */
  indent: 120,
  /** Runs of `*`, `_`, `~`, `[` and `]` in one paragraph or table: Markdown tries each with each. */
  marksInBlock: 2000,
} as const;

/** The files that can be read; a finding for each that can't. */
export function readableFiles(files: readonly SourceFile[], report: Report): readonly SourceFile[] {
  let total = 0;
  return files.filter(file => {
    total += file.text.length;
    const fault = findFault(file.text, total);
    if (fault === null) return true;
    const at = placeBetween(createSourceText(file.path, file.text), fault.start, fault.end);
    badPlace(createSpot(report, ''), at, 'The file', fault.problem, [fault.wayOut]);
    return !fault.unreadable;
  });
}

interface Fault {
  readonly start: number;
  readonly end: number;
  readonly problem: string;
  readonly wayOut: string;
  /** The file is not read at all. */
  readonly unreadable: boolean;
}

/** Control characters other than tab and line ends. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is sought
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/;

function findFault(text: string, total: number): Fault | null {
  const unreadable = true;
  if (text.includes('\0')) {
    const start = text.indexOf('\0');
    return {
      start,
      end: start + 1,
      problem: 'this is not a text file: it holds a zero byte',
      wayOut: 'Save the scheme as plain text (UTF-8).',
      unreadable,
    };
  }
  if (total > LIMITS.characters) {
    const problem = `the scheme is longer than ${LIMITS.characters} characters`;
    return {
      start: 0,
      end: 0,
      problem,
      wayOut: 'Split the game into several schemes, or shorten the prose.',
      unreadable,
    };
  }
  return findLongLine(text) ?? findNesting(text) ?? findMarks(text) ?? findControl(text);
}

function findLongLine(text: string): Fault | null {
  let start = 0;
  while (start < text.length) {
    const lineFeed = text.indexOf('\n', start);
    const end = lineFeed < 0 ? text.length : lineFeed;
    if (end - start > LIMITS.lineCharacters) {
      const longest = text
        .slice(start, end)
        .split('\r')
        .find(line => line.length > LIMITS.lineCharacters);
      if (longest !== undefined) {
        const problem = `a line is longer than ${LIMITS.lineCharacters} characters`;
        return { start, end: start + 1, problem, wayOut: 'Break the line.', unreadable: true };
      }
    }
    start = end + 1;
  }
  return null;
}

const NESTED = new RegExp(
  `(?<![^\\n\\r])(?:[ \\t]{${LIMITS.indent},}|(?:[ \\t]*(?:[>*+-]|\\d{1,9}[.)])){${LIMITS.nestedMarks},})`,
);

function findNesting(text: string): Fault | null {
  const match = NESTED.exec(text);
  if (match === null) return null;
  const end = match.index + match[0].length;
  return {
    start: match.index,
    end,
    problem: 'lists or quotes are nested too deeply',
    wayOut: 'Take marks or spaces away at the beginning of the line.',
    unreadable: true,
  };
}

const MARKS = /[*_~[\]]+/g;
const BLANK_LINE = /(?:\r\n|\n|\r)[ \t]*(?=[\n\r])/;

function findMarks(text: string): Fault | null {
  if (countMarks(text) <= LIMITS.marksInBlock) return null;
  let start = 0;
  for (const block of text.split(BLANK_LINE)) {
    if (countMarks(block) > LIMITS.marksInBlock) {
      const at = text.indexOf(block, start);
      return {
        start: at,
        end: at + 1,
        problem: `a paragraph or table has more than ${LIMITS.marksInBlock} marks of emphasis and brackets`,
        wayOut: 'Split it by a blank line, or take marks out.',
        unreadable: true,
      };
    }
    start += block.length;
  }
  return null;
}

const countMarks = (text: string): number => text.match(MARKS)?.length ?? 0;

function findControl(text: string): Fault | null {
  const start = text.search(CONTROL);
  if (start < 0) return null;
  const code = text.charCodeAt(start).toString(16).padStart(4, '0').toUpperCase();
  return {
    start,
    end: start + 1,
    problem: `a control character (U+${code}) stands here`,
    wayOut: 'Take it out.',
    unreadable: false,
  };
}
