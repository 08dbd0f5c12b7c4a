import { type Play, type PlayState, type PlayStep, startPlay, stepPlay } from '../gestures/play.js';
import type { TraceRead } from '../handoff/trace/write-trace.js';
import { inputOf } from '../handoff/vectors/situation.js';
import type { BindingRow } from '../language/model.js';
import { createHands, type Hands } from './hands.js';
import { createSession, eachRead, type Session } from './session.js';

/** A console that is switched on, with the player at it. */
export interface Desk {
  readonly play: Play;
  /** Where it began: at power-on, unless it was told otherwise. */
  readonly beginning: PlayState;
  readonly hands: Hands;
  /** Everything since power-on. */
  readonly session: Session;
  /** Where the play stands between two reads. */
  state(): PlayState;
  isReplaying(): boolean;
  /** The next read: of the hands, or of what is replayed. `now` in ms of playing time. */
  read(now: number): PlayStep;
  /** A `game` row of the mode happens at the next read. */
  happen(row: BindingRow): void;
}

/** @param replay reads that are made before the hands get the controls */
export function createDesk(
  play: Play,
  replay: readonly TraceRead[] = [],
  beginning: PlayState = startPlay(play),
): Desk {
  const hands = createHands(play);
  const session = createSession();
  const replayed = eachRead(replay);
  let state = beginning;
  let next = replayed.next().value;
  let happening: readonly BindingRow[] = [];
  return {
    play,
    beginning,
    hands,
    session,
    state: () => state,
    isReplaying: () => next !== undefined,
    read(now) {
      const { levels, game } = next ?? { levels: hands.read(state.levels, now), game: happening };
      if (next === undefined) happening = [];
      else next = replayed.next().value;
      const step = stepPlay(play, state, { ...inputOf(play, levels), game });
      session.add(step.state.levels, step.game);
      state = step.state;
      return step;
    },
    happen(row) {
      happening = [...happening, row];
    },
  };
}
