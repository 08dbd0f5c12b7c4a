import type { Action, Mode, SeatsRow } from '../../language/model.js';
import type { Doer } from './doings.js';
import type { Facts } from './facts.js';

/** Who can do what in some reachable state, by mode. */
export type Doers = ReadonlyMap<Mode, ReadonlyMap<Action, ReadonlySet<Doer>>>;

/** @param by whether what fallbacks bring counts too */
export function doersOf({ offer, usable }: Facts, by: 'rows' | 'rows and fallbacks'): Doers {
  const doers = new Map<Mode, Map<Action, Set<Doer>>>();
  for (const [mode, { doings }] of offer.modes) {
    const ofMode = new Map<Action, Set<Doer>>();
    doers.set(mode, ofMode);
    for (const doing of doings) {
      if (doing.action === null || !usable.get(mode)?.has(doing)) continue;
      if (doing.fallback !== null && by === 'rows') continue;
      const known = ofMode.get(doing.action);
      if (known === undefined) ofMode.set(doing.action, new Set(doing.doers));
      else for (const doer of doing.doers) known.add(doer);
    }
  }
  return doers;
}

/**
 * Whether an action is there for someone. What anyone can do, each player can; what every seated player can do,
 * anyone can; and what the game does by itself is nobody's loss.
 */
export function isThereFor(doer: Doer, doers: ReadonlySet<Doer> | undefined, { players }: SeatsRow): boolean {
  if (doers === undefined) return false;
  if (doers.has(doer) || doers.has('anyone') || doers.has('game')) return true;
  return doer === 'anyone' && players.every(({ name }) => doers.has(name));
}
