import { bindingsOf, isInForce, needsSwitch } from '../gestures/bindings.js';
import type { ConsoleProfile } from '../hardware/consoles.js';
import type { BindingRow, Chord, Fallback, Mode, Scheme, SeatsRow } from '../language/model.js';
import { type CheckedRow, createCheckedRow, isSeated, reachOf } from './checked-row.js';

/** A fallback as a row of a mode; nothing where it is no binding of the mode, or stands for none of its rows. */
export function fallbackRow(scheme: Scheme, mode: Mode, fallback: Fallback): readonly CheckedRow[] {
  const { instead, subject } = fallback;
  if (instead.kind !== 'binding' || instead.mode !== mode) return [];
  const profiles = scheme.consoles.filter(
    profile =>
      isInForce(fallback, profile) &&
      (subject.kind === 'setting' || rowsStoodFor(fallback, mode, [profile]).length > 0),
  );
  if (profiles.length === 0) return [];
  const rows = rowsStoodFor(fallback, mode, profiles);
  const seated = mode.seats.filter(seats =>
    subject.kind === 'action'
      ? rows.some(row => isSeated(row, seats))
      : instead.alternatives.some(chord => hasPortPlayer(chord, seats)),
  );
  const bindingsIn = (seats: SeatsRow) =>
    profiles
      .flatMap(profile => bindingsOf(scheme, mode, seats, profile))
      .filter(({ origin }) => origin.kind === 'fallback' && origin.fallback === fallback);
  return [
    createCheckedRow(
      {
        mode,
        at: instead.at,
        actionName: subject.kind === 'action' ? subject.action.name : `${subject.setting.name}: next`,
        stepped: subject.kind === 'setting' ? subject.setting : null,
        alternatives: instead.alternatives,
        gesture: instead.gesture,
        effects:
          subject.kind === 'action'
            ? rows.flatMap(row => row.effects)
            : [{ kind: 'step', setting: subject.setting, by: 1, at: instead.at }],
        consoles: profiles.map(({ name }) => name),
        reach: reachOf(`fallback ${scheme.fallbacks.indexOf(fallback)}`, instead.alternatives, seated),
        seated,
      },
      bindingsIn,
    ),
  ];
}

function rowsStoodFor(
  { subject, without }: Fallback,
  mode: Mode,
  profiles: readonly ConsoleProfile[],
): readonly BindingRow[] {
  if (subject.kind !== 'action') return [];
  return mode.rows.filter(
    row => row.action === subject.action && profiles.some(profile => needsSwitch(row, without, profile)),
  );
}

/** The row of a setting is the port's player's, or anyone's where it names no port. */
function hasPortPlayer(chord: Chord, seats: SeatsRow): boolean {
  return chord.parts.every(
    part =>
      part.kind === 'switch' ||
      part.port === null ||
      seats.players.some(
        ({ port, letter }) => port === part.port && (part.letter === '' || part.letter === letter),
      ),
  );
}
