import type { Place } from '../../findings/place.js';
import type { PlayerName, Scheme } from '../../language/model.js';
import { symbolOf, symbolPart } from '../../language/symbol.js';
import { checkedRows } from '../rows.js';

/** A symbol of an action in a mode: `LH_HARBOUR_STEER_LEFT_UP`. */
export interface BoundSymbol {
  readonly symbol: string;
  /** Mode, action and, where they are told apart, player and direction. */
  readonly names: readonly string[];
  readonly mode: string;
  readonly action: string;
  readonly at: Place;
}

/** The symbols of all actions of all modes, each once; what the game does by itself has none. */
export function boundSymbols(scheme: Scheme): readonly BoundSymbol[] {
  const symbols = new Map<string, BoundSymbol>();
  const bindings = checkedRows(scheme).flatMap(row =>
    [...row.bindings.values()].flat().map(({ player, direction }) => ({ row, player, direction })),
  );
  const players = new Map<string, Set<PlayerName | 'anyone'>>();
  for (const { row, player } of bindings) {
    const key = JSON.stringify([row.mode.name, row.actionName]);
    players.set(key, (players.get(key) ?? new Set()).add(player));
  }
  for (const { row, player, direction } of bindings) {
    const { mode, actionName, at } = row;
    const isToldApart = (players.get(JSON.stringify([mode.name, actionName]))?.size ?? 0) > 1;
    const who = isToldApart && player !== 'anyone' ? player : null;
    const names = [mode.name, actionName, who, direction].filter(name => name !== null);
    const key = names.join('\n');
    if (symbols.has(key)) continue;
    const symbol = symbolOf(scheme.game.shortName.value, ...names);
    symbols.set(key, { symbol, names, mode: mode.name, action: actionName, at });
  }
  return [...symbols.values()];
}

/** What may follow the action in a symbol: a player, a direction, or a part of the two. */
const SUFFIX = /_(?:LEFT|RIGHT|UP|DOWN|A|B)$/;

/**
 * Whether two of the symbols could be alike though their names are not: quick to tell, as either two modes and
 * actions run together to the same, or one of them and a player or direction do.
 */
export function mayRunTogether(scheme: Scheme): boolean {
  const parts = new Map<string, string>();
  const partOf = (name: string) => parts.get(name) ?? symbolPart(name);
  const stems = new Map<string, string>();
  for (const { mode, actionName } of checkedRows(scheme)) {
    for (const name of [mode.name, actionName]) parts.set(name, partOf(name));
    const pair = `${partOf(mode.name)} ${partOf(actionName)}`;
    const stem = pair.replace(' ', '_');
    if ((stems.get(stem) ?? pair) !== pair) return true;
    stems.set(stem, pair);
  }
  return [...stems.keys()].some(stem => hasShorter(stem, stems));
}

function hasShorter(stem: string, stems: ReadonlyMap<string, string>): boolean {
  for (let rest = stem; SUFFIX.test(rest); ) {
    rest = rest.replace(SUFFIX, '');
    if (stems.has(rest)) return true;
  }
  return false;
}
