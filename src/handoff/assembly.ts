import { hex, type Item } from './routine/code.js';

/** Printable ASCII on one line: what may stand in a comment of an assembler's or a C file. */
export function oneLine(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .replace(/[’‘]/g, "'")
    .replace(/[“”]/g, '"')
    .replace(/[–—]/g, '-')
    .replace(/[^\x20-\x7e]+/g, ' ')
    .replace(/\\+$/g, '')
    .replace(/\?\?|\*\/|\/\*/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

const COMMENT_WIDTH = 100;

/** Comment lines, wrapped. */
export function comments(...texts: readonly string[]): readonly string[] {
  return texts.flatMap(text => {
    const lines: string[] = [];
    let line = ';';
    for (const word of oneLine(text).split(' ')) {
      if (line.length + 1 + word.length > COMMENT_WIDTH && line !== ';') {
        lines.push(line);
        line = ';';
      }
      line += ` ${word}`;
    }
    return [...lines, line.trimEnd()];
  });
}

const OPERAND_COLUMN = 8;
const COMMENT_COLUMN = 48;

/** `NAME = $xx`, with what it is behind it. */
export function equate(name: string, text: string, comment = ''): string {
  const line = `${name} = ${text}`;
  return comment === '' ? line : `${line.padEnd(COMMENT_COLUMN - 1)} ; ${oneLine(comment)}`;
}

export function numberText(number: number): string {
  return number > 0xff ? `$${number.toString(16).toUpperCase().padStart(4, '0')}` : hex(number);
}

/** Items as lines of ca65 source. */
export function linesOf(items: readonly Item[]): readonly string[] {
  return items.map(item => {
    switch (item.kind) {
      case 'label':
        return `${item.name}:`;
      case 'remark':
        return `        ; ${oneLine(item.text)}`;
      case 'instruction': {
        const operand = item.operand === '' ? '' : ` ${item.operand}`;
        const line = `${' '.repeat(OPERAND_COLUMN)}${item.mnemonic}${operand}`;
        return item.comment === '' ? line : `${line.padEnd(COMMENT_COLUMN - 1)} ; ${oneLine(item.comment)}`;
      }
      default:
        return item satisfies never;
    }
  });
}
