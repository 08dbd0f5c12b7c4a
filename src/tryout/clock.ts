import type { Play } from '../gestures/play.js';
import { frameRate, toNumber } from '../hardware/clocks.js';

/** Tells how many reads are due as time goes by, and what time it is for the player, at any speed. */
export interface Clock {
  /** Playing time, ms. */
  now(): number;
  /** Lets real time go by, ms; calls `read` for each read that is due. */
  pass(elapsed: number, speed: number, read: () => void): void;
  /** Makes one read at once and moves the time there. */
  step(read: () => void): void;
}

/** A page that was away does not make up for it, ms. */
const LONGEST_GAP = 250;

export function createClock({ scheme, standard }: Play): Clock {
  const perRead = (1000 * scheme.game.readEvery.value) / toNumber(frameRate(standard));
  let now = 0;
  let due = perRead;
  const next = (read: () => void) => {
    now = due;
    due += perRead;
    read();
  };
  return {
    now: () => now,
    pass(elapsed, speed, read) {
      const until = now + Math.min(elapsed, LONGEST_GAP) * speed;
      while (due <= until) next(read);
      now = until;
    },
    step: next,
  };
}
