import type { Report } from '../findings/report.js';
import { badValue, createSpot } from './faults.js';
import type { Action, BindingRow, Fallback, Mode, PlayerName, Who } from './model.js';
import { listWords } from './spelling.js';

/**
 * What `Instead of` names must be something that the row can hold back: another row of the mode that the same
 * player has, or a fallback that stands in the mode.
 *
 * @param modes those whose rows could all be read
 */
export function checkInsteadOf(modes: readonly Mode[], fallbacks: readonly Fallback[], report: Report): void {
  for (const mode of modes)
    for (const row of mode.rows)
      for (const { value, at } of row.insteadOf) {
        const problem = problemOf(value, row, fallbacks);
        if (problem === null) continue;
        const spot = createSpot(report, ` of “${row.action.name}” in “${mode.name}”`, {
          mode: mode.name,
          actions: [...new Set([row.action.name, value.name])],
        });
        badValue(spot, at, 'Instead of', problem, [
          ...ownRowWays(value, row),
          `Take “${value.name}” out.`,
          ...otherWays(row),
        ]);
      }
}

/** Why the row can't hold the action back; null where it can. */
function problemOf(action: Action, row: BindingRow, fallbacks: readonly Fallback[]): string | null {
  const { mode, who } = row;
  if (who.value.kind === 'game')
    return 'the game does this by itself, with no control that could hold anything back';
  if (fallbacks.some(fallback => standsFor(fallback, action, mode))) return null;
  const own = mode.rows.filter(other => other.action === action);
  const others = own.filter(other => other !== row && other.who.value.kind !== 'game');
  if (others.some(other => isOfOnePlayer(other.who.value, who.value))) return null;
  if (others.length > 0)
    return `“${action.name}” is another player’s in “${mode.name}”, so it is never held back`;
  if (action === row.action)
    return `“${action.name}” has no other row in “${mode.name}”, and a row never holds itself back`;
  return own.length > 0
    ? `the game does “${action.name}” by itself in “${mode.name}”, so it is never held back`
    : `“${action.name}” has no row in “${mode.name}”, so there is nothing to hold back`;
}

const standsFor = ({ instead, subject }: Fallback, action: Action, mode: Mode): boolean =>
  instead.kind === 'binding' &&
  instead.mode === mode &&
  subject.kind === 'action' &&
  subject.action === action;

/** A row for each player is everyone's own; one for anyone holds back, and is held back by, every player's. */
const isOfOnePlayer = (one: Who, other: Who): boolean =>
  one.kind !== 'player' ||
  other.kind !== 'player' ||
  sitsAs(one.player, other.player) ||
  sitsAs(other.player, one.player);

const sitsAs = (player: PlayerName, place: PlayerName): boolean => `${player} `.startsWith(`${place} `);

/** Of alternatives in one row none holds another back, but a row of the same action can be held back. */
const ownRowWays = (action: Action, row: BindingRow): readonly string[] =>
  action === row.action && row.alternatives.length > 1
    ? [`Write the alternative that is held back as a row of its own, with the action “${action.name}” too.`]
    : [];

/** The actions that the row could hold back. */
function otherWays({ mode, action, who }: BindingRow): readonly string[] {
  const names = mode.rows
    .filter(row => row.action !== action && row.who.value.kind !== 'game')
    .filter(row => isOfOnePlayer(row.who.value, who.value))
    .map(row => row.action.name);
  return names.length === 0 || who.value.kind === 'game'
    ? []
    : [`Name an action that has a row in “${mode.name}”: ${listWords([...new Set(names)])}.`];
}
