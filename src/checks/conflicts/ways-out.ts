import type { Binding } from '../../gestures/bindings.js';
import { contactType, controlContact } from '../../gestures/contacts.js';
import type { Sighting } from './sighting.js';

/** Ways out that fit the two rows of a sighting; empty where the catalogue’s own are as good. */
export function waysOutOf(sighting: Sighting): readonly string[] {
  const [x, y] = sighting.bindings;
  if (y === undefined || !FITTED.has(sighting.rule)) return [];
  return [
    ...gestureWays(x, y),
    ...insteadOfWays(x, y),
    ...freeControlWay(sighting, x, y),
    x.action === null || y.action === null
      ? 'If it does no harm, list it in `## Accepted`.'
      : `If both are meant, write “${x.actionName}” under \`Along with\` in the row of “${y.actionName}”.`,
  ];
}

const FITTED: ReadonlySet<string> = new Set([
  'same-moment',
  'on-the-way',
  'in-passing',
  'order-matters',
  'aftermath',
  'can-coincide',
]);

const isWithin = (inner: Binding, outer: Binding): boolean =>
  inner.parts.every(({ id }) => outer.parts.some(part => part.id === id));

/** A tap for what happens too soon, on a control that also has a hold. */
function gestureWays(x: Binding, y: Binding): readonly string[] {
  if (!isWithin(x, y) || !isWithin(y, x)) return [];
  const [hold, other] = y.gesture.kind === 'hold' ? [y, x] : [x, y];
  if (hold.gesture.kind !== 'hold' || !CAN_BE_A_TAP.has(other.gesture.kind)) return [];
  const time = hold.gesture.time.name ?? hold.gesture.time.text;
  return [
    `Make “${other.actionName}” \`tap under ${time}\`: then it happens only where “${hold.actionName}” does not.`,
  ];
}

const CAN_BE_A_TAP: ReadonlySet<string> = new Set([
  'press',
  'release',
  'held',
  'repeat',
  'tap',
  'double tap',
]);

/** `Instead of` for a chord, and for its part a gesture that waits until it is let go. */
function insteadOfWays(x: Binding, y: Binding): readonly string[] {
  return [
    [x, y],
    [y, x],
  ].flatMap(([part, chord]) => {
    if (part === undefined || chord === undefined || part.action === null || isWithin(chord, part)) return [];
    const wait = `Make “${part.actionName}” a \`tap\` or a \`release\``;
    if (chord.insteadOf.includes(part.action))
      return isPatient(part)
        ? []
        : [`${wait}: “${chord.actionName}” holds it back only from where its own control is engaged.`];
    const write = `rite “${part.actionName}” under \`Instead of\` in the row of “${chord.actionName}”.`;
    return [isPatient(part) ? `W${write}` : `${wait}, and w${write}`];
  });
}

/**
 * Gestures that happen when the control is let go, by when it is known what the player meant; and `held`, of which a
 * read more or less before the chord closes does no harm.
 */
const isPatient = ({ gesture }: Binding): boolean =>
  gesture.kind === 'tap' || gesture.kind === 'release' || gesture.kind === 'held';

/** A control of the same controller that the mode has no use for. */
function freeControlWay({ mode, seats, among }: Sighting, x: Binding, y: Binding): readonly string[] {
  const [part] = x.parts;
  if (part?.kind !== 'control' || contactType(part) !== 'momentary') return [];
  const used = new Set(among.flatMap(({ parts }) => parts.map(({ id }) => id)));
  const free = part.controller.controls
    .filter(control => control.seat === part.control.seat)
    .map(control => controlContact(part.port, part.controller, control))
    .find(contact => contactType(contact) === 'momentary' && !used.has(contact.id));
  if (free?.kind !== 'control') return [];
  const [name, other] = [x.actionName, y.actionName];
  return [
    `Move “${name}” or “${other}” to another control: \`${free.control.name}\` is free in ${mode.name} (${seats.name}).`,
  ];
}
