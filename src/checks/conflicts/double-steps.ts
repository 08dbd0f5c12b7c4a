import type { Binding } from '../../gestures/bindings.js';
import type { Setting } from '../../language/model.js';
import { setUp } from './build.js';
import type { TimedCell } from './cells.js';
import { type PairMemory, pairsOnALine, sightPair } from './pairs.js';
import type { Sighting } from './sighting.js';

/**
 * A rule beside the design's own, which compares different actions only: two bindings of one action that fire at the
 * same moment and step one setting step it twice, while coverage and its recipes count one binding a step.
 */
export function findDoubleSteps(
  timed: TimedCell,
  live: readonly Binding[],
  memory: PairMemory,
): readonly Sighting[] {
  return pairsOnALine(live.filter(binding => steppedBy(binding).length > 0)).flatMap(([x, y]) => {
    if (x.actionName !== y.actionName) return [];
    const setting = steppedBy(x).find(each => steppedBy(y).includes(each));
    if (setting === undefined) return [];
    const sighting = sightPair(timed, setUp(timed.cell, x, y), memory);
    if (sighting?.rule !== 'same-moment') return [];
    return [{ ...sighting, rule: 'double-step', extra: { setting: setting.name } }];
  });
}

const steppedBy = ({ effects }: Binding): readonly Setting[] =>
  effects.flatMap(effect => (effect.kind === 'step' ? [effect.setting] : []));
