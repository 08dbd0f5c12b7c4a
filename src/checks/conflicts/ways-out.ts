import type { Binding } from '../../gestures/bindings.js';
import { type Contact, contactType, controlContact } from '../../gestures/contacts.js';
import type { Control, Controller } from '../../hardware/controllers.js';
import type { Port } from '../../hardware/ports.js';
import { SWITCHES } from '../../hardware/switches.js';
import { secondsOf } from '../../language/time.js';
import { carryOverWays, knockOnWays, neverFiresWays, runawayWays } from './row-ways.js';
import type { ConflictRule, Sighting } from './sighting.js';

/** Ways out that fit the rows of a sighting; empty where the catalogue’s own are as good. */
export function waysOutOf(sighting: Sighting): readonly string[] {
  return WAYS[sighting.rule]?.(sighting) ?? [];
}

function pairWays(sighting: Sighting): readonly string[] {
  const [x, y] = sighting.bindings;
  if (y === undefined) return [];
  return [
    ...gestureWays(sighting, x, y),
    ...positionWays(x, y),
    ...insteadOfWays(sighting, x, y),
    ...freeControlWay(sighting, x, y),
    meantWay(x, y),
  ];
}

/** Where both are meant. A fallback that steps a setting has no `Along with`, and its action is in no list of any. */
function meantWay(x: Binding, y: Binding): string {
  return x.action === null || y.action === null
    ? 'If it does no harm, list it in `## Accepted`.'
    : `If both are meant, write “${x.actionName}” under \`Along with\` in the row of “${y.actionName}”.`;
}

/** For the two directions of a slip; empty where the catalogue’s own are as good. */
function slipWays({ bindings: [x, y] }: Sighting): readonly string[] {
  if (y === undefined || (x.action !== null && y.action !== null)) return [];
  return ['Put one of the two on the button or on the opposite direction.', meantWay(x, y)];
}

const WAYS: Readonly<Partial<Record<ConflictRule, (sighting: Sighting) => readonly string[]>>> = {
  'same-moment': pairWays,
  'on-the-way': pairWays,
  'in-passing': pairWays,
  'order-matters': pairWays,
  aftermath: pairWays,
  'can-coincide': pairWays,
  'carry-over': carryOverWays,
  'knock-on': knockOnWays,
  runaway: runawayWays,
  'never-fires': neverFiresWays,
  'diagonal-slip': slipWays,
};

const isWithin = (inner: Binding, outer: Binding): boolean =>
  inner.parts.every(({ id }) => outer.parts.some(part => part.id === id));

/** A tap for what happens before, with or after a hold of the same control. */
function gestureWays({ length, standard }: Sighting, x: Binding, y: Binding): readonly string[] {
  const [hold, other] = y.gesture.kind === 'hold' ? [y, x] : [x, y];
  if (hold.gesture.kind !== 'hold' || !CAN_BE_A_TAP.has(other.gesture.kind)) return [];
  if (!isWithin(x, y) || !isWithin(y, x)) return [];
  // A hold of one read leaves no time for a tap, and people can't make one much under 100 ms.
  if (length === hold.parts.length || secondsOf(hold.gesture.time, standard) < SHORTEST_TAP_S) return [];
  const time = hold.gesture.time.name ?? hold.gesture.time.text;
  return [
    `Make “${other.actionName}” \`tap under ${time}\`: then it happens only where “${hold.actionName}” does not.`,
  ];
}

/** As `too-quick` has it. */
const SHORTEST_TAP_S = 0.1;

/** A `flip` beside a `flip to P` of the same switch: one for each position. */
function positionWays(x: Binding, y: Binding): readonly string[] {
  const [flip, other] = x.gesture.kind === 'flip' ? [x, y] : [y, x];
  const [part] = flip.parts;
  if (flip.gesture.kind !== 'flip' || other.gesture.kind !== 'flip to' || part?.kind !== 'switch') return [];
  const taken = other.gesture.position;
  const left = SWITCHES[part.name].positions.find(({ name }) => name !== taken);
  return left === undefined
    ? []
    : [`Make “${flip.actionName}” \`flip to ${left.name}\`: then each position does one thing.`];
}

const CAN_BE_A_TAP: ReadonlySet<string> = new Set(['press', 'release', 'held', 'repeat', 'tap']);

/** `Instead of` for a chord, and for its part a gesture that waits until it is let go. */
function insteadOfWays({ rule }: Sighting, x: Binding, y: Binding): readonly string[] {
  const bothWays = [
    [x, y],
    [y, x],
  ] as const;
  return bothWays.flatMap(([part, chord]) => {
    if (part.action === null || isWithin(chord, part)) return [];
    // The fallback of a setting has no column for it, and nobody holds back another player’s action.
    if (chord.action === null || !areOfOnePlayer(part, chord)) return [];
    const wait = `Make “${part.actionName}” a \`tap\` or a \`release\``;
    if (chord.insteadOf.includes(part.action))
      return isPatient(part)
        ? []
        : [`${wait}: “${chord.actionName}” holds it back only from where its own control is engaged.`];
    const write = `rite “${part.actionName}” under \`Instead of\` in the row of “${chord.actionName}”.`;
    // What only may happen together needs no more than to be held back.
    return [isPatient(part) || rule === 'can-coincide' ? `W${write}` : `${wait}, and w${write}`];
  });
}

const areOfOnePlayer = (part: Binding, chord: Binding): boolean =>
  part.player === chord.player || part.player === 'anyone' || chord.player === 'anyone';

/**
 * Gestures that happen when the control is let go, by when it is known what the player meant; and `held`, of which a
 * read more or less before the chord closes does no harm.
 */
const isPatient = ({ gesture }: Binding): boolean =>
  gesture.kind === 'tap' || gesture.kind === 'release' || gesture.kind === 'held';

/** A control of the same controller that the mode has no use for; beside a console switch, one of any player. */
function freeControlWay({ mode, seats, among }: Sighting, x: Binding, y: Binding): readonly string[] {
  const [part] = x.parts;
  if (part === undefined || contactType(part) !== 'momentary') return [];
  const used = new Set(among.flatMap(({ parts }) => parts.map(({ id }) => id)));
  const own = part.kind === 'control' ? controlsOf(part.port, part.controller, part.control.seat) : [];
  const all = seats.players.flatMap(({ port, controller, letter }) => controlsOf(port, controller, letter));
  const free = (part.kind === 'control' ? own : all).find(
    contact => contactType(contact) === 'momentary' && !used.has(contact.id),
  );
  if (free?.kind !== 'control') return [];
  const name = part.kind === 'control' ? free.control.name : free.id;
  return [
    `Move “${x.actionName}” or “${y.actionName}” to another control: \`${name}\` is free in ${mode.name} (${seats.name}).`,
  ];
}

const controlsOf = (port: Port, controller: Controller, seat: Control['seat']): readonly Contact[] =>
  controller.controls
    .filter(control => control.seat === seat)
    .map(control => controlContact(port, controller, control));
