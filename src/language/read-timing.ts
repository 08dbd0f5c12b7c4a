import type { Report } from '../findings/report.js';
import { badValue, createSpot } from './faults.js';
import type { NamedTime } from './model.js';
import { createNames, type NamesBeingFilled } from './names.js';
import { readName } from './naming.js';
import type { Section } from './sections.js';
import { needCell, readTable } from './tables.js';
import { looksLikeTime, readLiteral } from './times.js';
import { placeOf } from './words.js';

export function readTiming(section: Section | undefined, report: Report): NamesBeingFilled<NamedTime> {
  const times = createNames<NamedTime>('named time', 'named times');
  if (section === undefined) return times;
  for (const row of readTable(section, createSpot(report, '')).rows) {
    const words = needCell(row, 'Name', createSpot(report, ''), 'Write the name of the time.');
    if (words === null) continue;
    const spot = createSpot(report, ` of “${words.text}”`);
    const name = readName(words, 'Name', createSpot(report, ''));
    if (looksLikeTime(name))
      badValue(createSpot(report, ''), words, 'Name', `“${name}” could be taken for a time`, [
        'Choose a name that says what the time is for, such as “long press”.',
      ]);
    const value = needCell(row, 'Time', spot, 'Write a time, for example “2 s”.', placeOf(words));
    const time = value === null ? null : readLiteral(value, 'Time', spot);
    if (time === null) times.addUnclear(name);
    else times.add(name, { name, at: placeOf(words), time }, words, spot);
  }
  return times;
}
