import type { Report } from '../../findings/report.js';
import { type Fraction, frameRate, type TvStandard } from '../../hardware/clocks.js';
import type { Gesture, Scheme, Time } from '../../language/model.js';
import { readsOf, secondsOf } from '../../language/time.js';
import type { CheckedRow } from '../checked-row.js';
import { gestureText, listText } from '../text.js';
import { type TimeUse, timeDetails, timeText, timeUses } from './uses.js';

/** Reads that a counter of one byte holds. */
const MOST_READS = 255;

/** The shortest windows that people manage, milliseconds (from memory). */
const NEEDED_MS: Readonly<Partial<Record<Gesture['kind'], number>>> = { tap: 100, 'double tap': 150 };

/** `too-long-for-a-byte`, `too-quick` and `uneven-standards`: one finding for each time as written. */
export function checkTimes(scheme: Scheme, rows: readonly CheckedRow[], report: Report): void {
  for (const use of timeUses(scheme, rows)) {
    checkLength(scheme, use, report);
    checkQuick(scheme, use, report);
    checkEvenness(scheme, use, report);
  }
}

function checkLength(scheme: Scheme, use: TimeUse, report: Report): void {
  const every = scheme.game.readEvery.value;
  const long = scheme.standards
    .map(standard => ({ standard, reads: readsOf(use.time, standard, every) }))
    .filter(({ reads }) => reads > MOST_READS);
  const worst = long.toSorted((a, b) => b.reads - a.reads)[0];
  if (worst === undefined) return;
  const reads = long.map(({ standard, reads }) => `${reads} reads on ${standard.name}`);
  report(
    'too-long-for-a-byte',
    use.at,
    { time: timeText(use), reads: listText(reads) },
    {
      ...timeDetails(use, use.rows),
      standards: long.map(({ standard }) => standard.name),
      waysOut: [
        `Make it ${longestText(use.time, worst.standard, every)} or shorter.`,
        'Read the inputs less often (`Reads inputs`).',
      ],
    },
  );
}

/** The longest round time that still fits: rounded down to 0.1 s, or to whole frames. */
function longestText(time: Time, standard: TvStandard, every: number): string {
  if (time.unit === 'frames') return `${MOST_READS * every} frames`;
  const { numerator, denominator } = frameRate(standard);
  const tenths = (BigInt(MOST_READS * every) * denominator * 10n) / numerator;
  return `${Number(tenths) / 10} s`;
}

function checkQuick(scheme: Scheme, use: TimeUse, report: Report): void {
  const isQuick = (row: CheckedRow, standard: TvStandard) =>
    compareSeconds(use.time, standard, neededMs(row), 1000) < 0;
  const rows = use.rows.filter(row => scheme.standards.some(standard => isQuick(row, standard)));
  const [worst] = rows.toSorted((a, b) => neededMs(b) - neededMs(a));
  if (worst === undefined) return;
  const standards = scheme.standards.filter(standard => rows.some(row => isQuick(row, standard)));
  report(
    'too-quick',
    use.at,
    {
      gesture: gestureText(worst.gesture.value),
      given: durationsText(use.time, standards, 'ms'),
      needed: neededMs(worst),
    },
    { ...timeDetails(use, rows), standards: standards.map(({ name }) => name) },
  );
}

const neededMs = (row: CheckedRow): number => NEEDED_MS[row.gesture.value.kind] ?? 0;

/** Below 0 where the time is less than `numerator / denominator` seconds, exactly. */
function compareSeconds(time: Time, standard: TvStandard, numerator: number, denominator: number): number {
  const seconds = exactSeconds(time, standard);
  return Number(seconds.numerator * BigInt(denominator) - BigInt(numerator) * seconds.denominator);
}

function exactSeconds(time: Time, standard: TvStandard): Fraction {
  if (time.unit === 'seconds') return time.amount;
  const rate = frameRate(standard);
  return {
    numerator: time.amount.numerator * rate.denominator,
    denominator: time.amount.denominator * rate.numerator,
  };
}

/** `80 ms`, or where it differs `0.668 s on NTSC and 0.802 s on PAL`. */
function durationsText(time: Time, standards: readonly TvStandard[], unit: 's' | 'ms'): string {
  const text = (standard: TvStandard) => {
    const seconds = secondsOf(time, standard);
    return unit === 's' ? `${seconds.toFixed(3)} s` : `${Number((seconds * 1000).toFixed(1))} ms`;
  };
  const [first] = standards;
  if (time.unit === 'seconds' && first !== undefined) return text(first);
  return listText(standards.map(standard => `${text(standard)} on ${standard.name}`));
}

function checkEvenness(scheme: Scheme, use: TimeUse, report: Report): void {
  if (use.time.unit !== 'frames' || !isUneven(use.time, scheme.standards)) return;
  report(
    'uneven-standards',
    use.at,
    { time: timeText(use), durations: durationsText(use.time, scheme.standards, 's') },
    { ...timeDetails(use, use.rows), standards: scheme.standards.map(({ name }) => name) },
  );
}

/** True where two standards differ by more than a tenth of the shorter and more than 50 ms, exactly. */
function isUneven(time: Time, standards: readonly TvStandard[]): boolean {
  const lengths = standards.map(standard => exactSeconds(time, standard));
  return lengths.some(short =>
    lengths.some(long => {
      // long − short, over the common denominator.
      const difference = long.numerator * short.denominator - short.numerator * long.denominator;
      const tenth = short.numerator * long.denominator;
      return difference * 10n > tenth && difference * 20n > long.denominator * short.denominator;
    }),
  );
}
