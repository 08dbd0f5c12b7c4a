import { handoffFacts } from '../../dist/handoff/index.js';
import { TARGET_SCHEME } from '../support/target-scheme.js';
import type { BenchRow } from './row.js';
import { readWhole } from './scheme.js';

/** What the reading routine costs: two joysticks, eight directions, a tap and a hold on each button, three switches. */
export function benchReadingRoutine(): readonly BenchRow[] {
  const { modes } = handoffFacts(readWhole(TARGET_SCHEME));
  const most = (pick: (mode: (typeof modes)[number]) => number) => Math.max(...modes.map(pick));
  return [
    {
      what: 'reading routine, two joysticks, three switches: worst read',
      value: most(({ cycles }) => cycles),
      unit: 'cycles',
      limit: { most: 260 },
      detail: `${most(({ romBytes }) => romBytes)} bytes of ROM, JSR and RTS included`,
    },
    {
      what: 'reading routine: state in RAM',
      value: most(({ ramBytes }) => ramBytes),
      unit: 'bytes',
      limit: { most: 12 },
      detail: 'of 128',
    },
  ];
}
