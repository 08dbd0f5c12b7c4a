import { badValue, type Spot } from './faults.js';
import type { Condition, Setting } from './model.js';
import { resolveName } from './names.js';
import type { Scope } from './scope.js';
import { LONGEST_LOOKED_THROUGH, normal, tidy } from './spelling.js';
import { findValue } from './values.js';
import { placeOf, sliceWords, splitWords, type Words } from './words.js';

const AND = /(?:^|\s+)and(?:\s+|$)/gi;
const IS = /\s+is(?:\s+(not)(?=\s|$))?(?:\s+|$)/i;

/** The `When` column: `SETTING is VALUE`, `SETTING is not VALUE`, joined by `and`; null where unreadable. */
export function readConditions(words: Words, scope: Scope, spot: Spot): readonly Condition[] | null {
  if (isJoinedOtherwise(words, scope, spot)) return null;
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
      part.text === ''
        ? `a condition is missing beside an “and” of “${tidy(whole.text)}”`
        : `“${tidy(part.text)}” is not a condition`,
      [
        ...meantCondition(part.text, scope),
        'Write `SETTING is VALUE` or `SETTING is not VALUE`, joined by `and`; for “or”, write a second row.',
      ],
    );
    return null;
  }
  const found = resolveName(setting, scope.settings.names, spot, 'Define it in `## Settings`.');
  if (found === null) return null;
  const named = scope.settings.readValue(found, value, 'When', spot);
  if (named === null) return null;
  return { setting: found, is: match[1] === undefined, value: named, at: placeOf(part) };
}

/** `Fence = 2`, `Fence: 2`, `Fence != 2` */
function meantCondition(text: string, { settings }: Scope): readonly string[] {
  const [, name = '', sign = '', value = ''] = /^([^=:!<≠]+)(==?|:|!=|<>|≠)(.+)$/.exec(text) ?? [];
  const setting = settings.names.find(name);
  if (setting === undefined) return [];
  return [`Write \`${setting.name} is${/^[=:]/.test(sign) ? '' : ' not'} ${tidy(value)}\`.`];
}

/** A sign where `and` should stand: a condition follows it. */
const SIGN = /\s*([,;&+])\s*(?:and\s+)?(?=\S.*\sis(?:\s|$))/i;
const EVERY_SIGN = new RegExp(SIGN, 'gi');
/** Between things that can't hold at once. */
const OR = /\s+or(?:\s+|$)|\s*[,;/|]\s*/i;

/** Conditions joined by something else than `and`; no name of a setting or a value can hold such a thing. */
function isJoinedOtherwise(words: Words, scope: Scope, spot: Spot): boolean {
  const text = tidy(words.text);
  if (text.length > LONGEST_LOOKED_THROUGH) return false;
  const sign = SIGN.exec(text)?.[1];
  const isOr = /\sor(?:\s|$)/i.test(text);
  const joined = sign === undefined || isOr ? '' : text.replaceAll(EVERY_SIGN, ' and ');
  if (joined !== '' && joined.split(AND).every(part => IS.test(part))) {
    badValue(spot, words, 'When', `“${text}” joins conditions by “${sign}”`, [`Write \`${joined}\`.`]);
    return true;
  }
  if (!OR.test(text)) return false;
  const waysOut = noneOfWays(text, scope) ?? [
    ...exceptionWays(text, scope),
    'For “or”, write a second row: the same but for its `When`.',
  ];
  badValue(spot, words, 'When', `“${text}” names several possibilities, which one row can’t`, waysOut);
  return true;
}

/** `Bell is not small or middle` says that it is neither. */
function noneOfWays(text: string, scope: Scope): readonly string[] | null {
  const { setting, said } = listOf(text, /^(.+?)\s+is\s+not\s+(.+)$/i, 'is not', scope);
  if (setting === undefined || said.length < 2) return null;
  return [`Write \`${said.map(value => `${setting.name} is not ${value}`).join(' and ')}\`.`];
}

/** The setting and the values of it that a text lists; no setting where it lists something else. */
function listOf(
  text: string,
  pattern: RegExp,
  verb: string,
  { settings }: Scope,
): { readonly setting: Setting | undefined; readonly said: readonly string[] } {
  const [, name = '', rest = ''] = pattern.exec(text) ?? [];
  const setting = settings.names.find(name);
  const lead = `${normal(name)} ${verb} `;
  const said = rest.split(new RegExp(OR, 'gi')).map(part => {
    const words = normal(part);
    const value = words.startsWith(lead) ? words.slice(lead.length) : words;
    return findValue(setting?.values ?? [], value);
  });
  const known = said.filter(value => value !== undefined);
  return { setting: known.length === said.length ? setting : undefined, said: [...new Set(known)] };
}

/** `Bell is small or middle` says that it is not the third value. */
function exceptionWays(text: string, scope: Scope): readonly string[] {
  const { setting, said } = listOf(text, /^(.+?)\s+is\s+(?!not\s)(.+)$/i, 'is', scope);
  if (setting === undefined) return [];
  const others = setting.values.filter(value => !said.includes(value));
  if (others.length === 0) return [`Leave \`When\` empty: these are all values of “${setting.name}”.`];
  return others.length === 1 ? [`Write \`${setting.name} is not ${others[0]}\`.`] : [];
}
