import { type FindingDetails, type RelatedPlace, relatedTo } from '../../findings/finding.js';
import type { Place } from '../../findings/place.js';
import type { NamedTime, Scheme, Time } from '../../language/model.js';
import type { CheckedRow } from '../checked-row.js';
import { detailsOf, gestureText, unique } from '../text.js';

/** A time as the scheme writes it once, and the rows that use it: several for a time of `## Timing`. */
export interface TimeUse {
  readonly time: Time;
  /** Where it is written. */
  readonly at: Place;
  readonly named: NamedTime | null;
  readonly rows: readonly CheckedRow[];
}

/** Every time that is used, in the order of first use. */
export function timeUses(scheme: Scheme, rows: readonly CheckedRow[]): readonly TimeUse[] {
  const uses = new Map<NamedTime | CheckedRow, TimeUse & { readonly rows: CheckedRow[] }>();
  const times = new Map(scheme.times.map(named => [named.name, named]));
  for (const row of rows) {
    const gesture = row.gesture.value;
    if (!('time' in gesture)) continue;
    const { time } = gesture;
    const named = (time.name === null ? undefined : times.get(time.name)) ?? null;
    const use = uses.get(named ?? row);
    if (use === undefined) {
      uses.set(named ?? row, { time, at: named?.time.at ?? time.at, named, rows: [row] });
    } else {
      use.rows.push(row);
    }
  }
  return [...uses.values()];
}

/** How a message calls it: `40 frames`, `“long press” (40 frames)`. */
export function timeText({ time, named }: TimeUse): string {
  return named === null ? time.text : `“${named.name}” (${named.time.text})`;
}

/** What a finding about the time concerns, `rows` being those of its rows that are at fault. */
export function timeDetails({ named }: TimeUse, rows: readonly CheckedRow[]): FindingDetails {
  const [first] = rows;
  if (named === null) return first === undefined ? {} : detailsOf(first);
  const modes = unique(rows.map(({ mode }) => mode.name));
  const consoles = unique(rows.flatMap(row => row.consoles ?? []));
  const related: readonly RelatedPlace[] = rows.map(row =>
    relatedTo(
      row.gesture.at,
      `“${row.actionName}” in ${row.mode.name} uses it (${gestureText(row.gesture.value)})`,
    ),
  );
  return {
    ...(modes.length === 1 && modes[0] !== undefined ? { mode: modes[0] } : {}),
    actions: unique(rows.map(({ actionName }) => actionName)),
    ...(rows.every(row => row.consoles !== null) ? { consoles } : {}),
    related,
  };
}
