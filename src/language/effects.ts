import { badValue, type Spot } from './faults.js';
import type { Effect, Setting } from './model.js';
import { resolveName } from './names.js';
import type { Scope } from './scope.js';
import { nearest, normal, tidy } from './spelling.js';
import { chooseValue, findValue } from './values.js';
import { placeOf, sliceWords, splitWords, type Words } from './words.js';

const GO_TO = /^go\s+to(?:\s+|$)/i;

const STEPS: ReadonlyMap<string, 1 | -1> = new Map([
  ['next', 1],
  ['previous', -1],
]);

/** What people write for a step. */
const MEANT_STEPS: ReadonlyMap<string, string> = new Map([
  ...['+1', '+', '++', 'up', 'plus 1', 'forward', 'step'].map(word => [word, 'next'] as const),
  ...['-1', '−1', '–1', '-', '--', 'down', 'minus 1', 'back', 'prev', 'prior', 'last'].map(
    word => [word, 'previous'] as const,
  ),
]);

/** These can mean a value as well. */
const AMBIGUOUS: ReadonlySet<string> = new Set(['first', 'last', 'back', 'forward']);

/** The `Then` column: `go to MODE`, `SETTING: VALUE|next|previous`, joined by `;`; null where unreadable. */
export function readEffects(words: Words, scope: Scope, spot: Spot): readonly Effect[] | null {
  const read = splitWords(words, /;/g).map(part => readEffect(part, words, scope, spot));
  const effects = read.filter(effect => effect !== null);
  const leaving = effects.filter(effect => effect.kind === 'go to');
  for (const second of leaving.slice(1))
    badValue(spot, second.at, 'Then', 'the game can’t go to two modes at once', ['Take one of the two out.']);
  return effects.length === read.length ? effects : null;
}

function readEffect(part: Words, whole: Words, scope: Scope, spot: Spot): Effect | null {
  if (part.text === '') {
    badValue(spot, whole, 'Then', `an effect is missing in “${tidy(whole.text)}”`, [
      'Take the extra `;` out.',
    ]);
    return null;
  }
  const colon = part.text.indexOf(':');
  const name = sliceWords(part, 0, Math.max(colon, 0));
  const leading = GO_TO.exec(part.text)?.[0].length ?? 0;
  if (leading > 0 && (name.text === '' || scope.settings.names.find(name.text) === undefined)) {
    const leadsTo = sliceWords(part, leading);
    if (leadsTo.text === '') return unreadable(part, spot);
    const mode = resolveName(leadsTo, scope.modes, spot, 'Write a section `## Mode: NAME` for it.');
    return mode === null ? null : { kind: 'go to', mode, at: placeOf(part) };
  }
  const value = sliceWords(part, colon + 1);
  if (name.text === '' || value.text === '') return unreadable(part, spot);
  const setting = resolveName(name, scope.settings.names, spot, 'Define it in `## Settings`.');
  if (setting === null || isOwnedBySwitch(setting, part, spot)) return null;
  const by = STEPS.get(normal(value.text));
  if (by !== undefined) return { kind: 'step', setting, by, at: placeOf(part) };
  const meant = meantStep(value, setting, scope);
  if (meant !== null) {
    const problem = `“${tidy(value.text)}” is not a value of “${setting.name}”`;
    badValue(spot, value, 'Then', problem, [
      `Write “${meant}”.`,
      ...(AMBIGUOUS.has(normal(value.text)) ? [chooseValue(setting.values)] : []),
    ]);
    return null;
  }
  const named = scope.settings.readValue(setting, value, 'Then', spot);
  return named === null ? null : { kind: 'set', setting, value: named, at: placeOf(part) };
}

function meantStep({ text }: Words, setting: Setting, { settings }: Scope): string | null {
  if (settings.isUnclear(setting) || findValue(setting.values, text) !== undefined) return null;
  if (normal(text) === 'first') return setting.values[0] ?? null;
  const near = nearest(text, [...setting.values, ...STEPS.keys()]);
  return MEANT_STEPS.get(normal(text)) ?? (near !== null && STEPS.has(near) ? near : null);
}

function isOwnedBySwitch({ name, setBy }: Setting, part: Words, spot: Spot): boolean {
  if (setBy.kind === 'game') return false;
  badValue(spot, part, 'Then', `“${name}” is set by ${setBy.name}, so the game can’t change it`, [
    `Let the game set it: write \`game\` in its column \`Set by\`.`,
    'Take this effect out.',
  ]);
  return true;
}

function unreadable(words: Words, spot: Spot): null {
  badValue(spot, words, 'Then', `“${tidy(words.text)}” is not something the game can do`, [
    'Write `go to MODE`, `SETTING: VALUE`, `SETTING: next` or `SETTING: previous`, joined by `;`.',
  ]);
  return null;
}
