import type { Report } from '../findings/report.js';
import type { Scheme } from '../language/model.js';
import { checkedRows } from './rows.js';
import { checkReads } from './timing/reads.js';
import { checkTimes } from './timing/times.js';

/** The rules on how often inputs are read, and on the times of gestures. */
export function checkTiming(scheme: Scheme, report: Report): void {
  const rows = checkedRows(scheme);
  checkReads(scheme, rows, report);
  checkTimes(scheme, rows, report);
}
