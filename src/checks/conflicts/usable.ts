import type { Binding } from '../../gestures/bindings.js';
import type { IsUsable } from '../coverage/offers.js';
import type { Sighting } from './sighting.js';

/**
 * Tells coverage which bindings are worth trying: all but those that `never-fires` has found.
 *
 * @returns null where it has found none
 */
export function createIsUsable(sightings: readonly Sighting[]): IsUsable | null {
  const dead = sightings.filter(({ rule }) => rule === 'never-fires');
  if (dead.length === 0) return null;
  return (binding, { console, seats, standard }) =>
    !dead.some(
      sighting =>
        sighting.seats === seats &&
        sighting.standard === standard &&
        sighting.profiles.includes(console) &&
        isSame(sighting.bindings[0], binding),
    );
}

/** The same way of doing the same row: bindings are made anew for each check. */
function isSame(a: Binding, b: Binding): boolean {
  const [from, to] = [a.origin, b.origin];
  const isFallback = from.kind === 'fallback' && to.kind === 'fallback' && from.fallback === to.fallback;
  return (
    a.mode === b.mode &&
    from.row === to.row &&
    (isFallback || from.kind === to.kind) &&
    a.order === b.order &&
    a.alternative === b.alternative &&
    a.player === b.player &&
    a.parts.length === b.parts.length &&
    a.parts.every(({ id }, index) => id === b.parts[index]?.id)
  );
}
