import { isImpossible } from '../gestures/automaton.js';
import { type Binding, bindingsOf } from '../gestures/bindings.js';
import { settingSource } from '../gestures/settings.js';
import type { StandardName } from '../hardware/clocks.js';
import type { ConsoleProfile } from '../hardware/consoles.js';
import { conditionText, effectText } from '../language/as-written.js';
import type { Gesture, Mode, Scheme, SeatsRow, Setting } from '../language/model.js';
import { readsOf } from '../language/time.js';

/**
 * What is generated once: the bindings of one mode, in one seats row, on one class of consoles. Consoles are of
 * one class where the scheme means the same on them.
 */
export interface Unit {
  readonly mode: Mode;
  readonly seats: SeatsRow;
  readonly consoles: ConsoleClass;
  /** Those that can fire and that a byte can count; see `tooLong`. */
  readonly bindings: readonly Binding[];
  /** Bindings with a time above 255 reads: an accepted fault. The routine leaves them out and says so. */
  readonly tooLong: readonly Binding[];
}

export interface ConsoleClass {
  /** From 0, in the order of the scheme's consoles. */
  readonly number: number;
  /** At least one. */
  readonly profiles: readonly ConsoleProfile[];
  /** The first of them; stands for all. */
  readonly profile: ConsoleProfile;
}

/** Reads that a counter of one byte can hold. */
export const MOST_READS = 255;

/** In the order of modes, seats rows, classes. */
export function unitsOf(scheme: Scheme, classes: readonly ConsoleClass[]): readonly Unit[] {
  return scheme.modes.flatMap(mode =>
    mode.seats.flatMap(seats => classes.map(consoles => createUnit(scheme, mode, seats, consoles))),
  );
}

function createUnit(scheme: Scheme, mode: Mode, seats: SeatsRow, consoles: ConsoleClass): Unit {
  const all = bindingsOf(scheme, mode, seats, consoles.profile);
  const isTooLong = ({ gesture }: Binding) => longestReads(scheme, gesture) > MOST_READS;
  const isNever = ({ gesture }: Binding) =>
    isImpossible({ kind: gesture.kind, reads: longestReads(scheme, gesture) });
  return {
    mode,
    seats,
    consoles,
    bindings: all.filter(binding => !isTooLong(binding) && !isNever(binding)),
    tooLong: all.filter(isTooLong),
  };
}

/** Reads of a gesture's time on each of the scheme's standards; empty where it has none. */
export function readsByStandard(scheme: Scheme, gesture: Gesture): ReadonlyMap<StandardName, number> {
  if (!('time' in gesture)) return new Map();
  const { time } = gesture;
  const every = scheme.game.readEvery.value;
  return new Map(scheme.standards.map(standard => [standard.name, readsOf(time, standard, every)]));
}

function longestReads(scheme: Scheme, gesture: Gesture): number {
  return Math.max(0, ...readsByStandard(scheme, gesture).values());
}

/** Consoles on which every mode has the same bindings and every setting the same source. */
export function consoleClasses(scheme: Scheme): readonly ConsoleClass[] {
  const bySignature = new Map<string, ConsoleProfile[]>();
  for (const profile of scheme.consoles) {
    const signature = signatureOf(scheme, profile);
    bySignature.set(signature, [...(bySignature.get(signature) ?? []), profile]);
  }
  return [...bySignature.values()].flatMap((profiles, number) => {
    const [profile] = profiles;
    return profile === undefined ? [] : [{ number, profiles, profile }];
  });
}

function signatureOf(scheme: Scheme, profile: ConsoleProfile): string {
  const bindings = scheme.modes.flatMap(mode =>
    mode.seats.map(seats => bindingsOf(scheme, mode, seats, profile).map(textOfBinding)),
  );
  const sources = scheme.settings.map(setting => {
    const source = settingSource(setting, scheme, profile);
    return source.kind === 'switch' ? [source.kind, source.name, ...source.values] : Object.values(source);
  });
  return JSON.stringify([bindings, sources]);
}

const textOfBinding = (binding: Binding) => [
  binding.order,
  binding.alternative,
  binding.player,
  binding.actionName,
  binding.direction,
  binding.parts.map(({ id }) => id),
  binding.gesture.kind,
  'time' in binding.gesture ? binding.gesture.time.text : '',
  'position' in binding.gesture ? binding.gesture.position : '',
  binding.conditions.map(conditionText),
  binding.effects.map(effectText),
  binding.insteadOf.map(({ name }) => name),
];

/** A setting's value as the routine knows it: its place in the setting's list, from 0. */
export function numberOfValue(setting: Setting, value: string): number {
  return setting.values.indexOf(value);
}
