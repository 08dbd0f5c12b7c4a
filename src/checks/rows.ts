import { bindingsOfRow } from '../gestures/bindings.js';
import type { ConsoleProfile } from '../hardware/consoles.js';
import type { BindingRow, Mode, Scheme } from '../language/model.js';
import { createMemory } from '../memory.js';
import { type CheckedRow, createCheckedRow, isSeated, reachOf } from './checked-row.js';
import { fallbackRow } from './fallback-rows.js';

/** A console that lacks nothing: whether a switch is there is for the coverage rules to say. */
const EVERYTHING: ConsoleProfile = {
  name: 'everything',
  switches: {
    'TV type': { kind: 'front' },
    'left difficulty': { kind: 'front' },
    'right difficulty': { kind: 'front' },
    SELECT: { kind: 'front' },
    RESET: { kind: 'front' },
  },
  source: { key: 'P' },
};

/** All rows with a control, by mode, each mode's fallbacks after its own. */
export function checkedRows(scheme: Scheme): readonly CheckedRow[] {
  return ofScheme([scheme], () => scheme.modes.flatMap(mode => checkedRowsOf(scheme, mode)));
}

const ofScheme = createMemory<readonly CheckedRow[]>();

/** Those of one mode; the same objects while it has the same rows. */
export function checkedRowsOf(scheme: Scheme, mode: Mode): readonly CheckedRow[] {
  return remembered([mode.rows, mode, scheme.fallbacks, scheme.consoles], () => [
    ...mode.rows.flatMap(tableRow),
    ...scheme.fallbacks.flatMap(fallback => fallbackRow(scheme, mode, fallback)),
  ]);
}

const remembered = createMemory<readonly CheckedRow[]>();

function tableRow(row: BindingRow): readonly CheckedRow[] {
  if (row.gesture === null) return [];
  const { mode, at, action, alternatives, gesture, effects } = row;
  const seated = mode.seats.filter(seats => isSeated(row, seats));
  const who = row.who.value;
  return [
    createCheckedRow(
      {
        mode,
        at,
        actionName: action.name,
        stepped: null,
        alternatives,
        gesture,
        effects,
        consoles: null,
        reach: reachOf(who.kind === 'player' ? who.player : who.kind, alternatives, seated),
        seated,
      },
      seats => bindingsOfRow(row, seats, EVERYTHING),
    ),
  ];
}
