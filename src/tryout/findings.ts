import type { Phrases } from '../documents/phrase-book.js';
import type { WitnessedFinding } from '../documents/tryout/page-data.js';
import type { Play, PlayState } from '../gestures/play.js';
import { findShowing } from '../handoff/trace/showing.js';
import type { TraceRead } from '../handoff/trace/write-trace.js';
import type { Scheme } from '../language/model.js';
import { say, selectOf, showChoice } from './choices.js';
import type { Table } from './table.js';

/** Switches a console on. */
export type PowerOn = (play: Play, replay?: readonly TraceRead[], beginning?: PlayState) => Table;

/** What may put another table in place of the one before. */
export interface Switchboard {
  readonly scheme: Scheme;
  readonly phrases: Phrases;
  readonly power: PowerOn;
  readonly change: (next: Table) => void;
}

/** How fast a witness is shown. */
export interface FindingsShown {
  /** Null where the table shows none. */
  speedOf(table: Table): number | null;
}

/** Reads a second at full speed, about; a witness takes this many seconds, but no read longer than a part of one. */
const READS_A_SECOND = 60;
const SECONDS = 4;
const SLOWEST = 1 / 36;

/** The buttons beside the findings play what shows each of them, slowly, and stop there. */
export function listenToFindings(
  findings: readonly WitnessedFinding[],
  { scheme, phrases, power, change }: Switchboard,
): FindingsShown {
  let shown: { readonly table: Table; readonly speed: number } | null = null;
  document.addEventListener('click', event => {
    const button = event.target instanceof Element ? event.target.closest('[data-show]') : null;
    const finding = findings[Number(button?.getAttribute('data-show') ?? -1)];
    if (finding === undefined) return;
    const found = findShowing(scheme, finding);
    if (found === null) return say(phrases.say('try not shown'));
    const { play, state, reads } = found;
    const table = power(
      play,
      reads.map(levels => ({ levels, game: [], times: 1 })),
      state,
    );
    shown = { table, speed: Math.min(1, Math.max(SLOWEST, reads.length / READS_A_SECOND / SECONDS)) };
    showChoice(play);
    say(phrases.say('try shown', { mode: state.mode.name, message: finding.message }));
    change(table);
    window.scrollTo({ top: 0 });
  });
  return {
    speedOf(table) {
      if (shown?.table !== table) return null;
      if (table.desk.isReplaying()) return shown.speed;
      shown = null;
      selectOf('speed').value = '0';
      return 0;
    },
  };
}
