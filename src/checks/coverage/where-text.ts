import type { Scheme } from '../../language/model.js';
import type { Situation } from './situations.js';

const LIST = new Intl.ListFormat('en', { type: 'conjunction' });

/**
 * Situations in words, shortest where they are all combinations of some consoles, seats rows and standards:
 * `on any console`, `on no-difficulty in Solo`, `on four-switch with PAL`.
 */
export function whereText(situations: readonly Situation[], scheme: Scheme): string {
  const rows = new Map<string, string[]>();
  for (const [console, own] of byConsole(situations)) {
    const text = insideText(own, scheme);
    const consoles = rows.get(text) ?? [];
    rows.set(text, consoles);
    consoles.push(console);
  }
  const texts = [...rows].map(([inside, consoles]) => {
    const all = consoles.length === scheme.consoles.length;
    return `${all ? 'on any console' : `on ${LIST.format(consoles)}`}${inside}`;
  });
  return LIST.format(texts);
}

function byConsole(situations: readonly Situation[]): ReadonlyMap<string, readonly Situation[]> {
  const consoles = new Map<string, Situation[]>();
  for (const situation of situations) {
    const own = consoles.get(situation.console.name) ?? [];
    consoles.set(situation.console.name, own);
    own.push(situation);
  }
  return consoles;
}

/** The seats rows and standards of one console. */
function insideText(situations: readonly Situation[], scheme: Scheme): string {
  const rows = new Map<string, string[]>();
  for (const seats of new Set(situations.map(situation => situation.seats))) {
    const standards = situations.filter(each => each.seats === seats).map(({ standard }) => standard.name);
    const all = standards.length === scheme.standards.length;
    const text = all ? '' : ` with ${LIST.format(standards)}`;
    const names = rows.get(text) ?? [];
    rows.set(text, names);
    names.push(seats.name);
  }
  const texts = [...rows].map(([standards, seats]) =>
    seats.length === scheme.seats.length ? standards : ` in ${LIST.format(seats)}${standards}`,
  );
  return LIST.format(texts);
}
