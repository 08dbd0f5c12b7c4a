import type { Finding } from '../../findings/finding.js';
import type { Binding } from '../../gestures/bindings.js';
import { contactType } from '../../gestures/contacts.js';
import { createPlay, type Play } from '../../gestures/play.js';
import type { TvStandard } from '../../hardware/clocks.js';
import type { Setting } from '../../language/model.js';
import type { Handoff } from '../model.js';
import { outputKey } from '../outputs.js';
import { type ReadValues, registersOf } from '../registers.js';
import type { Unit } from '../units.js';
import { acceptedReads } from './accepted.js';
import { type MissKind, missesOf } from './misses.js';
import { shortestReads } from './shortest.js';
import { findSituation, type Levels, runReads, type Situation, settingsAt } from './situation.js';

export type VectorKind = MissKind | 'fires' | 'accepted overlap';

/** One acceptance test: what is read, and exactly what must fire. */
export interface Vector {
  readonly kind: VectorKind;
  readonly unit: Unit;
  readonly standard: TvStandard;
  readonly play: Play;
  /** The binding it is about; null for an accepted overlap. */
  readonly binding: Binding | null;
  readonly settings: ReadonlyMap<Setting, string>;
  /** The last read before the mode is entered. */
  readonly before: Levels;
  readonly reads: readonly Levels[];
  /** By read: every setting's value before it. */
  readonly settingsAt: readonly ReadonlyMap<Setting, string>[];
  /** By read: symbols of outputs, in the order of the rows, each once. */
  readonly fires: readonly (readonly string[])[];
}

/** Vectors of every unit on every standard, in the order of units and bindings. */
export function makeVectors(handoff: Handoff, findings: readonly Finding[]): readonly Vector[] {
  const { scheme } = handoff;
  return handoff.routines.flatMap(({ unit }) =>
    scheme.standards.flatMap(standard => {
      const play = createPlay({ scheme, seats: unit.seats, profile: unit.consoles.profile, standard });
      if (play.engines.get(unit.mode) === undefined) return [];
      const make = createMaker(handoff, unit, standard, play);
      return [
        ...unit.bindings.flatMap(binding => vectorsOf(make, play, unit, binding)),
        ...acceptedReads(play, unit, findings).map(({ situation, reads }) =>
          make('accepted overlap', null, situation, reads),
        ),
      ];
    }),
  );
}

type Make = (
  kind: VectorKind,
  binding: Binding | null,
  situation: Situation,
  reads: readonly Levels[],
) => Vector;

function createMaker({ outputs }: Handoff, unit: Unit, standard: TvStandard, play: Play): Make {
  const own = outputs.get(unit.mode);
  const symbols = (fired: readonly Binding[]) => [
    ...new Set(fired.flatMap(binding => own?.get(outputKey(binding))?.symbol ?? [])),
  ];
  return (kind, binding, situation, reads) => {
    const outcome = runReads(play, situation, reads);
    return {
      kind,
      unit,
      standard,
      play,
      binding,
      settings: settingsAt(play, situation),
      before: situation.before,
      reads: outcome.reads,
      settingsAt: outcome.settings,
      fires: outcome.fired.map(symbols),
    };
  };
}

function vectorsOf(make: Make, play: Play, unit: Unit, binding: Binding): readonly Vector[] {
  const situation = findSituation(play, unit.mode, binding.conditions);
  const shortest = situation === null ? null : shortestReads(play, binding, situation);
  if (shortest === null) return [];
  return [
    make('fires', binding, shortest.situation, shortest.reads),
    ...missesOf(play, unit, binding, shortest).map(miss =>
      make(miss.kind, binding, miss.situation, miss.reads),
    ),
  ];
}

/** What a vector's read gives in registers. */
export function valuesOfRead({ play }: Vector, levels: Levels): ReadValues {
  return registersOf(play.contacts, levels);
}

/** What is engaged, moved or turned, in the designer's words. */
export function engagedWords(play: Play, levels: Levels, before: Levels): readonly string[] {
  return play.contacts.flatMap((contact, index) => {
    const level = levels[index] ?? 0;
    if (contactType(contact) === 'momentary') return level === 1 ? [contact.id] : [];
    if (level === before[index]) return [];
    return contactType(contact) === 'turning' ? [`${contact.id} turned`] : [`${contact.id} moved`];
  });
}
