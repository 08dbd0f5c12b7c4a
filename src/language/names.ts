import type { Place } from '../findings/place.js';
import { duplicateName, type Spot, unknownName } from './faults.js';
import { findIn, normal, rejoined } from './spelling.js';
import type { Words } from './words.js';

/** The things of one kind, found by name without regard to case and spaces. */
export interface Names<T> {
  /** `mode`: goes after “There is no”. */
  readonly kind: string;
  readonly find: (name: string) => T | undefined;
  readonly list: () => readonly string[];
  /** Named, but what it is could not be read: its uses are left out without another finding. */
  readonly isUnclear: (name: string) => boolean;
  /** In the order of the scheme. */
  readonly all: () => readonly T[];
}

export interface NamesBeingFilled<T> extends Names<T> {
  readonly addUnclear: (name: string) => void;
  /** Puts a thing in the place of the one that has its name. */
  readonly exchange: (thing: T & { readonly name: string }) => void;
  /** False (and a finding) where the name is taken. */
  readonly add: (name: string, thing: T, at: Words, spot: Spot) => boolean;
}

/** @param kinds the plural, for “There are two …” */
export function createNames<T extends { readonly at: Place }>(
  kind: string,
  kinds: string,
): NamesBeingFilled<T> {
  const things = new Map<string, { readonly name: string; readonly thing: T }>();
  const unclear = new Set<string>();
  return {
    kind,
    find: name => things.get(normal(name))?.thing,
    list: () => [...things.values()].map(({ name }) => name).filter(name => name !== ''),
    isUnclear: name => unclear.has(normal(name)),
    addUnclear: name => {
      unclear.add(normal(name));
    },
    all: () => [...things.values()].map(({ thing }) => thing),
    exchange: thing => {
      things.set(normal(thing.name), { name: thing.name, thing });
    },
    add(name, thing, at, spot) {
      const key = normal(name);
      const first = things.get(key);
      if (first === undefined) things.set(key, { name, thing });
      else duplicateName(spot, at, kinds, first.thing.at);
      return first === undefined;
    },
  };
}

/**
 * The thing that the words name; null (and a finding) where there is none.
 *
 * @param separator stands between two names where there may be several
 */
export function resolveName<T>(
  words: Words,
  names: Names<T>,
  spot: Spot,
  define: string,
  separator = '',
): T | null {
  const thing = names.find(words.text);
  if (thing !== undefined) return thing;
  if (names.isUnclear(words.text)) return null;
  const list = names.list();
  const meant = separator === '' ? null : rejoined(words.text, findIn(list), separator);
  unknownName(spot, words, names.kind, list, define, meant);
  return null;
}
