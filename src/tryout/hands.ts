import type { Contact } from '../gestures/contacts.js';
import type { Play } from '../gestures/play.js';
import { createPresses, isMomentary } from './presses.js';
import { createTurning, type Turning } from './turning.js';

/**
 * What the player’s fingers do between two reads, turned into inputs that hands can make: at each read at most one
 * control becomes engaged or one switch is moved, the others wait for the reads after it; of two that can’t be engaged
 * together the one pressed last counts.
 */
export interface Hands extends Pick<Turning, 'turn' | 'keepTurning' | 'turnTo'> {
  /**
   * @param source who presses, so that a control that two press stays engaged until both let go: `key KeyW`
   * @param now ms
   */
  press(contact: Contact, source: string, now: number): void;
  release(contact: Contact, source: string, now: number): void;
  /** Everything that a source holds, or all that is held. */
  letGo(now: number, source?: string): void;
  /** Moves a two-position switch into its other position. */
  flip(contact: Contact): void;
  /**
   * What is read now.
   *
   * @param levels those of the read before, by contact of the play
   * @param isFirst nothing has been read since power-on
   */
  read(levels: readonly number[], now: number, isFirst: boolean): readonly number[];
}

export function createHands({ contacts, scheme }: Play): Hands {
  const presses = createPresses(scheme.game.latch.value !== 'off');
  const turning = createTurning(contacts, scheme.game.readEvery.value);
  const flips: Contact[] = [];
  return {
    ...turning,
    press(contact, source, now) {
      if (isMomentary(contact)) presses.press(contact, source, now);
    },
    release: presses.release,
    letGo(now, source) {
      turning.letGo(source);
      presses.letGo(now, source);
    },
    flip: contact => void flips.push(contact),
    read(levels, now, isFirst) {
      const down = presses.down(now);
      const levelOf = (contact: Contact) => levels[contacts.indexOf(contact)] ?? 0;
      const flipped = flips.shift();
      const [first, ...others] = down.filter(contact => levelOf(contact) === 0);
      const engaged = flipped === undefined ? first : undefined;
      presses.keep(flipped === undefined || first === undefined ? others : [first, ...others]);
      const isEngaged = (contact: Contact) =>
        contact === engaged || (down.includes(contact) && levelOf(contact) === 1);
      presses.settle(contacts.filter(contact => isMomentary(contact) && isEngaged(contact)));
      const next = contacts.map((contact, index) => {
        const level = levels[index] ?? 0;
        if (isMomentary(contact)) return isEngaged(contact) ? 1 : 0;
        return contact === flipped ? 1 - level : level;
      });
      return turning.read(next, isFirst);
    },
  };
}

/** Hands of which nothing is taken while `areAway`; what is let go then is let go. */
export function awayWhile(hands: Hands, areAway: () => boolean): Hands {
  const unlessAway =
    <T extends readonly unknown[]>(move: (...given: T) => void) =>
    (...given: T): void => {
      if (!areAway()) move(...given);
    };
  return {
    ...hands,
    press: unlessAway(hands.press),
    flip: unlessAway(hands.flip),
    turn: unlessAway(hands.turn),
    keepTurning: unlessAway(hands.keepTurning),
    turnTo: unlessAway(hands.turnTo),
  };
}
