import { createReport } from '../../dist/findings/report.js';
import { handoffFacts } from '../../dist/handoff/index.js';
import { readScheme } from '../../dist/language/read.js';

/** What the reading routine of a scheme's dearest mode costs. */
export interface RoutineCost {
  /** At its worst, JSR and RTS included. */
  readonly cycles: number;
  readonly romBytes: number;
  readonly ramBytes: number;
  /** Milliseconds to make the routines of the whole scheme. */
  readonly made: number;
}

/** @param text of a scheme without faults of language (tests/support/target-scheme.ts) */
export function benchReadingRoutine(text: string): RoutineCost {
  const scheme = readScheme([{ path: 'target.md', text }], createReport().report);
  if (scheme === null || !scheme.complete) throw new Error('the scheme of the benchmark has errors');
  const start = performance.now();
  const { modes } = handoffFacts(scheme);
  const made = performance.now() - start;
  return {
    cycles: Math.max(...modes.map(({ cycles }) => cycles)),
    romBytes: Math.max(...modes.map(({ romBytes }) => romBytes)),
    ramBytes: Math.max(...modes.map(({ ramBytes }) => ramBytes)),
    made,
  };
}
