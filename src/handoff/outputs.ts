import type { Binding } from '../gestures/bindings.js';
import type { Direction } from '../hardware/controllers.js';
import type { Mode, PlayerName, Scheme } from '../language/model.js';
import { symbolOf } from '../language/symbol.js';
import type { Unit } from './units.js';

/** What the routine tells the game: one bit of a mode's fired bytes. */
export interface Output {
  readonly mode: Mode;
  readonly actionName: string;
  readonly player: PlayerName | 'anyone';
  readonly direction: Direction | null;
  /** `LH_HARBOUR_STEER_LEFT_UP`; no two alike in a scheme. */
  readonly symbol: string;
  /** Which fired byte, from 0. */
  readonly byte: number;
  /** 0 to 7. */
  readonly bit: number;
}

/** Where a unit has an output's bit already, so that all of one group can be moved at once. */
export interface Wish {
  /** The byte they lie in. */
  readonly group: string;
  /** 0 to 7. */
  readonly bit: number;
}

export type WishOf = (binding: Binding) => Wish | null;

export function outputKey(binding: Pick<Binding, 'actionName' | 'player' | 'direction'>): string {
  return JSON.stringify([binding.actionName, binding.player, binding.direction]);
}

/** Every output of a mode by its key, over all its seats rows and consoles. */
export type OutputsOfMode = ReadonlyMap<string, Output>;

/** How many fired bytes a mode has. */
export function byteCount(outputs: OutputsOfMode | undefined): number {
  return Math.max(0, ...[...(outputs?.values() ?? [])].map(({ byte }) => byte + 1));
}

/** @param claim makes a symbol that nothing else has */
export function outputsOf(
  scheme: Scheme,
  mode: Mode,
  units: readonly { readonly unit: Unit; readonly wishOf: WishOf }[],
  claim: (symbol: string) => string,
): OutputsOfMode {
  const first = new Map<string, { readonly binding: Binding; readonly wish: Wish | null }>();
  for (const { unit, wishOf } of units) {
    for (const binding of unit.bindings) {
      const key = outputKey(binding);
      const known = first.get(key);
      if (known === undefined || known.wish === null) first.set(key, { binding, wish: wishOf(binding) });
    }
  }
  const places = placeBits([...first].map(([key, { wish }]) => ({ key, wish })));
  const players = playersOfActions([...first.values()].map(({ binding }) => binding));
  const outputs = [...first].map(([key, { binding }]): [string, Output] => {
    const place = places.get(key) ?? { byte: 0, bit: 0 };
    const isTold = (players.get(binding.actionName)?.size ?? 0) > 1 && binding.player !== 'anyone';
    const names = [scheme.game.shortName.value, mode.name, binding.actionName];
    const symbol = symbolOf(
      ...names,
      ...(isTold ? [binding.player] : []),
      ...(binding.direction ? [binding.direction] : []),
    );
    const { actionName, player, direction } = binding;
    return [key, { mode, actionName, player, direction, symbol: claim(symbol), ...place }];
  });
  return new Map(outputs);
}

function playersOfActions(bindings: readonly Binding[]): ReadonlyMap<string, ReadonlySet<string>> {
  const players = new Map<string, Set<string>>();
  for (const { actionName, player } of bindings) {
    players.set(actionName, (players.get(actionName) ?? new Set()).add(player));
  }
  return players;
}

interface BitPlace {
  readonly byte: number;
  readonly bit: number;
}

const BITS = 8;

interface Asked {
  readonly key: string;
  readonly wish: Wish | null;
}

/** Whole groups first, the largest first, each in the first byte where its bits are free; the others fill the gaps. */
function placeBits(asked: readonly Asked[]): ReadonlyMap<string, BitPlace> {
  const places = new Map<string, BitPlace>();
  const taken = new Set<number>();
  const take = (key: string, place: number) => {
    taken.add(place);
    places.set(key, { byte: Math.floor(place / BITS), bit: place % BITS });
  };
  for (const group of groupsOf(asked)) {
    let byte = 0;
    while (group.some(({ bit }) => taken.has(byte * BITS + bit))) byte++;
    for (const { key, bit } of group) take(key, byte * BITS + bit);
  }
  for (const { key } of asked) {
    if (places.has(key)) continue;
    let place = 0;
    while (taken.has(place)) place++;
    take(key, place);
  }
  return places;
}

/** Outputs that share a byte; one that wishes for a bit another of its group has already is left out. */
function groupsOf(asked: readonly Asked[]): readonly (readonly { key: string; bit: number }[])[] {
  const groups = new Map<string, { key: string; bit: number }[]>();
  for (const { key, wish } of asked) {
    if (wish === null) continue;
    const group = groups.get(wish.group) ?? [];
    groups.set(wish.group, group);
    if (group.every(({ bit }) => bit !== wish.bit)) group.push({ key, bit: wish.bit });
  }
  return [...groups.values()].toSorted((a, b) => b.length - a.length);
}

/** The outputs of a mode in the order of their bits. */
export function outputList(outputs: OutputsOfMode | undefined): readonly Output[] {
  return [...(outputs?.values() ?? [])].toSorted((a, b) => a.byte - b.byte || a.bit - b.bit);
}
