import transliterate from '@sindresorhus/transliterate';

/**
 * A name as a part of a programmer's symbol: capitals, digits and `_` only, never empty. Letters with marks and
 * of other alphabets are transliterated; a character that has no transliteration becomes `U` and its code point.
 */
export function symbolPart(name: string): string {
  const bare = name.replace(/['’]/g, '');
  const plain = isAscii(bare) ? bare : [...transliterate(bare)].map(asciiOf).join('');
  const part = plain
    .toUpperCase()
    .replace(/[^A-Z0-9]+/g, '_')
    .replace(/^_+|_+$/g, '');
  return part === '' ? [...name].map(codeOf).join('_') : part;
}

/** The parts joined: `LH_HARBOUR_STEER_LEFT`. Never begins with a digit. */
export function symbolOf(...names: readonly string[]): string {
  const symbol = names.map(symbolPart).join('_');
  return /^[0-9]/.test(symbol) ? `_${symbol}` : symbol;
}

const isAscii = (text: string): boolean => /^[\x20-\x7e]*$/.test(text);

function asciiOf(character: string): string {
  if (character.charCodeAt(0) < 0x80) return character;
  return /[\p{Letter}\p{Number}]/u.test(character) ? `_${codeOf(character)}_` : ' ';
}

function codeOf(character: string): string {
  return `U${(character.codePointAt(0) ?? 0).toString(16).toUpperCase()}`;
}
