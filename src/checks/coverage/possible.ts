import type { Binding } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import { fitsParts } from '../../gestures/fit.js';
import type { TvStandard } from '../../hardware/clocks.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { Gesture } from '../../language/model.js';
import { readsOf } from '../../language/time.js';

/**
 * False where the binding can never be done, whatever the console and the state: a gesture that doesn't fit its
 * control, or a chord of opposite directions.
 */
export function isPossible({ gesture, parts }: Binding): boolean {
  return fitsParts(gesture, parts) && !hasOpposites(parts);
}

/**
 * `tap` and `double tap` can never fire where their time is a single read.
 *
 * @param readEvery frames between two reads, at least 1
 */
export function isTooQuick(gesture: Gesture, standard: TvStandard, readEvery: number): boolean {
  if (gesture.kind !== 'tap' && gesture.kind !== 'double tap') return false;
  return readsOf(gesture.time, standard, readEvery) <= 1;
}

function hasOpposites(parts: readonly Contact[]): boolean {
  return parts.some(
    part =>
      part.kind === 'control' &&
      part.controller.opposites.some(
        ([one, other]) =>
          part.control.name === one &&
          parts.some(
            each => each.kind === 'control' && each.port === part.port && each.control.name === other,
          ),
      ),
  );
}

/** False for a move of a switch that the console fixes, or `at` a position in which it is not fixed. */
export function fitsFixedSwitch({ gesture, parts }: Binding, profile: ConsoleProfile): boolean {
  const [part] = parts;
  if (part === undefined || part.kind !== 'switch') return true;
  const state = profile.switches[part.name];
  if (state.kind !== 'fixed') return true;
  return gesture.kind === 'at' && gesture.position === state.position;
}
