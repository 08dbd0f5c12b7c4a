import { type Contact, contactType } from '../gestures/contacts.js';
import { PADDLE, WHEEL } from '../hardware/turning.js';

/** Knobs and wheels in the hand. */
export interface Turning {
  /** Degrees clockwise. */
  turn(contact: Contact, degrees: number): void;
  /** Goes on turning, clockwise (1) or the other way (−1), until the source lets go. */
  keepTurning(contact: Contact, way: number, source: string): void;
  /** A paddle is turned to where its line takes so many scan lines to charge. */
  turnTo(contact: Contact, lines: number): void;
  letGo(source?: string): void;
  /**
   * The levels after this read; those of other contacts as they are.
   *
   * @param isFirst nothing has been read since power-on: a knob is put in the middle, which is no turn then
   */
  read(levels: readonly number[], isFirst: boolean): readonly number[];
}

/** What a hand is ahead of the reads at most: a knob’s whole way. */
const MOST_TURN = PADDLE.linesAtFarEnd;
const MIDDLE = PADDLE.linesAtFarEnd / 2;

/** How far a knob or a wheel is turned in a frame by a key that is kept down: degrees. */
const TURN_A_FRAME = { knob: 4.5, wheel: 5.625 } as const;

/** Levels for a degree clockwise: a knob’s resistance falls that way (from memory). */
const LEVELS_A_DEGREE = {
  knob: -PADDLE.linesAtFarEnd / PADDLE.degrees,
  wheel: WHEEL.stepsPerTurn / 360,
} as const;

/** @param every frames between two reads */
export function createTurning(contacts: readonly Contact[], every: number): Turning {
  /** Levels that are still to be turned. */
  const owed = new Map<Contact, number>();
  const turners = new Map<string, { readonly contact: Contact; readonly way: number }>();
  const wanted = new Map<Contact, number>();
  const turn = (contact: Contact, degrees: number) => {
    const all = (owed.get(contact) ?? 0) + degrees * LEVELS_A_DEGREE[kindOf(contact)];
    owed.set(contact, Math.min(MOST_TURN, Math.max(-MOST_TURN, all)));
  };
  const step = (contact: Contact, level: number, isFirst: boolean): number => {
    const all = owed.get(contact) ?? 0;
    const by = isWheel(contact) ? Math.sign(Math.trunc(all)) : Math.trunc(all);
    owed.set(contact, all - by);
    if (isWheel(contact)) return level + by;
    return isFirst ? MIDDLE : inRange(wanted.get(contact) ?? level + by);
  };
  return {
    turn,
    keepTurning: (contact, way, source) => void turners.set(source, { contact, way }),
    turnTo: (contact, lines) => void wanted.set(contact, lines),
    letGo(source) {
      if (source === undefined) turners.clear();
      else turners.delete(source);
    },
    read(levels, isFirst) {
      for (const { contact, way } of turners.values())
        turn(contact, way * TURN_A_FRAME[kindOf(contact)] * every);
      const next = contacts.map((contact, index) => {
        const level = levels[index] ?? 0;
        return contactType(contact) === 'turning' ? step(contact, level, isFirst) : level;
      });
      wanted.clear();
      return next;
    },
  };
}

const inRange = (lines: number): number => Math.min(PADDLE.linesAtFarEnd, Math.max(0, Math.round(lines)));

const kindOf = (contact: Contact): 'wheel' | 'knob' => (isWheel(contact) ? 'wheel' : 'knob');

/** Whether a control that turns is a wheel: it has steps and no ends, and a step at a read is the most to follow. */
export const isWheel = (contact: Contact): boolean =>
  contact.kind === 'control' && contact.control.wiring.kind === 'gray';
