import type { Binding } from '../../gestures/bindings.js';
import type { Fallback } from '../../language/model.js';
import { createMemory } from '../../memory.js';
import type { IsUsable } from '../coverage/offers.js';
import type { Sighting } from './sighting.js';

/**
 * Tells coverage which bindings are worth trying: all but those that `never-fires` has found.
 *
 * @param dead what it has found
 * @returns null where that is nothing
 */
export function createIsUsable(dead: readonly Sighting[]): IsUsable | null {
  if (dead.length === 0) return null;
  return remembered(dead, () => isUsableBut(dead));
}

const remembered = createMemory<IsUsable>();

function isUsableBut(dead: readonly Sighting[]): IsUsable {
  return (binding, { console, seats, standard }) =>
    !dead.some(
      sighting =>
        sighting.seats === seats &&
        sighting.standard === standard &&
        sighting.profiles.includes(console) &&
        isSame(sighting.bindings[0], binding),
    );
}

/**
 * The same way of doing the same row: a row has bindings for each kind of console. The order of a fallback binding
 * says nothing: it counts those in force on its console, for other modes too.
 */
function isSame(a: Binding, b: Binding): boolean {
  return (
    a.mode === b.mode &&
    a.origin.row === b.origin.row &&
    fallbackOf(a) === fallbackOf(b) &&
    a.alternative === b.alternative &&
    a.player === b.player &&
    a.parts.length === b.parts.length &&
    a.parts.every(({ id }, index) => id === b.parts[index]?.id)
  );
}

const fallbackOf = ({ origin }: Binding): Fallback | null =>
  origin.kind === 'fallback' ? origin.fallback : null;
