import type { Report } from '../findings/report.js';
import { createSpot, notOneOf } from './faults.js';
import type { Action } from './model.js';
import { createNames, type NamesBeingFilled } from './names.js';
import { readName } from './naming.js';
import type { Section } from './sections.js';
import { normal, tidy } from './spelling.js';
import { needCell, readTable } from './tables.js';
import { placed, placeOf } from './words.js';

const NEEDS = ['must', 'nice'] as const;

export function readActions(section: Section | undefined, report: Report): NamesBeingFilled<Action> {
  const actions = createNames<Action>('action', 'actions');
  if (section === undefined) return actions;
  const plain = createSpot(report, '');
  for (const row of readTable(section, plain).rows) {
    const words = needCell(row, 'Action', plain, 'Write the name of the action.');
    if (words === null) continue;
    const name = readName(words, 'Action', plain);
    const short = row.cells.get('Short');
    const need = row.cells.get('Need');
    const wanted = need === undefined ? 'must' : NEEDS.find(choice => choice === normal(need.text));
    if (need !== undefined && wanted === undefined)
      notOneOf(createSpot(report, ` of “${name}”`, { actions: [name] }), need, 'Need', NEEDS);
    const action: Action = {
      name,
      at: placeOf(words),
      words: tidy(row.cells.get('Say it as')?.text ?? ''),
      short: short === undefined ? null : placed(tidy(short.text), short),
      need: wanted ?? 'must',
    };
    actions.add(name, action, words, plain);
  }
  return actions;
}
