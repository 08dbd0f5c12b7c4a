import { readFileSync } from 'node:fs';
import { createRangeTest, type FontFile, listFontFiles } from './font-files.js';

export { fontStack } from './font-files.js';

const faces = new Map<string, string>();

/**
 * The `@font-face` rules, with the fonts inside, that a document needs: for plain Latin always, for other
 * characters where `text` (the document's words, its HTML will do) has some. About 110 kB for a Latin text.
 */
export function fontFaceCss(text = ''): string {
  const codePoints = new Set([...text].map(character => character.codePointAt(0) ?? 0));
  const needed = listFontFiles().filter(file => isPlainLatin(file) || coversAny(file, codePoints));
  return [...needed.map(writeFace), ':root{font-synthesis:none}'].join('\n');
}

function isPlainLatin(file: FontFile): boolean {
  return file.unicodeRange.startsWith('U+0000-00FF');
}

function coversAny(file: FontFile, codePoints: ReadonlySet<number>): boolean {
  const covers = createRangeTest(file.unicodeRange);
  // Plain ASCII is always there; some symbol subsets claim its control characters.
  return [...codePoints].some(codePoint => codePoint > 0xff && covers(codePoint));
}

function writeFace(file: FontFile): string {
  const known = faces.get(file.path);
  if (known !== undefined) return known;
  const data = readFileSync(file.path).toString('base64');
  const face = [
    '@font-face{',
    `font-family:'${file.cssFamily}';`,
    `font-weight:${file.weight};font-style:${file.isItalic ? 'italic' : 'normal'};`,
    `unicode-range:${file.unicodeRange};`,
    `src:url(data:font/woff2;base64,${data}) format('woff2')}`,
  ].join('');
  faces.set(file.path, face);
  return face;
}
