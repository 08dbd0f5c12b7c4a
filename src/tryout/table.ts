import type { Phrases } from '../documents/phrase-book.js';
import type { Play, PlayState, PlayStep } from '../gestures/play.js';
import type { TraceRead } from '../handoff/trace/write-trace.js';
import type { Mode } from '../language/model.js';
import { type Clock, createClock } from './clock.js';
import { createDesk, type Desk } from './desk.js';
import { createKeyMap, type KeyMap } from './keys.js';
import { createFigures, labelKeys } from './show-figures.js';
import { createFires } from './show-fires.js';
import { createKeys } from './show-keys.js';
import { createOffers } from './show-offers.js';
import { createRegisters } from './show-registers.js';
import { createStateView } from './show-state.js';

/** A console that is switched on, and all that shows it. */
export interface Table {
  readonly desk: Desk;
  readonly clock: Clock;
  readonly keys: KeyMap;
  /** One read, told to what must hear of each. */
  read(): void;
  /** Shows how things stand. */
  show(): void;
  /** What is printed on the keys of this keyboard, by code. */
  nameKeys(layout: ReadonlyMap<string, string>): void;
}

/**
 * @param replay what is played again before the hands get the controls
 * @param beginning power-on where it is left out
 */
export function createTable(
  play: Play,
  phrases: Phrases,
  replay: readonly TraceRead[] = [],
  beginning?: PlayState,
): Table {
  const speech = { phrases, standards: [play.standard] };
  const desk = createDesk(play, replay, beginning);
  const clock = createClock(play);
  const keys = createKeyMap(play.contacts);
  const offers = createOffers(play, speech, row => desk.happen(row));
  const fires = createFires(speech);
  const stateView = createStateView(play, phrases);
  const chips = createKeys(play, keys, phrases);
  const byLevels = [createFigures(play), createRegisters(play, phrases), chips];
  let shown: readonly number[] | null = null;
  let labelled: Mode | null = null;
  const tell = (step: PlayStep) => {
    fires.add(step);
    offers.light(step, performance.now());
  };
  return {
    desk,
    clock,
    keys,
    read: () => tell(desk.read(clock.now())),
    show() {
      const now = desk.state();
      const isAway = desk.isReplaying();
      chips.setAway(isAway);
      if (now.levels !== shown) for (const view of byLevels) view.show(now.levels);
      shown = now.levels;
      stateView.show(now);
      if (now.mode !== labelled) labelKeys(play, now.mode, phrases);
      labelled = now.mode;
      offers.show(now, performance.now(), isAway);
    },
    nameKeys: layout => chips.name(layout),
  };
}
