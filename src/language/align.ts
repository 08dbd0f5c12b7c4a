import { decodeString } from 'micromark-util-decode-string';

/** For each character of a text, where its source begins and ends (exclusive), counted from the piece's start. */
export interface TextMap {
  readonly starts: readonly number[];
  readonly ends: readonly number[];
}

export type SourceKind = 'text' | 'code' | 'code in a table';

/** CommonMark 0.31 [2.4, 2.5]: a backslash before ASCII punctuation, or a character reference. */
const ESCAPE = /\\[!-/:-@[-`{-~]|&(?:#(?:\d{1,7}|x[\da-f]{1,6})|[\da-z]{1,31});/iy;

/**
 * Finds each character of a text in the Markdown it was read from, left to right. Source that makes no text
 * (fences of code, indents of a continued line) is passed over.
 *
 *     source  a \| b &amp; c
 *     text    a  | b     & c
 *
 * @param start where the text can begin at the earliest, in the source
 */
export function alignText(source: string, text: string, kind: SourceKind, start: number): TextMap {
  const starts: number[] = [];
  const ends: number[] = [];
  let at = start;
  while (starts.length < text.length && at < source.length) {
    const index = starts.length;
    const mark = escapeAt(source, at, kind);
    if (mark !== null && text.startsWith(mark.text, index)) {
      for (let unit = 0; unit < mark.text.length; unit++) {
        starts.push(at);
        ends.push(at + mark.length);
      }
      at += mark.length;
    } else {
      if (isSame(source[at], text[index])) {
        starts.push(at);
        ends.push(at + 1);
      }
      at += 1;
    }
  }
  while (starts.length < text.length) {
    starts.push(source.length);
    ends.push(source.length);
  }
  return { starts, ends };
}

function escapeAt(source: string, at: number, kind: SourceKind): { text: string; length: number } | null {
  const character = source[at];
  if (character !== '\\' && character !== '&') return null;
  if (kind === 'code') return null;
  if (kind === 'code in a table') return source.startsWith('\\|', at) ? { text: '|', length: 2 } : null;
  ESCAPE.lastIndex = at;
  const match = ESCAPE.exec(source)?.[0];
  return match === undefined ? null : { text: decodeString(match), length: match.length };
}

/** Code turns line ends into spaces, and Markdown NUL into the replacement character. */
function isSame(source: string | undefined, text: string | undefined): boolean {
  if (source === text) return true;
  if (text === ' ' || text === '\n') return source === '\n' || source === '\r';
  return text === '\uFFFD' && source === '\0';
}
