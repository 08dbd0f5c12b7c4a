import { SWITCHES } from '../hardware/switches.js';
import type { Gesture } from '../language/model.js';
import { isPositional } from './automaton.js';
import { type Contact, contactType } from './contacts.js';

/**
 * Whether a gesture can be made on a control: `press` and the like on momentary controls and their chords, `at`
 * and `flip` on a two-position switch (in one of its own positions), `turn` on what turns.
 */
export function fitsParts(gesture: Gesture, parts: readonly Contact[]): boolean {
  if (!isPositional(gesture.kind)) return parts.every(part => contactType(part) === 'momentary');
  const [only, ...others] = parts;
  if (only === undefined || others.length > 0) return false;
  if (gesture.kind === 'turn') return contactType(only) === 'turning';
  if (only.kind !== 'switch' || contactType(only) !== 'two-position') return false;
  return gesture.kind === 'flip' || positionLevel(only, positionOf(gesture)) !== null;
}

/** The position a gesture asks for; null where it asks for none. */
export function positionOf(gesture: Gesture): string | null {
  return gesture.kind === 'at' || gesture.kind === 'flip to' ? gesture.position : null;
}

/** A two-position switch's position as a level: its index among the switch's positions; null where it has no such. */
export function positionLevel(contact: Contact, position: string | null): number | null {
  if (contact.kind !== 'switch') return null;
  const index = SWITCHES[contact.name].positions.findIndex(({ name }) => name === position);
  return index < 0 ? null : index;
}
