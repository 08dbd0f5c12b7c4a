import { frameRate, STANDARDS, type StandardName, toNumber } from '../../hardware/clocks.js';
import type { Witness, WitnessStep } from '../finding.js';

/** Reads in a row in which the same happens. */
export interface TimelineRow {
  readonly first: number;
  readonly last: number;
  readonly engaged: readonly string[];
  readonly fires: readonly string[];
}

/** A witness for people: reads in a row that are alike are one row. */
export function foldWitness({ steps }: Witness): readonly TimelineRow[] {
  const rows: TimelineRow[] = [];
  for (const step of steps) {
    const before = rows.at(-1);
    if (before !== undefined && isAlike(before, step)) rows[rows.length - 1] = { ...before, last: step.read };
    else rows.push({ first: step.read, last: step.read, engaged: step.engaged, fires: step.fires });
  }
  return rows;
}

function isAlike(row: TimelineRow, step: WitnessStep): boolean {
  return isSame(row.engaged, step.engaged) && isSame(row.fires, step.fires);
}

function isSame(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((name, index) => name === b[index]);
}

/** Runs of more reads than this are told with their length. */
const LONGEST_PLAIN = 3;

/**
 * Three columns: reads (a long run with its length), what is engaged, what fires.
 *
 * @param readEvery frames between two reads
 */
export function timelineLines(witness: Witness, readEvery: number): readonly string[] {
  const period = periodMs(witness, readEvery);
  const rows = foldWitness(witness).map(row => ({
    reads: readsText(row, period),
    engaged: row.engaged.length === 0 ? 'nothing' : row.engaged.join(', '),
    fires: row.fires.map(action => `“${action}”`).join(', '),
  }));
  const reads = Math.max(...rows.map(row => row.reads.length));
  const engaged = Math.max(...rows.map(row => row.engaged.length));
  return rows.map(row =>
    [
      row.reads.padEnd(reads),
      row.fires === '' ? row.engaged : `${row.engaged.padEnd(engaged)}  → ${row.fires}`,
    ].join('  '),
  );
}

function readsText({ first, last }: TimelineRow, period: number): string {
  if (first === last) return `read ${first}`;
  const count = last - first + 1;
  const span = `reads ${first} to ${last}`;
  return count > LONGEST_PLAIN ? `${span} (${runText(count, period)})` : span;
}

/** `120 reads, 2.00 s` */
export function runText(reads: number, period: number): string {
  return `${reads} reads, ${durationText(reads * period)}`;
}

/** `2.00 s`, `83 ms`. */
export function durationText(ms: number): string {
  return ms >= 1000 ? `${(ms / 1000).toFixed(2)} s` : `${ms.toFixed(0)} ms`;
}

/** Milliseconds between two reads on the witness’s TV standard. */
function periodMs({ standard }: Witness, readEvery: number): number {
  return (1000 * readEvery) / toNumber(frameRate(STANDARDS[standard as StandardName]));
}
