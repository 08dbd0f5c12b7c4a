import type { Action, Mode, SeatsRow } from '../../language/model.js';
import { createMemory } from '../../memory.js';
import type { Doer, Doing } from './doings.js';
import type { Facts } from './facts.js';
import type { OfferedMode } from './offers.js';

/** Who can do what in a mode. */
export type ModeDoers = ReadonlyMap<Action, ReadonlySet<Doer>>;

/** Who can do what in some reachable state, by mode. */
export type Doers = ReadonlyMap<Mode, ModeDoers>;

/** @param by whether what fallbacks bring counts too */
export function doersOf({ offer, usable }: Facts, by: 'rows' | 'rows and fallbacks'): Doers {
  return new Map(
    [...offer.modes].map(([mode, offered]) => {
      const here = usable.get(mode) ?? NOTHING;
      const counts = by === 'rows' || !offered.doings.some(({ fallback }) => fallback !== null);
      return [mode, remembered([offered, here, counts], () => doersIn(offered, here, counts))];
    }),
  );
}

const NOTHING: ReadonlySet<Doing> = new Set();

const remembered = createMemory<ModeDoers>();

function doersIn({ doings }: OfferedMode, usable: ReadonlySet<Doing>, rowsOnly: boolean): ModeDoers {
  const doers = new Map<Action, Set<Doer>>();
  for (const doing of doings) {
    if (doing.action === null || !usable.has(doing)) continue;
    if (doing.fallback !== null && rowsOnly) continue;
    const known = doers.get(doing.action);
    if (known === undefined) doers.set(doing.action, new Set(doing.doers));
    else for (const doer of doing.doers) known.add(doer);
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
  return players.every(({ name }) => doers.has(name));
}
