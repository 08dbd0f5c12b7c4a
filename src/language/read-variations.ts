import { createSpot } from './faults.js';
import type { SeatsRow, Setting, Variation } from './model.js';
import { createNames } from './names.js';
import { readName } from './naming.js';
import { readSeatsList } from './read-seats.js';
import type { Scope } from './scope.js';
import type { Section } from './sections.js';
import { tidy } from './spelling.js';
import { needCell, type Row, readTable } from './tables.js';
import { placeOf } from './words.js';

export function readVariations(section: Section | undefined, scope: Scope): readonly Variation[] {
  if (section === undefined) return [];
  const plain = createSpot(scope.report, '');
  const variations = createNames<Variation>('variation', 'variations');
  for (const row of readTable(section, plain, scope.settings.names.list()).rows) {
    const words = needCell(row, 'Variation', plain, 'Write the number or the name of the variation.');
    if (words === null) continue;
    const name = readName(words, 'Variation', plain);
    const variation = {
      name,
      at: placeOf(words),
      seats: readSeats(row, name, scope),
      values: readValues(row, name, scope),
      words: tidy(row.cells.get('Say it as')?.text ?? ''),
    };
    variations.add(name, variation, words, plain);
  }
  return variations.all();
}

function readSeats(row: Row, name: string, scope: Scope): readonly SeatsRow[] {
  const words = row.cells.get('Seats');
  if (words === undefined) return scope.seats.all();
  const spot = createSpot(scope.report, ` of variation “${name}”`, { variation: name });
  return readSeatsList(words, scope.seats, 'Seats', spot) ?? scope.seats.all();
}

function readValues(row: Row, name: string, scope: Scope): ReadonlyMap<Setting, string> {
  const values = new Map<Setting, string>();
  for (const setting of scope.settings.names.all()) {
    const words = row.cells.get(setting.name);
    if (words === undefined) continue;
    const details = { variation: name, settings: [setting.name] };
    const spot = createSpot(scope.report, ` of variation “${name}”`, details);
    const value = scope.settings.readValue(setting, words, setting.name, spot);
    if (value !== null) values.set(setting, value);
  }
  return values;
}
