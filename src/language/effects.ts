import { badValue, type Spot } from './faults.js';
import type { Effect, Setting } from './model.js';
import { resolveName } from './names.js';
import type { Scope } from './scope.js';
import { normal, tidy } from './spelling.js';
import { placeOf, sliceWords, splitWords, type Words } from './words.js';

const GO_TO = /^go\s+to(?:\s+|$)/i;

const STEPS: ReadonlyMap<string, 1 | -1> = new Map([
  ['next', 1],
  ['previous', -1],
]);

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
  const leading = GO_TO.exec(part.text)?.[0].length ?? 0;
  if (leading > 0) {
    const name = sliceWords(part, leading);
    if (name.text === '') return unreadable(part, spot);
    const mode = resolveName(name, scope.modes, spot, 'Write a section `## Mode: NAME` for it.');
    return mode === null ? null : { kind: 'go to', mode, at: placeOf(part) };
  }
  const colon = part.text.indexOf(':');
  const name = sliceWords(part, 0, Math.max(colon, 0));
  const value = sliceWords(part, colon + 1);
  if (name.text === '' || value.text === '') return unreadable(part.text === '' ? whole : part, spot);
  const setting = resolveName(name, scope.settings.names, spot, 'Define it in `## Settings`.');
  if (setting === null || isOwnedBySwitch(setting, part, spot)) return null;
  const by = STEPS.get(normal(value.text));
  if (by !== undefined) return { kind: 'step', setting, by, at: placeOf(part) };
  const named = scope.settings.readValue(setting, value, 'Then', spot);
  return named === null ? null : { kind: 'set', setting, value: named, at: placeOf(part) };
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
