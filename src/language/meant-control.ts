import { ALSO_WRITTEN, type ControlWords, controlText } from './control-words.js';
import { type Spot, unknownName } from './faults.js';
import { listWords, normal, rejoined, tidy } from './spelling.js';
import type { Words } from './words.js';

/** A finding for words that name no control, with the one that was probably meant. */
export function unknownControl(words: Words, controls: ControlWords, spot: Spot): void {
  const { text } = words;
  const otherWay = severalKeys(text) ?? seatOfPaddle(text, controls);
  if (otherWay !== null) {
    unknownName(spot, words, 'control', [], otherWay);
    return;
  }
  const joined = /[,;/&]/.test(text) ? ' Alternatives are joined by `or`, chords by `+`.' : '';
  const meant = meantControl(text, controls) ?? meantAlternatives(text, controls);
  unknownName(spot, words, 'control', controls.list, `Name it in \`## Controllers\`.${joined}`, meant);
}

/** `key 1-9`: one of them would not be what is meant. */
const severalKeys = (text: string): string | null =>
  /\d\s*(?:-|–|—|\.\.+|…|to|through)\s*\d/i.test(text)
    ? 'Name each control by itself; alternatives are joined by `or`: `key 1 or key 2 or key 3`.'
    : null;

/** `paddle A`: the letter belongs to the player. */
function seatOfPaddle(text: string, { find }: ControlWords): string | null {
  const [letter] = /\b[ab]\b/i.exec(text) ?? [];
  if (letter === undefined) return null;
  const meaning = find(tidy(text.replace(/\s*\b[ab]\b\s*/i, ' ')));
  if (meaning?.kind !== 'control' || !/^paddle\b/.test(meaning.name)) return null;
  const seats = (meaning.port === null ? ['left', 'right'] : [meaning.port]).map(
    port => `${port} ${letter.toUpperCase()}`,
  );
  const outright = listWords(seats.map(seat => `${seat} ${meaning.name}`));
  return `The letter belongs to the seat: write ${outright}, or “${meaning.name}” with ${listWords(seats)} in \`Who\`.`;
}

/** Controls joined by other words than `or` and `+`: `stick left, stick right`, `stick up/left`, `stick up and button`. */
function meantAlternatives(text: string, { find }: ControlWords): string | null {
  const spaced = text.replace(DIAGONAL, '$1 & $2');
  const first = /^[^,;/&+|]*/.exec(spaced)?.[0] ?? '';
  const lead = first.trim().replace(/\S+$/, '');
  const nameOf = (part: string): string | undefined => {
    const meaning = find(part) ?? find(`${lead === '' ? 'stick ' : lead}${part}`);
    return meaning === null ? undefined : controlText(meaning);
  };
  return rejoined(spaced, nameOf, /&|\sand\s/i.test(spaced) ? ' + ' : ' or ');
}

/** `up-left` */
const DIAGONAL = /\b(up|down)-(left|right)\b/i;

/** The control that is called by words of daily use: `fire button`, `joystick up`, `reset button`. */
function meantControl(text: string, { find }: ControlWords): string | null {
  for (const [pattern, words] of DAILY_WORDS) {
    const said = normal(text).replace(pattern, words);
    const meaning = find(said);
    if (meaning !== null) return ALSO_WRITTEN.has(said) ? said : controlText(meaning);
  }
  return null;
}

const DAILY_WORDS: readonly (readonly [pattern: RegExp, words: string])[] = [
  [/\b(?:fire|trigger|action|red)(?: button| key)?$/, 'button'],
  [/\b(?:joystick|stick) (?:button|key)$/, 'button'],
  [/\bkey([\d*#])$/, 'key $1'],
  [/\s*\/\s*/, '/'],
  [/^(left\/right|up\/down)$/, 'stick $1'],
  [/\bjoy(?:stick|pad)?\b/, 'stick'],
  [/^(up|down|left|right)$/, 'stick $1'],
  [/^((?:left|right) )?(up|down|left|right)$/, '$1stick $2'],
  [/^(?:game |console )?(.+?)(?: switch| button| key| lever)?$/, '$1'],
  [/^(?:the )?(?:colou?r|tv|b&w)(?: type| switch)?$/, 'TV type'],
  [/^(left|right) (?:diff|skill)(?: switch)?$/, '$1 difficulty'],
  [/\b(?:number|digit|keypad) (?:key )?/, 'key '],
  [/\b(?:knob|dial)\b/, 'paddle'],
];
