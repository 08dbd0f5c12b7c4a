/**
 * Cuts a document before its level-2 headings (`## ` at the very start of a line), so that its parts can be
 * parsed one by one with the same result as the whole: such a line ends every paragraph, list, quote and
 * table above it. It does not end fenced code or raw HTML, and definitions of links and footnotes are seen by
 * other parts; where it is not sure the text stays in one piece.
 *
 * @returns the offset at which each part begins, in order; the first is `start`
 */
export function cutParts(text: string, start: number): readonly number[] {
  const offsets = [start];
  if (text.includes(']:')) return offsets;
  let fence: string | null = null;
  for (const match of text.slice(start).matchAll(MARK)) {
    const line = match[0];
    if (fence !== null) {
      if (closes(line, fence)) fence = null;
      continue;
    }
    if (line.startsWith('##')) {
      const offset = start + match.index;
      if (offset > start) offsets.push(offset);
      continue;
    }
    const opened = FENCE.exec(line)?.[1];
    if (opened !== undefined) fence = opened;
    else if (!isWholeComment(line)) return offsets;
  }
  return offsets;
}

/**
 * Lines that decide where to cut: level-2 headings, and all that may be a fence (in a list or quote too: its
 * end would be counted otherwise) or raw HTML at top level.
 */
const MARK =
  /(?<![^\n\r])(?:##(?:[ \t][^\n\r]*|(?=[\n\r]|$))|(?: {0,3}<|[ \t>*+\-\d.)]*(?:`{3}|~{3}))[^\n\r]*)/g;
const FENCE = /^(`{3,}(?=[^`]*$)|~{3,})/;
const CLOSING_FENCE = /^ {0,3}(`{3,}|~{3,})[ \t]*$/;

function closes(line: string, fence: string): boolean {
  const closing = CLOSING_FENCE.exec(line)?.[1];
  return closing !== undefined && closing[0] === fence[0] && closing.length >= fence.length;
}

/** A comment that begins and ends on its line. */
function isWholeComment(line: string): boolean {
  return line.startsWith('<!--') && line.includes('-->', 4);
}
