const JOINING = [
  'Arabic Syriac Nko Mongolian Devanagari Bengali Gurmukhi Gujarati Oriya Tamil Telugu Kannada Malayalam',
  'Sinhala Khmer Myanmar Tibetan',
]
  .join(' ')
  .split(' ')
  .map(script => `\\p{Script=${script}}`)
  .join('');

/** A joiner or non-joiner between letters of a script that is spelt with them: Persian, Hindi. */
const SPELLING = `(?<=[${JOINING}])(?<=[\\p{L}\\p{M}])[\\u200c\\u200d](?=[${JOINING}])(?=[\\p{L}\\p{M}])`;

/** Characters that take no room: nobody sees them, but a word with one in it is another word. */
const TAKES_NO_ROOM = '[\\p{Cf}\\u034f\\u115f\\u1160\\u3164\\uffa0]';
const INVISIBLE = new RegExp(`(?=${TAKES_NO_ROOM})(?!${SPELLING}).`, 'su');
const EVERY_INVISIBLE = new RegExp(INVISIBLE, 'gsu');
const EVERY_JOINER = new RegExp(SPELLING, 'gu');

const CALLED: ReadonlyMap<number, string> = new Map([
  [0x00ad, 'a soft hyphen'],
  [0x200b, 'a zero-width space'],
  [0x200c, 'a zero-width non-joiner'],
  [0x200d, 'a zero-width joiner'],
  [0x200e, 'a left-to-right mark'],
  [0x200f, 'a right-to-left mark'],
  [0x2060, 'a word joiner'],
  [0xfeff, 'a byte order mark'],
]);

/** Most texts: nothing to look for. */
const PLAIN = /^[ -~]*$/;

/** Names the first invisible character of a text; null where it has none. */
export function invisibleIn(text: string): string | null {
  if (PLAIN.test(text)) return null;
  const point = INVISIBLE.exec(text)?.[0].codePointAt(0);
  if (point === undefined) return null;
  const code = `U+${point.toString(16).toUpperCase().padStart(4, '0')}`;
  return `${CALLED.get(point) ?? 'an invisible character'} (${code})`;
}

export const withoutInvisible = (text: string): string =>
  PLAIN.test(text) ? text : text.replaceAll(EVERY_INVISIBLE, '');

/** Without what belongs to the spelling of a word, though it can't be seen. */
export const withoutJoiners = (text: string): string =>
  PLAIN.test(text) ? text : text.replaceAll(EVERY_JOINER, '');
