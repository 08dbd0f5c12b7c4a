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

/** Three columns: reads, what is engaged, what fires. */
export function timelineLines(witness: Witness): readonly string[] {
  const rows = foldWitness(witness).map(({ first, last, engaged, fires }) => ({
    reads: first === last ? `read ${first}` : `reads ${first} to ${last}`,
    engaged: engaged.length === 0 ? 'nothing' : engaged.join(', '),
    fires: fires.map(action => `“${action}”`).join(', '),
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
