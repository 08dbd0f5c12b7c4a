import { describe, expect, test } from 'vitest';
import { viewExcerpt } from '../../../src/documents/report/excerpt.js';
import type { Place } from '../../../src/findings/place.js';

/** The place of `words` in `text`, lines counted by hand. */
function placeOf(text: string, words: string): Place {
  const start = text.indexOf(words);
  const point = (offset: number) => {
    const before = text.slice(0, offset).split(/\r\n|\n|\r/);
    return { line: before.length, column: (before.at(-1) ?? '').length + 1, offset };
  };
  return { file: 'a.md', range: { start: point(start), end: point(start + words.length) } };
}

const excerptOf = (text: string, words: string) =>
  viewExcerpt(placeOf(text, words), [{ path: 'a.md', text }]);

describe('an excerpt', () => {
  const table = '# Reed\n\n| Who | Action |\n| --- | --- |\n| each | Row hard |\n| each | Rest |\n';

  test('is the line, with just the words of the finding marked', () => {
    expect(excerptOf(table, 'Row hard')).toEqual({
      where: 'a.md, line 5',
      lines: [{ number: 5, before: '| each | ', marked: 'Row hard', after: ' |' }],
      more: 0,
    });
  });

  test.each(['\r\n', '\r'])('ends lines at %j too', ending => {
    const text = table.replaceAll('\n', ending);
    expect(excerptOf(text, 'Rest')?.lines).toEqual([
      { number: 6, before: '| each | ', marked: 'Rest', after: ' |' },
    ]);
  });

  test('marks several lines, and counts those it leaves out', () => {
    const text = 'one\ntwo\nthree\nfour\nfive\nsix\n';
    const excerpt = excerptOf(text, 'wo\nthree\nfour\nfive\nsi');
    expect(excerpt?.lines.map(({ before, marked, after }) => [before, marked, after])).toEqual([
      ['t', 'wo', ''],
      ['', 'three', ''],
      ['', 'four', ''],
      ['', 'five', ''],
    ]);
    expect(excerpt?.more).toBe(1);
  });

  test('cuts a line of ten million characters around the words', () => {
    const text = `${'x'.repeat(5_000_000)}HERE${'y'.repeat(5_000_000)}`;
    const [line] = excerptOf(text, 'HERE')?.lines ?? [];
    expect(line?.marked).toBe('HERE');
    expect(line?.before).toBe(`…${'x'.repeat(90)}`);
    expect(line?.after).toBe(`${'y'.repeat(90)}…`);
  });

  test('closes up the padding of cells, never the marked words', () => {
    expect(excerptOf('| a       | b    c     |        ', 'b    c')?.lines).toEqual([
      { number: 1, before: '| a  | ', marked: 'b    c', after: '  |' },
    ]);
  });

  test('is none where the file is not at hand', () => {
    expect(viewExcerpt(placeOf(table, 'Rest'), [])).toBeNull();
  });
});
