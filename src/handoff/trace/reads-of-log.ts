import { type Play, startPlay, stepPlay } from '../../gestures/play.js';
import type { Handoff } from '../model.js';
import { inputOf } from '../vectors/situation.js';
import { levelsOfRead } from './levels.js';
import type { Log } from './log.js';
import { gameRows } from './trace.js';
import type { TraceRead } from './write-trace.js';

/** What the hands did by a log, to be played again from power-on. What the game does by itself is as the log says. */
export function readsOfLog(play: Play, handoff: Handoff, { reads }: Log): readonly TraceRead[] {
  let state = startPlay(play);
  return reads.map(read => {
    const levels = levelsOfRead(play.contacts, read, state.levels);
    const game = gameRows(state.mode, read, handoff);
    const step = stepPlay(play, state, { ...inputOf(play, levels), game });
    state = step.state;
    return { levels, game: step.game, times: 1 };
  });
}
