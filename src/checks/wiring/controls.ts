import type { Report } from '../../findings/report.js';
import type { CheckedRow } from '../checked-row.js';
import { chordText, detailsOf } from '../text.js';

/** `no-such-control`: the player is there, but no alternative of the row fits anything that is plugged in. */
export function checkControls(rows: readonly CheckedRow[], report: Report): void {
  const fitting = new Set<string>();
  for (const row of rows) {
    const { seated, reach } = row;
    if (seated.length === 0 || fitting.has(reach)) continue;
    if ([...row.bindings.values()].some(found => found.length > 0)) {
      fitting.add(reach);
      continue;
    }
    const first = row.alternatives[0];
    if (first === undefined) continue;
    const controls = row.alternatives.map(chordText);
    report(
      'no-such-control',
      first.at,
      { action: row.actionName, mode: row.mode.name, control: controls.join(' or ') },
      { ...detailsOf(row), seats: seated.map(({ name }) => name), controls },
    );
  }
}
