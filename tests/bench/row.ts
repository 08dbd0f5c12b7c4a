import type { Compared } from './measure.js';

/** One line of the table. */
export interface BenchRow {
  readonly what: string;
  readonly value: number;
  /** `×`, `MB`, `cycles`. */
  readonly unit: string;
  /** The bound that the project holds itself to; null where it only watches. */
  readonly limit: { readonly most: number } | { readonly least: number } | null;
  /** What was measured, for people. */
  readonly detail: string;
}

export function ratioRow(what: string, most: number | null, { ratio, work, floor }: Compared): BenchRow {
  return {
    what,
    value: ratio,
    unit: '×',
    limit: most === null ? null : { most },
    detail: `${work.toFixed(0)} ms against ${floor.toFixed(0)} ms`,
  };
}
