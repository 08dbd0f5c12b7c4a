import type { Binding } from '../../gestures/bindings.js';
import type { TimedCell } from './cells.js';
import { type Sighting, sightingIn } from './sighting.js';

/** Rule 8: a binding that fires at every read and steps a setting each time. */
export function findRunaways(timed: TimedCell, live: readonly Binding[]): readonly Sighting[] {
  return live.flatMap((binding): readonly Sighting[] => {
    const step = binding.effects.find(effect => effect.kind === 'step');
    if (step?.kind !== 'step' || !firesAtEveryRead(binding) || goesElsewhere(binding)) return [];
    return [sightingIn(timed, 'runaway', [binding], { extra: { setting: step.setting.name } })];
  });
}

const firesAtEveryRead = ({ gesture }: Binding): boolean =>
  gesture.kind === 'held' || gesture.kind === 'at' || gesture.kind === 'turn';

const goesElsewhere = ({ effects, mode }: Binding): boolean =>
  effects.some(effect => effect.kind === 'go to' && effect.mode !== mode);
