import type { Report } from '../findings/report.js';
import type { Scheme } from '../language/model.js';
import { checkedRows } from './rows.js';
import { checkChords } from './wiring/chords.js';
import { checkControls } from './wiring/controls.js';
import { checkLatch } from './wiring/latch.js';
import { checkLines } from './wiring/lines.js';
import { checkSwitches } from './wiring/switches.js';

/** The rules on what is plugged in and how it reaches the machine. */
export function checkWiring(scheme: Scheme, report: Report): void {
  const rows = checkedRows(scheme);
  checkControls(rows, report);
  checkChords(rows, report);
  checkLines(scheme, rows, report);
  checkLatch(scheme, rows, report);
  checkSwitches(rows, report);
}
