import { type Report, recordReports } from '../findings/report.js';
import type { Mode, Scheme } from '../language/model.js';
import { createMemory } from '../memory.js';
import { checkedRows, checkedRowsOf } from './rows.js';
import { checkChords } from './wiring/chords.js';
import { checkControls } from './wiring/controls.js';
import { checkLatch } from './wiring/latch.js';
import { checkLines } from './wiring/lines.js';
import { checkSwitches } from './wiring/switches.js';

/** The rules on what is plugged in and how it reaches the machine. */
export function checkWiring(scheme: Scheme, report: Report): void {
  for (const mode of scheme.modes) checkMode(scheme, mode)(report);
  checkLines(scheme, checkedRows(scheme), report);
  checkLatch(scheme, checkedRows(scheme), report);
}

const remembered = createMemory<(report: Report) => void>(1);

/** The rules that look at one row at a time: looked at again only where the mode has other rows. */
function checkMode(scheme: Scheme, mode: Mode): (report: Report) => void {
  return remembered([mode.rows, mode, scheme.fallbacks, scheme.consoles], () => {
    const rows = checkedRowsOf(scheme, mode);
    return recordReports(report => {
      checkControls(rows, report);
      checkChords(rows, report);
      checkSwitches(rows, report);
    });
  });
}
