import type { Phrases } from '../documents/phrase-book.js';
import type { WitnessedFinding } from '../documents/tryout/page-data.js';
import type { Play, PlayState } from '../gestures/play.js';
import { findShowing } from '../handoff/trace/showing.js';
import type { TraceRead } from '../handoff/trace/write-trace.js';
import type { Scheme } from '../language/model.js';
import type { Answers } from './answers.js';
import { selectOf, showChoice } from './choices.js';
import type { Table } from './table.js';

/** Switches a console on. */
export type PowerOn = (play: Play, replay?: readonly TraceRead[], beginning?: PlayState) => Table;

/** What may put another table in place of the one before. */
export interface Switchboard {
  readonly scheme: Scheme;
  readonly phrases: Phrases;
  readonly power: PowerOn;
  readonly change: (next: Table) => void;
  readonly answers: Answers;
}

/** How fast a witness is shown. */
export interface FindingsShown {
  /** Null where the table shows none. */
  speedOf(table: Table): number | null;
  /** Something else is played: at the speed that was chosen before a witness stopped it. */
  goOn(): void;
}

/** Reads a second at full speed, about; a witness takes this many seconds, but no read longer than a part of one. */
const READS_A_SECOND = 60;
const SECONDS = 4;
const SLOWEST = 1 / 36;

/** The buttons beside the findings play what shows each of them, slowly, and stop there. */
export function listenToFindings(
  findings: readonly WitnessedFinding[],
  { scheme, phrases, power, change, answers }: Switchboard,
): FindingsShown {
  const list = selectOf('speed');
  /** The player’s own choice, while the list says that a witness has stopped. */
  let chosen: string | null = null;
  list.addEventListener('change', () => {
    chosen = null;
  });
  let shown: { readonly table: Table; readonly speed: number } | null = null;
  document.addEventListener('click', event => {
    const button = event.target instanceof Element ? event.target.closest('[data-show]') : null;
    const finding = findings[Number(button?.getAttribute('data-show') ?? -1)];
    if (finding === undefined) return;
    const found = findShowing(scheme, finding);
    if (found === null) return answers.say('unshown', { says: phrases.say('try not shown') });
    const { play, state, reads } = found;
    const table = power(
      play,
      reads.map(levels => ({ levels, game: [], times: 1 })),
      state,
    );
    shown = { table, speed: Math.min(1, Math.max(SLOWEST, reads.length / READS_A_SECOND / SECONDS)) };
    showChoice(play);
    change(table);
    const says = phrases.say('try shown', { mode: state.mode.name });
    answers.say('message', { says, english: finding.message });
    window.scrollTo({ top: 0 });
  });
  return {
    speedOf(table) {
      if (shown?.table !== table) return null;
      if (table.desk.isReplaying()) return shown.speed;
      shown = null;
      chosen ??= list.value;
      list.value = '0';
      return 0;
    },
    goOn() {
      if (chosen !== null) list.value = chosen;
      chosen = null;
    },
  };
}
