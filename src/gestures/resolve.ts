import type { ConsoleProfile } from '../hardware/consoles.js';
import type { Direction, SeatLetter } from '../hardware/controllers.js';
import type { Port } from '../hardware/ports.js';
import type { Chord, ControlName, SeatedPlayer, SeatsRow } from '../language/model.js';
import { type Contact, controlContact, switchContact } from './contacts.js';

/** A chord as contacts; `direction` where one of its parts was a group control. */
export interface ResolvedChord {
  readonly parts: readonly Contact[];
  readonly direction: Direction | null;
}

interface ResolvedPart {
  readonly contact: Contact;
  readonly direction: Direction | null;
}

/**
 * The ways a chord can be engaged in a seats row: one for each direction of a group control and for each
 * paddle of a pair that a port name leaves open. Empty where a part is not there: no such control, an empty
 * port, or a momentary switch that the console lacks.
 *
 * @param player whose controls unnamed ones are; null where only switches and named ports can fit
 */
export function resolveChord(
  chord: Chord,
  seats: SeatsRow,
  player: SeatedPlayer | null,
  profile: ConsoleProfile,
): readonly ResolvedChord[] {
  let chords: readonly ResolvedChord[] = [{ parts: [], direction: null }];
  for (const part of chord.parts) {
    const ways = resolvePart(part, seats, player, profile);
    chords = chords.flatMap(({ parts, direction }) =>
      ways.map(way => ({ parts: [...parts, way.contact], direction: direction ?? way.direction })),
    );
  }
  return chords;
}

function resolvePart(
  part: ControlName,
  seats: SeatsRow,
  player: SeatedPlayer | null,
  profile: ConsoleProfile,
): readonly ResolvedPart[] {
  if (part.kind === 'switch') {
    if (profile.switches[part.name].kind === 'absent') return [];
    return [{ contact: switchContact(part.name), direction: null }];
  }
  const port = part.port ?? player?.port;
  if (port === undefined) return [];
  const own = player !== null && player.port === port ? player.letter : null;
  return resolveControl(part.name, seats, port, part.letter === '' ? own : part.letter);
}

/** @param letter null where any seat of the port's controller will do */
function resolveControl(
  name: string,
  seats: SeatsRow,
  port: Port,
  letter: SeatLetter | null,
): readonly ResolvedPart[] {
  const controller = seats[port];
  if (controller === null) return [];
  const group = controller.groups.find(candidate => candidate.name === name);
  const wanted = group ? group.members : [{ control: name, direction: null }];
  return wanted.flatMap(({ control: controlName, direction }) =>
    controller.controls
      .filter(control => control.name === controlName && (letter === null || control.seat === letter))
      .map(control => ({ contact: controlContact(port, controller, control), direction })),
  );
}
