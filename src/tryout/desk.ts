import { type Play, type PlayState, type PlayStep, playKey, startPlay, stepPlay } from '../gestures/play.js';
import type { TraceRead } from '../handoff/trace/write-trace.js';
import { inputOf } from '../handoff/vectors/situation.js';
import type { BindingRow } from '../language/model.js';
import { awayWhile, createHands, type Hands } from './hands.js';
import { createSession, eachRead, type Session } from './session.js';

/** A console that is switched on, with the player at it. */
export interface Desk {
  readonly play: Play;
  /** Where it began: at power-on, unless it was told otherwise. */
  readonly beginning: PlayState;
  /** While something is replayed they do nothing. */
  readonly hands: Hands;
  /** Everything since it began, as far as it has been read. */
  readonly session: Session;
  /** All reads of the session, those of a replay that are still to come too. */
  reads(): readonly TraceRead[];
  /** Where the play stands between two reads. */
  state(): PlayState;
  isReplaying(): boolean;
  /** The next read: of the hands, or of what is replayed. `now` in ms of playing time. */
  read(now: number): PlayStep;
  /** A `game` row of the mode happens at the next read; not while something is replayed. */
  happen(row: BindingRow): void;
}

/** @param replay reads that are made before the hands get the controls */
export function createDesk(
  play: Play,
  replay: readonly TraceRead[] = [],
  beginning: PlayState = startPlay(play),
): Desk {
  const session = createSession();
  const replayed = eachRead(replay);
  let state = beginning;
  let next = replayed.next().value;
  let happening: readonly BindingRow[] = [];
  const isReplaying = () => next !== undefined;
  const hands = awayWhile(createHands(play), isReplaying);
  return {
    play,
    beginning,
    hands,
    session,
    state: () => state,
    isReplaying,
    reads: () => (isReplaying() ? replay : session.reads()),
    read(now) {
      const { levels, game } = next ?? {
        levels: hands.read(state.levels, now, state.read === 0),
        game: happening,
      };
      if (next === undefined) happening = [];
      else next = replayed.next().value;
      const step = stepPlay(play, state, { ...inputOf(play, levels), game });
      session.add(step.state.levels, step.game);
      state = step.state;
      return step;
    },
    happen(row) {
      if (!isReplaying()) happening = [...happening, row];
    },
  };
}

/** A trace begins at power-on; what shows a finding need not. */
export const isFromPowerOn = ({ play, beginning }: Desk): boolean =>
  beginning.mode === play.scheme.startMode && playKey(play, beginning) === playKey(play, startPlay(play));
