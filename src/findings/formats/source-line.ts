import type { Place, SourceFile } from '../place.js';
import { expandTabs, type WidthOf } from './terminal-text.js';

/** A line of a file and where in it the words stand. */
export interface SourceLine {
  /** From 1. */
  readonly line: number;
  /** Cut where the line is very long. */
  readonly text: string;
  /** Columns before the first marked one, and marked ones: at least one. */
  readonly indent: number;
  readonly marked: number;
}

/** The share of the room that a long line has for what stands before the words. */
const SHARE_BEFORE = 0.4;

/** The part of a line that is shown, as it stands in the file. */
export interface Cut {
  readonly before: string;
  readonly words: string;
  readonly after: string;
  readonly isCutBefore: boolean;
  readonly isCutAfter: boolean;
}

/**
 * The first line of the words; null where the file is not among those given.
 *
 * @param room UTF-16 code units of the line that are shown at most
 */
export function cutLine(files: readonly SourceFile[], { file, range }: Place, room: number): Cut | null {
  const text = files.find(({ path }) => path === file)?.text;
  if (text === undefined || range.start.offset > text.length) return null;
  const from = range.start.offset - (range.start.column - 1);
  const lineEnd = endOfLine(text, range.start.offset);
  const isShort = lineEnd - from <= room;
  const before = Math.floor(room * SHARE_BEFORE);
  const start = isShort ? from : snap(text, Math.max(from, range.start.offset - before));
  const end = snap(text, Math.min(lineEnd, start + room));
  const wordsEnd = Math.min(range.end.offset, end);
  return {
    before: text.slice(start, range.start.offset),
    words: text.slice(range.start.offset, wordsEnd),
    after: text.slice(wordsEnd, end),
    isCutBefore: start > from,
    isCutAfter: end < lineEnd,
  };
}

/** The cut as it is printed. */
export function layOutLine(cut: Cut, line: number, widthOf: WidthOf): SourceLine {
  const before = expandTabs(cut.isCutBefore ? `…${cut.before}` : cut.before, 0, widthOf);
  const indent = widthOf(before);
  const words = expandTabs(cut.words, indent, widthOf);
  const marked = widthOf(words);
  const after = expandTabs(cut.after, indent + marked, widthOf);
  return {
    line,
    text: `${before}${words}${after}${cut.isCutAfter ? '…' : ''}`.trimEnd(),
    indent,
    marked: Math.max(1, marked),
  };
}

function endOfLine(text: string, from: number): number {
  for (let at = from; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || code === 13) return at;
  }
  return text.length;
}

/** Not between the two halves of a character outside the basic plane. */
function snap(text: string, at: number): number {
  const code = text.charCodeAt(at);
  return code >= 0xdc00 && code <= 0xdfff ? at - 1 : at;
}
