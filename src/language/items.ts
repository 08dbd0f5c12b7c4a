import type { Report } from '../findings/report.js';
import { badValue, createSpot, unknownName } from './faults.js';
import type { Section } from './sections.js';
import { normal } from './spelling.js';
import { needCell, readTable } from './tables.js';
import type { Words } from './words.js';

/** A row of a table Item · Value. */
export interface Item {
  readonly name: Words;
  /** Null where nothing is said. */
  readonly value: Words | null;
}

/** The rows of a table Item · Value by item. */
export function readItems(
  section: Section,
  items: readonly string[],
  report: Report,
): ReadonlyMap<string, Item> {
  const spot = createSpot(report, '');
  const read = new Map<string, Item>();
  for (const row of readTable(section, spot).rows) {
    const name = needCell(row, 'Item', spot, 'Write which item the value is of.');
    if (name === null) continue;
    const item = items.find(candidate => normal(candidate) === normal(name.text));
    if (item === undefined) {
      unknownName(spot, name, 'item', items, 'Take the row out; remarks can stand in a paragraph.');
      continue;
    }
    if (read.has(item))
      badValue(spot, name, item, 'this is said twice, and only the first is read', [
        'Take one of the two out.',
      ]);
    else read.set(item, { name, value: row.cells.get('Value') ?? null });
  }
  return read;
}
