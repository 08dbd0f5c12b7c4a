import type { Report } from '../findings/report.js';
import { type Position, SWITCH_NAMES, type SwitchName } from '../hardware/switches.js';
import { badValue, createSpot, duplicateName, type Spot, unknownName } from './faults.js';
import type { SwitchWords } from './model.js';
import { findPosition, findSwitch, noSuchPosition, positionsOf } from './positions.js';
import type { Section } from './sections.js';
import { tidy } from './spelling.js';
import { needCell, type Row, readTable } from './tables.js';
import { placeOf, type Words } from './words.js';

/** The switch that the words name; null (and a finding) where there is none. */
export function readSwitch(words: Words, spot: Spot): SwitchName | null {
  const name = findSwitch(words.text);
  if (name === undefined)
    unknownName(spot, words, 'switch', SWITCH_NAMES, 'Name a switch of the console’s panel.');
  return name ?? null;
}

/** What the manual says of each console switch. */
export function readSwitches(section: Section | undefined, report: Report): readonly SwitchWords[] {
  if (section === undefined) return [];
  const plain = createSpot(report, '');
  const read: SwitchWords[] = [];
  for (const row of readTable(section, plain).rows) {
    const words = needCell(row, 'Switch', plain, 'Write the name of the switch.');
    const name = words === null ? null : readSwitch(words, plain);
    if (words === null || name === null) continue;
    const said = readRow(row, words, name, createSpot(report, ` of “${name}”`));
    const first = read.find(other => other.name === name && tidy(other.use) === tidy(said.use));
    if (first === undefined) read.push(said);
    else if (row.columns.has('Position or use') || !row.isUnclear)
      duplicateName(plain, row.cells.get('Position or use') ?? words, `rows of “${name}”`, first.at, [
        'Take one of the two rows out, or put the words of both into one.',
      ]);
  }
  return read;
}

function readRow(row: Row, words: Words, name: SwitchName, spot: Spot): SwitchWords {
  const use = row.cells.get('Position or use');
  return {
    at: placeOf(words),
    name,
    position: use === undefined ? null : readPosition(use, name, spot),
    use: tidy(use?.text ?? ''),
    words: tidy(row.cells.get('Say it as')?.text ?? ''),
  };
}

const WHOLE_SWITCH = 'Leave the cell empty for the whole switch, and say what it is for in `Say it as`.';

/** A position of the switch; null where the row speaks of its use, as it may of a switch that has none. */
function readPosition(words: Words, name: SwitchName, spot: Spot): Position | null {
  const position = findPosition(words.text);
  const positions = positionsOf(name);
  if (position !== undefined && positions.includes(position)) return position;
  if (positions.length > 0) noSuchPosition(spot, words, 'Position or use', name, [WHOLE_SWITCH]);
  else if (position !== undefined)
    badValue(spot, words, 'Position or use', `${name} has no position ${position}`, [
      'Say what it is used for.',
    ]);
  return null;
}
