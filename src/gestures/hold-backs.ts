import type { Binding } from './bindings.js';
import type { Contact } from './contacts.js';

/** `Instead of`, resolved: while `holder`’s control is engaged, `held` is held back. Indices of one mode's bindings. */
export interface HoldBack {
  readonly holder: number;
  readonly held: number;
  /** Ids of the lines that must all be let go before it ends: those the two share, else all of `held`’s. */
  readonly until: readonly string[];
}

/**
 * Every hold-back among the bindings of a mode: for the same player, an `anyone` row for every player, and an
 * `anyone` binding by any player's row. A row never holds itself back.
 */
export function holdBacksOf(bindings: readonly Binding[]): readonly HoldBack[] {
  const found: HoldBack[] = [];
  bindings.forEach((holder, holderIndex) => {
    if (holder.insteadOf.length === 0) return;
    bindings.forEach((held, heldIndex) => {
      if (holdsBack(holder, held))
        found.push({ holder: holderIndex, held: heldIndex, until: untilLines(holder.parts, held.parts) });
    });
  });
  return found;
}

function holdsBack(holder: Binding, held: Binding): boolean {
  if (held.action === null || holder.order === held.order || !holder.insteadOf.includes(held.action))
    return false;
  return holder.player === held.player || holder.player === 'anyone' || held.player === 'anyone';
}

function untilLines(holder: readonly Contact[], held: readonly Contact[]): readonly string[] {
  const own = held.map(({ id }) => id);
  const shared = own.filter(id => holder.some(part => part.id === id));
  return shared.length > 0 ? shared : own;
}
