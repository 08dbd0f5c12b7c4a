import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Place } from '../../src/findings/place.js';
import { EVERYTHING, goodSchemes, readGood, wordsAt } from './fixture.js';
import { placedWords } from './placed-words.js';

/** Words as they are compared: the key of the row of stars and hashes has two names, apostrophes two forms. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .replaceAll('’', "'")
    .replaceAll('key #', 'key hash')
    .replace(/[*`]/g, '');

function checkPlaces(text: string): number {
  const values = placedWords(readGood(text));
  for (const { what, at, words } of values) {
    const found = wordsAt(text, at);
    expect(found, what).toBe(found.trim());
    const isWhole = !['set by', 'instead', 'gesture', 'gesture of a fallback', 'chord'].includes(what);
    if (isWhole) expect(plain(found), what).toBe(plain(words));
    else expect(plain(found), what).toContain(plain(words));
    expectPoints(text, at);
  }
  return values.length;
}

/** Line and column, counted anew from the text. */
function expectPoints(text: string, { range }: Place): void {
  for (const { offset, line, column } of [range.start, range.end]) {
    const before = text
      .slice(0, offset)
      .replace(/^\uFEFF/, '')
      .split(/\r\n|\n|\r/);
    expect([line, column]).toEqual([before.length, (before.at(-1)?.length ?? 0) + 1]);
  }
}

describe('the place of a value', () => {
  it.each(goodSchemes())('is that of its own words in $path', ({ text }) => {
    expect(checkPlaces(text)).toBeGreaterThan(60);
  });

  it('is that of its own words wherever they stand and however they are marked', () => {
    const prose = fc.constantFrom(
      'Some *prose*.',
      'One\ntwo.',
      '> quoted',
      '<!-- note -->',
      '```\n## code\n```',
    );
    const marks = fc.constantFrom(['', ''], ['`', '`'], ['*', '*'], ['**', '**'], ['  ', '   ']);
    const ends = fc.constantFrom('\n', '\r\n', '\r');
    fc.assert(
      fc.property(
        fc.array(prose, { maxLength: 3 }),
        marks,
        ends,
        fc.boolean(),
        (paragraphs, [open = '', close = ''], end, mark) => {
          const text = EVERYTHING.replace('## Game', `${paragraphs.join('\n\n')}\n\n## Game`)
            .replaceAll(
              /\| (Ring|Swing|Wind|Yard|One|button|press|Peal: next|Wind is calm)(?= +\|)/g,
              `| ${open}$1${close}`,
            )
            .replaceAll('\n', end);
          checkPlaces(mark ? `\uFEFF${text}` : text);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('stands in the file that the words are in', () => {
    const [first = '', ...others] = EVERYTHING.split(/(?=^## (?:Actions|Timing))/m);
    const texts = [first, ...others];
    expect(texts).toHaveLength(3);
    const scheme = readGood(...texts);
    expect(scheme.files).toEqual(['1.md', '2.md', '3.md']);
    for (const { at, words, what } of placedWords(scheme)) {
      const text = texts[scheme.files.indexOf(at.file)] ?? '';
      if (what === 'action' || what === 'time') expect(plain(wordsAt(text, at))).toBe(plain(words));
    }
    expect(scheme.actions[0]?.at.file).toBe('2.md');
    expect(scheme.times[0]?.at.range.start.line).toBe(5);
  });
});
