import { measureText } from '../page/measure.js';
import { ptToMm } from './drawing.js';

/** How a piece of text is set. */
export interface Setting {
  /** pt */
  readonly sizePt: number;
  readonly bold?: boolean;
}

/** Widths grow with the size, so each text is measured once; the store is emptied before it grows large. */
const measured = new Map<string, number>();
const MOST_MEASURED = 20_000;

/** Width of a line in mm, as it comes out in print. */
export function textWidth(text: string, { sizePt, bold }: Setting): number {
  const key = bold ? `b${text}` : `r${text}`;
  let width = measured.get(key);
  if (width === undefined) {
    if (measured.size >= MOST_MEASURED) measured.clear();
    width = measureText(text, { sizePt: 1, weight: bold ? 700 : 400 });
    measured.set(key, width);
  }
  return ptToMm(width * sizePt);
}

/**
 * The lines of a text in a column: broken between words where it can be, within a word where one is wider than
 * the column. At least one line.
 *
 * @param width mm, above 0
 */
export function breakLines(text: string, width: number, setting: Setting): readonly string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of text.split(/[ \n\t]+/).filter(Boolean)) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (textWidth(longer, setting) <= width) {
      current = longer;
      continue;
    }
    if (current !== '') lines.push(current);
    const pieces = breakWord(word, width, setting);
    lines.push(...pieces.slice(0, -1));
    current = pieces.at(-1) ?? '';
  }
  return current === '' && lines.length > 0 ? lines : [...lines, current];
}

function breakWord(word: string, width: number, setting: Setting): readonly string[] {
  if (textWidth(word, setting) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && textWidth(piece + character, setting) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return [...pieces, piece];
}

/** The text shortened with an ellipsis until it fits. */
export function shorten(text: string, width: number, setting: Setting): string {
  if (textWidth(text, setting) <= width) return text;
  let short = [...text];
  while (short.length > 1 && textWidth(`${short.join('').trimEnd()}…`, setting) > width)
    short = short.slice(0, -1);
  return `${short.join('').trimEnd()}…`;
}
