import fc from 'fast-check';
import type { TableCell } from 'mdast';
import { describe, expect, it } from 'vitest';
import { parseMarkdown } from '../../src/language/document.js';
import { createSourceText } from '../../src/language/source-text.js';
import { placeOf, readWords, sliceWords, splitWords, type Words } from '../../src/language/words.js';

/** A piece of a cell: its source, and for each character of its text where that stands in the source. */
interface Piece {
  readonly source: string;
  readonly text: string;
  readonly ranges: readonly (readonly [start: number, end: number])[];
}

const plain = (text: string): Piece => ({
  source: text,
  text,
  ranges: [...text].map((_, index) => [index, index + 1] as const),
});

/** One character written as several. */
const written = (source: string, text: string): Piece => ({ source, text, ranges: [[0, source.length]] });

function wrapped(open: string, { source, text, ranges }: Piece, close: string): Piece {
  const shift = open.length;
  return {
    source: open + source + close,
    text,
    ranges: ranges.map(([start, end]) => [start + shift, end + shift] as const),
  };
}

function joined(pieces: readonly Piece[]): Piece {
  let source = '';
  let text = '';
  const ranges: (readonly [number, number])[] = [];
  for (const piece of pieces) {
    for (const [start, end] of piece.ranges) ranges.push([start + source.length, end + source.length]);
    source += piece.source;
    text += piece.text;
  }
  return { source, text, ranges };
}

const word = fc.stringMatching(/^[a-z0-9äß中]{1,5}$/).map(plain);
const escaped = fc.constantFrom('|', '*', '_', '`', '\\', '#', ';').map(mark => written(`\\${mark}`, mark));
const entity = fc
  .constantFrom(['&amp;', '&'], ['&lt;', '<'], ['&#x41;', 'A'], ['&#66;', 'B'], ['&eacute;', 'é'])
  .map(([source = '', text = '']) => written(source, text));
const code = fc
  .array(
    fc.oneof(word, fc.constant(written('\\|', '|')), fc.constant(plain('\\*')), fc.constant(plain('&amp;'))),
    {
      minLength: 1,
      maxLength: 3,
    },
  )
  .chain(pieces =>
    fc
      .constantFrom(['`', '`'], ['``', '``'], ['` ', ' `'], ['`` ', ' ``'])
      .map(([open = '', close = '']) => wrapped(open, joined(pieces), close)),
  );
const marked = fc
  .tuple(
    fc.array(fc.oneof(word, escaped, entity), { minLength: 1, maxLength: 3 }),
    fc.constantFrom('*', '**', '~~'),
    word,
    word,
  )
  .map(([pieces, mark, before, after]) => wrapped(mark, joined([before, ...pieces, after]), mark));

/** Pieces with spaces between, so that marks open and close where they stand. */
const cells = fc
  .array(fc.oneof(word, escaped, entity, code, marked), { minLength: 1, maxLength: 5 })
  .map(pieces => joined(pieces.flatMap((piece, index) => (index === 0 ? [piece] : [plain(' '), piece]))));

function cellOf(source: string): { words: Words; start: number; whole: string } {
  const whole = `| a |  ${source}  | c |\n| - | - | - |\n`;
  const [table] = parseMarkdown(whole);
  const cell = table?.type === 'table' ? table.children[0]?.children[1] : undefined;
  const words = readWords(cell as TableCell, { source: createSourceText('a.md', whole), base: 0 }, true);
  return { words, start: whole.indexOf('|  ') + 3, whole };
}

const offsetsOf = (words: Words): readonly [number, number] => {
  const { start, end } = placeOf(words).range;
  return [start.offset, end.offset];
};

describe('the words of a cell', () => {
  it('know where each of their characters stands in the file', () => {
    fc.assert(
      fc.property(cells, ({ source, text, ranges }) => {
        const { words, start } = cellOf(source);
        expect(words.text).toBe(text);
        for (let from = 0; from < text.length; from++) {
          if (text[from] === ' ') continue;
          for (let to = from + 1; to <= text.length; to++) {
            if (text[to - 1] === ' ') continue;
            const wanted = [start + (ranges[from]?.[0] ?? 0), start + (ranges[to - 1]?.[1] ?? 0)];
            expect(offsetsOf(sliceWords(words, from, to))).toEqual(wanted);
          }
        }
      }),
      { numRuns: 500 },
    );
  });

  it.each([
    ['a web address', 'see www.example.com now', 'now'],
    ['a mail address', 'ask x@example.com now', 'now'],
    ['two mail addresses', 'a@b.co c@d.co now', 'now'],
    ['a picture', '![alt *text*](a.png) now', 'now'],
    ['a link', '[the \\| link](http://example.com "t") now', 'now'],
    ['raw HTML', '<b>so</b> now', 'now'],
  ])('are found after %s', (_, source, last) => {
    const { words, whole } = cellOf(source);
    const [start, end] = offsetsOf(sliceWords(words, words.text.lastIndexOf(last)));
    expect(whole.slice(start, end)).toBe(last);
    expect(start).toBe(whole.lastIndexOf(last));
  });

  it('are split without the white space around the parts', () => {
    const { words, whole } = cellOf('one ,  `two` ,, **three** ');
    const parts = splitWords(words, /,/g);
    expect(parts.map(({ text }) => text)).toEqual(['one', 'two', '', 'three']);
    expect(parts.map(part => whole.slice(...offsetsOf(part)))).toEqual(['one', 'two', '', 'three']);
  });
});
