import type { Phrases } from '../documents/phrase-book.js';
import type { Play } from '../gestures/play.js';
import { createHandoff } from '../handoff/create.js';
import type { Handoff } from '../handoff/model.js';
import { readLog } from '../handoff/trace/log.js';
import { readsOfLog } from '../handoff/trace/reads-of-log.js';
import { choosePlay, traceScheme } from '../handoff/trace/trace.js';
import { type TraceRead, writeTrace } from '../handoff/trace/write-trace.js';
import type { Scheme } from '../language/model.js';
import type { Answer } from './answers.js';
import type { Desk } from './desk.js';

let known: { readonly scheme: Scheme; readonly handoff: Handoff } | null = null;

/** Made when it is first asked for: a page that is only played does not need it. */
function handoffOf(scheme: Scheme): Handoff {
  if (known?.scheme !== scheme) known = { scheme, handoff: createHandoff(scheme) };
  return known.handoff;
}

/** Hands the session to the browser as a file that `leverleaf trace` and this page can read. */
export function saveTrace({ play, reads }: Desk): void {
  const text = writeTrace(play, handoffOf(play.scheme), reads());
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/jsonl' }));
  link.download = `${play.scheme.game.shortName.value.toLowerCase()}-trace.jsonl`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** A trace that can be played again, and what is to be said of it. */
export interface OpenedTrace extends Answer {
  readonly play: Play;
  readonly reads: readonly TraceRead[];
}

/** A log of this page or of a build; only an answer where it can't be played. */
export function openTrace(scheme: Scheme, text: string, { say, count }: Phrases): OpenedTrace | Answer {
  const log = readLog(text);
  if (log.reads.length === 0) return { says: say('try no trace'), english: log.faults[0] };
  const play = choosePlay(scheme, log.origin);
  if (typeof play === 'string') return { says: say('try no trace'), english: play };
  const { differences } = traceScheme(scheme, text);
  const [first] = differences;
  const reads = count('try reads', log.reads.length);
  const says =
    first === undefined
      ? say('try agrees', { reads })
      : say('try differs', { reads, number: differences.length, first: first.read });
  const english = [...log.faults.slice(0, 1), ...(first?.says ?? [])].join(' ');
  return {
    play,
    reads: readsOfLog(play, handoffOf(scheme), log),
    says,
    english: english === '' ? undefined : english,
  };
}
