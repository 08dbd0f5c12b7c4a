import { badValue, type Spot } from './faults.js';
import type { Condition } from './model.js';
import { resolveName } from './names.js';
import type { Scope } from './scope.js';
import { tidy } from './spelling.js';
import { placeOf, sliceWords, splitWords, type Words } from './words.js';

const AND = /(?:^|\s+)and(?:\s+|$)/gi;
const IS = /\s+is(?:\s+(not)(?=\s|$))?(?:\s+|$)/i;

/** The `When` column: `SETTING is VALUE`, `SETTING is not VALUE`, joined by `and`; null where unreadable. */
export function readConditions(words: Words, scope: Scope, spot: Spot): readonly Condition[] | null {
  const read = splitWords(words, AND).map(part => readCondition(part, words, scope, spot));
  const conditions = read.filter(condition => condition !== null);
  return conditions.length === read.length ? conditions : null;
}

function readCondition(part: Words, whole: Words, scope: Scope, spot: Spot): Condition | null {
  const match = IS.exec(part.text);
  const setting = match === null ? part : sliceWords(part, 0, match.index);
  const value = match === null ? part : sliceWords(part, match.index + match[0].length);
  if (match === null || setting.text === '' || value.text === '') {
    badValue(
      spot,
      part.text === '' ? whole : part,
      'When',
      `“${tidy((part.text === '' ? whole : part).text)}” is not a condition`,
      ['Write `SETTING is VALUE` or `SETTING is not VALUE`, joined by `and`; for “or”, write a second row.'],
    );
    return null;
  }
  const found = resolveName(setting, scope.settings.names, spot, 'Define it in `## Settings`.');
  if (found === null) return null;
  const named = scope.settings.readValue(found, value, 'When', spot);
  if (named === null) return null;
  return { setting: found, is: match[1] === undefined, value: named, at: placeOf(part) };
}
