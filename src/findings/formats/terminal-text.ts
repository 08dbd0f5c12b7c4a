/** Characters that would act on a terminal instead of being shown: controls, and marks that turn the direction. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not reach a terminal.
const ACTIVE = /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g;
const CONTROL_PICTURES = 0x2400;
const DELETE_PICTURE = '\u2421';

/** The text on one line, each character that would act on a terminal shown as a sign. */
export function visibleText(text: string): string {
  return text.replace(ACTIVE, character => {
    const code = character.charCodeAt(0);
    if (code < 0x20) return String.fromCharCode(CONTROL_PICTURES + code);
    return code === 0x7f ? DELETE_PICTURE : '\ufffd';
  });
}

/** Columns that a text takes on a terminal. */
export type WidthOf = (text: string) => number;

/** The columns of wide, combining and plain characters; the library is loaded only for texts that need it. */
export async function createWidthOf(texts: readonly string[]): Promise<WidthOf> {
  if (texts.every(text => /^[\x20-\x7e\t]*$/.test(text))) return text => text.length;
  const { default: stringWidth } = await import('string-width');
  return text => stringWidth(text, { countAnsiEscapeCodes: true });
}

const TAB_STOP = 4;

/** Tabs as spaces up to the next stop, counted from `column` (from 0). */
export function expandTabs(text: string, column: number, widthOf: WidthOf): string {
  let expanded = '';
  for (const [index, piece] of text.split('\t').entries()) {
    if (index > 0) expanded += ' '.repeat(TAB_STOP - ((column + widthOf(expanded)) % TAB_STOP));
    expanded += visibleText(piece);
  }
  return expanded;
}

/** Lines of at most `width` columns, broken at spaces; a longer word has a line of its own. */
export function wrapText(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return line === '' ? lines : [...lines, line];
}
