import { checkCoverage } from '../../dist/checks/coverage.js';
import { createReport } from '../../dist/findings/report.js';
import { searchPlainly } from '../coverage/plain-rules.js';
import { bigScheme } from '../support/big-scheme.js';
import { parseMarkdown } from './markdown.js';
import { ratioOf } from './measure.js';
import { type BenchRow, ratioRow } from './row.js';
import { readWhole } from './scheme.js';

/** The size that coverage must bear. */
const SIZE = {
  modes: 64,
  rows: 32,
  settings: 8,
  variations: 112,
  consoles: 5,
  seats: 4,
  standards: 3,
} as const;

/** Small enough for the plain search: 4096 states in each of twelve cells. */
const PLAIN_SIZE = {
  modes: 8,
  rows: 8,
  settings: 3,
  variations: 4,
  consoles: 3,
  seats: 2,
  standards: 2,
} as const;

/** The plain search over explicit states that the tests hold coverage to, against coverage of the same. */
export async function benchPlainSearch(): Promise<readonly BenchRow[]> {
  const text = bigScheme(PLAIN_SIZE);
  const schemes = Array.from({ length: 4 }, () => readWhole(text));
  const searched = readWhole(text);
  const { ratio, work, floor } = await ratioOf(
    () => searchPlainly(searched),
    () => {
      // A scheme of its own for each round: nothing is kept from the one before.
      const scheme = schemes.pop();
      if (scheme !== undefined) checkCoverage(scheme, createReport().report);
    },
    schemes.length - 1,
  );
  return [
    {
      what: 'a plain search of 4096 states a cell, against coverage of the same',
      value: ratio,
      unit: '×',
      limit: { least: 10 },
      detail: `${work.toFixed(0)} ms against ${floor.toFixed(0)} ms`,
    },
  ];
}

/** Coverage against the Markdown parse of the same text, and the most memory that the process has held by then. */
export async function benchCoverage(): Promise<readonly BenchRow[]> {
  const text = bigScheme(SIZE);
  const check = () => void checkCoverage(readWhole(text), createReport().report);
  // Before the whole Markdown parse, which is only there to compare with and holds more than the check.
  check();
  const megabytes = process.resourceUsage().maxRSS / 1024;
  const schemes = Array.from({ length: 6 }, () => readWhole(text));
  const compared = await ratioOf(
    () => {
      const scheme = schemes.pop();
      if (scheme !== undefined) checkCoverage(scheme, createReport().report);
    },
    () => parseMarkdown(text),
    schemes.length - 1,
  );
  return [
    ratioRow('coverage, 64 modes, 8 settings, 60 cells a mode, against the parse', 4, compared),
    {
      what: 'memory of reading and coverage of the same',
      value: megabytes,
      unit: 'MB',
      limit: { most: 300 },
      detail: 'the most the process has held',
    },
  ];
}
