import type { Place, SourceFile } from '../../findings/place.js';

/** Lines of a source file with the words that a finding points at. */
export interface Excerpt {
  /** `harbour.md, line 12`. */
  readonly where: string;
  readonly lines: readonly ExcerptLine[];
  /** Lines of the place beyond those shown. */
  readonly more: number;
}

/**
 * One line: `marked` is to be underlined. A long line is cut around it, with an ellipsis where it was cut; long
 * runs of spaces are shortened.
 */
export interface ExcerptLine {
  /** From 1. */
  readonly number: number;
  readonly before: string;
  readonly marked: string;
  readonly after: string;
}

const MOST_LINES = 4;
/** Characters kept before, of and after the marked words. */
const CONTEXT = 90;
const MOST_MARKED = 160;

/** The excerpt of a place; null where its file is not among `files`. */
export function viewExcerpt(at: Place, files: readonly SourceFile[]): Excerpt | null {
  const file = files.find(({ path }) => path === at.file);
  if (file === undefined) return null;
  const { start, end } = at.range;
  const lines = takeLines(file.text, start.offset - (start.column - 1), end.line - start.line + 1);
  const shown = lines.map((text, index) =>
    cutLine(start.line + index, text, {
      from: index === 0 ? start.column - 1 : 0,
      to: start.line + index === end.line ? end.column - 1 : text.length,
    }),
  );
  return {
    where: placeText(at),
    lines: shown,
    more: Math.max(0, end.line - start.line + 1 - MOST_LINES),
  };
}

/** `harbour.md, line 12`. */
export function placeText({ file, range }: Place): string {
  return `${file}, line ${range.start.line}`;
}

/** @param offset of the first line's first character */
function takeLines(text: string, offset: number, wanted: number): readonly string[] {
  const lines: string[] = [];
  let from = Math.max(0, offset);
  while (lines.length < Math.min(wanted, MOST_LINES) && from <= text.length) {
    const found = /\r\n|\n|\r/g;
    found.lastIndex = from;
    const end = found.exec(text);
    lines.push(text.slice(from, end?.index ?? text.length));
    if (end === null) break;
    from = found.lastIndex;
  }
  return lines;
}

/** The padding of a table's cells, shortened: it tells nothing and would break the line. */
const closeUp = (text: string): string => text.replace(/ {3,}/g, '  ');

function cutLine(
  number: number,
  text: string,
  { from, to }: { readonly from: number; readonly to: number },
): ExcerptLine {
  const before = closeUp(text.slice(0, from));
  const marked = text.slice(from, to);
  const after = closeUp(text.slice(to)).trimEnd();
  return {
    number,
    before: before.length > CONTEXT ? `…${before.slice(-CONTEXT)}` : before,
    marked: marked.length > MOST_MARKED ? `${marked.slice(0, MOST_MARKED)}…` : marked,
    after: after.length > CONTEXT ? `${after.slice(0, CONTEXT)}…` : after,
  };
}
