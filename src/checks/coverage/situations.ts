import type { TvStandard } from '../../hardware/clocks.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import { SWITCH_NAMES } from '../../hardware/switches.js';
import type { Scheme, SeatsRow } from '../../language/model.js';

/** One console, one way to sit, one TV standard: what a graph is explored for. */
export interface Situation {
  readonly console: ConsoleProfile;
  readonly seats: SeatsRow;
  readonly standard: TvStandard;
}

/** Every situation, in the order of the report. */
export const situationsOf = ({ consoles, seats, standards }: Scheme): readonly Situation[] =>
  consoles.flatMap(console =>
    seats.flatMap(row => standards.map(standard => ({ console, seats: row, standard }))),
  );

/** Consoles put together where the same switches are there, and the same ones fixed in the same positions. */
export function alikeConsoles(scheme: Scheme): readonly (readonly ConsoleProfile[])[] {
  const alike = new Map<string, ConsoleProfile[]>();
  for (const profile of scheme.consoles) {
    const key = SWITCH_NAMES.map(name => {
      const state = profile.switches[name];
      return state.kind === 'fixed' ? state.position : state.kind === 'absent' ? 'absent' : 'there';
    }).join();
    const known = alike.get(key);
    if (known === undefined) alike.set(key, [profile]);
    else known.push(profile);
  }
  return [...alike.values()];
}
