import type { Report } from '../findings/report.js';
import { CONSOLES, type ConsoleProfile, type SwitchState } from '../hardware/consoles.js';
import { fromSource } from '../hardware/source.js';
import { SWITCH_NAMES, type SwitchName } from '../hardware/switches.js';
import { badValue, createSpot, type Spot } from './faults.js';
import { createNames } from './names.js';
import { readName } from './naming.js';
import { findPosition, positionsOf } from './positions.js';
import type { Section } from './sections.js';
import { listWords, normal, tidy } from './spelling.js';
import { needCell, type Row, readTable } from './tables.js';
import { placeOf, type Words } from './words.js';

/** A profile and where it was named; built-in ones have no place. */
interface Named {
  readonly profile: ConsoleProfile;
  readonly at: ReturnType<typeof placeOf>;
}

/** Every profile by name: the built-in ones, replaced and added to by `## Consoles`. */
export interface Profiles {
  readonly find: (name: string) => ConsoleProfile | undefined;
  readonly list: readonly string[];
}

export function readConsoles(section: Section | undefined, report: Report): Profiles {
  const own = createNames<Named>('console', 'consoles');
  const spot = createSpot(report, '');
  const rows = section === undefined ? [] : readTable(section, spot, SWITCH_NAMES).rows;
  for (const row of rows) {
    const words = needCell(row, 'Console', spot, 'Write the name of the console profile.');
    if (words === null) continue;
    const name = readName(words, 'Console', spot);
    own.add(name, { profile: readProfile(name, row, report), at: placeOf(words) }, words, spot);
  }
  const builtIn = CONSOLES.filter(({ name }) => own.find(name) === undefined);
  const profiles = new Map(builtIn.map(profile => [normal(profile.name), profile]));
  return {
    find: name => own.find(name)?.profile ?? profiles.get(normal(name)),
    list: [...builtIn.map(({ name }) => name), ...own.list()],
  };
}

function readProfile(name: string, row: Row, report: Report): ConsoleProfile {
  const spot = createSpot(report, ` of “${name}”`, { consoles: [name] });
  const state = (panel: SwitchName): SwitchState => {
    const words = row.cells.get(panel);
    return (words === undefined ? null : readState(words, panel, spot)) ?? { kind: 'front' };
  };
  return {
    name,
    switches: {
      'TV type': state('TV type'),
      'left difficulty': state('left difficulty'),
      'right difficulty': state('right difficulty'),
      SELECT: state('SELECT'),
      RESET: state('RESET'),
    },
    source: fromSource('P'),
  };
}

function readState(words: Words, panel: SwitchName, spot: Spot): SwitchState | null {
  const text = normal(words.text);
  const positions = positionsOf(panel);
  if (text === 'front' || text === 'rear') return { kind: text };
  if (text === 'absent' && positions.length === 0) return { kind: 'absent' };
  const position = findPosition(/^fixed (.+)$/.exec(text)?.[1] ?? '');
  if (position !== undefined && positions.includes(position)) return { kind: 'fixed', position };
  const choices = ['front', 'rear', ...positions.map(name => `fixed ${name}`)];
  if (positions.length === 0) choices.push('absent');
  badValue(spot, words, panel, `“${tidy(words.text)}” is not one of ${listWords(choices)}`, [
    positions.length === 0
      ? 'Write “absent” for a momentary switch that is not there.'
      : `Write “fixed” and the position that its line always reads: ${listWords(positions.map(name => `fixed ${name}`))}.`,
  ]);
  return null;
}
