import type { Place, Placed } from '../findings/place.js';
import type { Binding } from '../gestures/bindings.js';
import type { BindingRow, Chord, Effect, Gesture, Mode, SeatsRow, Setting } from '../language/model.js';
import { chordText } from './control-text.js';

/** A binding as the rules look at it: a row of a mode's table, or a fallback where it is in force. */
export interface CheckedRow {
  readonly mode: Mode;
  /** The action's words, or the fallback's. */
  readonly at: Place;
  /** `SETTING: next` for a fallback that steps a setting. */
  readonly actionName: string;
  /** The setting that a fallback steps; null for all other rows. */
  readonly stepped: Setting | null;
  readonly alternatives: readonly Chord[];
  readonly gesture: Placed<Gesture>;
  readonly effects: readonly Effect[];
  /** The consoles on which a fallback is in force; null for a row of the table. */
  readonly consoles: readonly string[] | null;
  /** Rows with the same reach have the same contacts for the same players in the same seats rows. */
  readonly reach: string;
  /** Every seats row of the mode in which its player sits. */
  readonly seated: readonly SeatsRow[];
  /** What can be done in each of them, which may be nothing; worked out when it is first asked for. */
  readonly bindings: ReadonlyMap<SeatsRow, readonly Binding[]>;
}

/** @param expand what can be done in one of the seats rows */
export function createCheckedRow(
  row: Omit<CheckedRow, 'bindings'>,
  expand: (seats: SeatsRow) => readonly Binding[],
): CheckedRow {
  let bindings: ReadonlyMap<SeatsRow, readonly Binding[]> | undefined;
  return {
    ...row,
    get bindings() {
      bindings ??= new Map(row.seated.map(seats => [seats, expand(seats)]));
      return bindings;
    },
  };
}

/** @param who whose row it is, as a text */
export function reachOf(who: string, alternatives: readonly Chord[], seated: readonly SeatsRow[]): string {
  const controls = alternatives.map(chordText).join(' or ');
  return [who, controls, ...seated.map(({ name }) => name)].join('\n');
}

/** True where the row's player sits in the seats row; anyone always does. */
export function isSeated(row: BindingRow, seats: SeatsRow): boolean {
  const who = row.who.value;
  return who.kind !== 'player' || seats.players.some(player => player.name === who.player);
}
