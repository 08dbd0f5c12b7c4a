import type { Report } from '../findings/report.js';
import type { Position, TwoPositionSwitchName } from '../hardware/switches.js';
import { badValue, createSpot } from './faults.js';
import type { Setting } from './model.js';
import { listWords } from './spelling.js';
import type { Words } from './words.js';

/** Each switch must be able to stand so that all its settings are as they start. */
export function checkStarts(
  settings: readonly Setting[],
  startWords: ReadonlyMap<Setting, Words>,
  unclear: ReadonlySet<Setting>,
  report: Report,
): void {
  const possible = new Map<
    TwoPositionSwitchName,
    { readonly positions: readonly Position[]; readonly by: Setting }
  >();
  for (const setting of settings) {
    const words = startWords.get(setting);
    const { setBy } = setting;
    if (setBy.kind !== 'switch' || words === undefined || unclear.has(setting)) continue;
    const asked = [...setBy.values]
      .filter(([, value]) => value === setting.startsAs)
      .map(([position]) => position);
    const spot = createSpot(report, ` of “${setting.name}”`, { settings: [setting.name] });
    if (asked.length === 0) {
      badValue(spot, words, 'Starts as', `no position of ${setBy.name} gives “${setting.startsAs}”`, [
        `Write ${listWords([...new Set(setBy.values.values())])}.`,
      ]);
      continue;
    }
    const before = possible.get(setBy.name);
    const both = before === undefined ? asked : asked.filter(position => before.positions.includes(position));
    if (before !== undefined && both.length === 0)
      badValue(
        createSpot(report, spot.of, { settings: [before.by.name, setting.name] }),
        words,
        'Starts as',
        `this needs ${setBy.name} at ${asked.join(' or ')}, but “${before.by.name}” starts as “${before.by.startsAs}”, which needs ${before.positions.join(' or ')}`,
        ['Let both start with the values of one position, or set one of them by another switch.'],
      );
    else possible.set(setBy.name, { positions: both, by: setting });
  }
}
