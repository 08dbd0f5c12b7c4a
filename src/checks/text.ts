import type { FindingDetails } from '../findings/finding.js';
import type { Binding } from '../gestures/bindings.js';
import type { Gesture, SeatsRow } from '../language/model.js';
import type { CheckedRow } from './checked-row.js';

export { chordText } from './control-text.js';

const TIMED = { hold: 'hold', tap: 'tap under', 'double tap': 'double tap within', repeat: 'repeat every' };

/** A gesture as the language writes it; a named time by its name. */
export function gestureText(gesture: Gesture): string {
  switch (gesture.kind) {
    case 'press':
    case 'release':
    case 'held':
    case 'turn':
    case 'flip':
      return gesture.kind;
    case 'at':
    case 'flip to':
      return `${gesture.kind} ${gesture.position}`;
    case 'hold':
    case 'tap':
    case 'double tap':
    case 'repeat':
      return `${TIMED[gesture.kind]} ${gesture.time.name ?? gesture.time.text}`;
    default:
      return gesture satisfies never;
  }
}

/** `a`, `a and b`, `a, b and c`. */
export function listText(items: readonly string[], joiner = 'and'): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} ${joiner} ${last}`;
}

/** What a finding about a row concerns. */
export function detailsOf(row: CheckedRow): FindingDetails {
  return {
    mode: row.mode.name,
    actions: [row.actionName],
    ...(row.stepped === null ? {} : { settings: [row.stepped.name] }),
    ...(row.consoles === null ? {} : { consoles: row.consoles }),
  };
}

/** What a finding about some of a row's bindings concerns. */
export function detailsOfBindings(
  row: CheckedRow,
  found: readonly { readonly seats: SeatsRow; readonly binding: Binding }[],
): FindingDetails {
  const players = found.flatMap(({ binding }) => (binding.player === 'anyone' ? [] : [binding.player]));
  return {
    ...detailsOf(row),
    seats: unique(found.map(({ seats }) => seats.name)),
    ...(players.length === 0 ? {} : { players: unique(players) }),
  };
}

/** Without repeats, in the order of first appearance. */
export function unique<T>(items: readonly T[]): readonly T[] {
  return [...new Set(items)];
}
