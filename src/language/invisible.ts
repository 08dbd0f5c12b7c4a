/** Characters that take no room: nobody sees them, but a word with one in it is another word. */
const INVISIBLE = /\p{Cf}|\u034f|\u115f|\u1160|\u3164|\uffa0/u;

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

/** Names the first invisible character of a text; null where it has none. */
export function invisibleIn(text: string): string | null {
  const point = INVISIBLE.exec(text)?.[0].codePointAt(0);
  if (point === undefined) return null;
  const code = `U+${point.toString(16).toUpperCase().padStart(4, '0')}`;
  return `${CALLED.get(point) ?? 'an invisible character'} (${code})`;
}

export const withoutInvisible = (text: string): string => text.replaceAll(new RegExp(INVISIBLE, 'gu'), '');
