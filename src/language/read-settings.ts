import type { Report } from '../findings/report.js';
import { badValue, createSpot, type Spot } from './faults.js';
import { LAYOUTS } from './layout.js';
import type { Setting } from './model.js';
import { createNames, type NamesBeingFilled } from './names.js';
import { readPlainName } from './naming.js';
import type { Section } from './sections.js';
import { readSetBy } from './set-by.js';
import { normal, tidy } from './spelling.js';
import { checkStarts } from './starts.js';
import { needCell, type Row, readTable } from './tables.js';
import { findValue, noSuchValue, readValues } from './values.js';
import { placeOf, type Words } from './words.js';

export interface Settings {
  readonly names: NamesBeingFilled<Setting>;
  /** True where what is said of its values or of who sets it could not be read. */
  readonly isUnclear: (setting: Setting) => boolean;
  /** The value of a setting that the words say; null (and a finding) where it has no such value. */
  readonly readValue: (setting: Setting, words: Words, column: string, spot: Spot) => string | null;
}

export function readSettings(section: Section | undefined, report: Report): Settings {
  const names = createNames<Setting>('setting', 'settings');
  /** Settings whose values could not all be read: what is said of their values is not looked at. */
  const unclear = new Set<Setting>();
  const readValue: Settings['readValue'] = (setting, words, column, spot) => {
    const value = findValue(setting.values, words.text);
    if (value !== undefined) return value;
    if (unclear.has(setting)) return tidy(words.text);
    noSuchValue(setting.name, setting.values, words, column, spot);
    return null;
  };
  const startWords = new Map<Setting, Words>();
  for (const row of section === undefined ? [] : readTable(section, createSpot(report, '')).rows) {
    const read = readSetting(row, report);
    if (read === null) continue;
    const { setting, words, spot } = read;
    if (!read.complete) unclear.add(setting);
    if (read.starts !== null) startWords.set(setting, read.starts);
    names.add(setting.name, setting, words, spot);
  }
  checkStarts(names.all(), startWords, unclear, report);
  return { names, isUnclear: setting => unclear.has(setting), readValue };
}

interface ReadSetting {
  readonly setting: Setting;
  readonly words: Words;
  readonly spot: Spot;
  readonly starts: Words | null;
  readonly complete: boolean;
}

function readSetting(row: Row, report: Report): ReadSetting | null {
  const plain = createSpot(report, '');
  const words = needCell(row, 'Setting', plain, 'Write the name of the setting.');
  if (words === null) return null;
  const name = readPlainName(words, 'Setting', plain);
  checkColumnWords(words, name, plain);
  const spot = createSpot(report, ` of “${name}”`, { settings: [name] });
  const at = placeOf(words);
  const listed = needCell(row, 'Values', spot, 'Write a list (`gentle, strong`) or a range (`1 to 8`).', at);
  const values = listed === null ? null : readValues(listed, spot);
  const starts = needCell(row, 'Starts as', spot, 'Write the value that the setting has at power-on.', at);
  const by = needCell(
    row,
    'Set by',
    spot,
    'Write `game`, or a switch and a value for each of its positions.',
    at,
  );
  const setBy = by === null ? null : readSetBy(by, { setting: name, values, spot });
  const known = values?.values ?? [];
  const start = starts === null ? undefined : findValue(known, starts.text);
  if (starts !== null && start === undefined && values?.complete === true)
    noSuchValue(name, known, starts, 'Starts as', spot);
  const setting: Setting = {
    name,
    at,
    values: known,
    startsAs: start ?? known[0] ?? '',
    setBy: setBy ?? { kind: 'game' },
  };
  const complete = values?.complete === true && setBy !== null;
  return { setting, words, spot, starts: start === undefined ? null : starts, complete };
}

/** A setting is a column of `## Variations`, so it can't be called like another column there. */
function checkColumnWords(words: Words, name: string, spot: Spot): void {
  const column = LAYOUTS.variations.columns.find(candidate => normal(candidate.name) === normal(name));
  if (column === undefined) return;
  badValue(spot, words, 'Setting', `“${name}” is a column of \`## Variations\` already`, [
    'Choose another name.',
  ]);
}
