import { isRuleId, RULES } from '../findings/catalogue.js';
import type { Report } from '../findings/report.js';
import type { ConsoleProfile } from '../hardware/consoles.js';
import { badValue, createSpot, type Spot, unknownName } from './faults.js';
import type { AcceptedKind, AcceptedName, AcceptedRow } from './model.js';
import type { Scope } from './scope.js';
import type { Section } from './sections.js';
import { findIn, normal, rejoined, tidy } from './spelling.js';
import { needCell, type Row, readTable } from './tables.js';
import { placeOf, splitWords, type Words } from './words.js';

/** The names of each kind that a row can be about. */
type Findable = Readonly<Record<AcceptedKind, readonly string[]>>;

export function readAccepted(
  section: Section | undefined,
  scope: Scope,
  consoles: readonly ConsoleProfile[],
): readonly AcceptedRow[] {
  if (section === undefined) return [];
  const names: Findable = {
    mode: scope.modes.list(),
    action: scope.actions.list(),
    setting: scope.settings.names.list(),
    seats: scope.seats.list(),
    console: consoles.map(({ name }) => name),
  };
  const read: AcceptedRow[] = [];
  for (const row of readTable(section, createSpot(scope.report, '')).rows) {
    const accepted = readRow(row, names, scope.report);
    if (accepted !== null) read.push(accepted);
  }
  return read;
}

function readRow(row: Row, names: Findable, report: Report): AcceptedRow | null {
  const plain = createSpot(report, '');
  const words = needCell(row, 'Rule', plain, 'Write the rule’s id, as the report gives it.');
  if (words === null) return null;
  const rule = normal(words.text);
  const known = isRuleId(rule);
  if (!known)
    unknownName(plain, words, 'rule', Object.keys(RULES), 'Write the rule’s id, as the report gives it.');
  const spot = createSpot(report, ` of ${rule}`);
  const why = needCell(row, 'Why', spot, 'Write why the finding may stay.', placeOf(words));
  const place = row.cells.get('Where');
  const where = place === undefined ? [] : readWhere(place, names, spot);
  if (!known || where === null) return null;
  return { at: placeOf(words), rule, where, why: tidy(why?.text ?? '') };
}

function readWhere(words: Words, names: Findable, spot: Spot): readonly AcceptedName[] | null {
  const read: AcceptedName[] = [];
  let complete = true;
  for (const part of splitWords(words, /;/g)) {
    if (part.text === '') {
      badValue(spot, words, 'Where', `a name is missing in “${tidy(words.text)}”`, [
        'Take the extra `;` out.',
      ]);
      complete = false;
      continue;
    }
    const found = findName(part, names);
    if (found === null) {
      unknownName(
        spot,
        part,
        'mode, action, setting, seats row or console',
        Object.values(names).flat(),
        'Join several names with `;`.',
        rejoined(part.text, findIn(Object.values(names).flat()), '; '),
      );
      complete = false;
    } else read.push(found);
  }
  return complete ? read : null;
}

function findName(words: Words, names: Findable): AcceptedName | null {
  const wanted = normal(words.text);
  // What a fallback for a setting does is an action too, called so in the findings.
  const meant: Findable = {
    ...names,
    action: [...names.action, ...names.setting.map(name => `${name}: next`)],
  };
  const things = (['mode', 'action', 'setting', 'seats', 'console'] as const).flatMap(kind => {
    const name = meant[kind].find(candidate => normal(candidate) === wanted);
    return name === undefined ? [] : [{ kind, name }];
  });
  const [first] = things;
  return first === undefined ? null : { name: first.name, things };
}
