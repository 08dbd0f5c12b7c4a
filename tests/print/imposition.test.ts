import { expect, test } from 'vitest';
import { imposeSaddleStitch } from '../../src/print/imposition.js';

const pageCounts = Array.from({ length: 40 }, (_, index) => index + 1);

/**
 * What a reader finds who pages through the folded sheets: inwards, each sheet shows the right half of its front,
 * then, the leaf turned, the left half of its back; outwards again, the right half of the back, then the left
 * half of the front. (Common practice of bookbinding, no source; independent of the formula in the code.)
 */
function pageThrough(pageCount: number): readonly (number | undefined)[] {
  const sheets = imposeSaddleStitch(pageCount);
  const inwards = sheets.flatMap(({ front, back }) => [front[1], back[0]]);
  const outwards = sheets.toReversed().flatMap(({ front, back }) => [back[1], front[0]]);
  return [...inwards, ...outwards];
}

test.each(pageCounts)('a booklet of %d pages reads in order and ends in at most three blanks', pageCount => {
  const read = pageThrough(pageCount);
  expect(read.length % 4).toBe(0);
  expect(read.slice(0, pageCount)).toEqual(Array.from({ length: pageCount }, (_, index) => index + 1));
  expect(read.slice(pageCount).every(page => page === undefined)).toBe(true);
  expect(read.length - pageCount).toBeLessThan(4);
});

test('creep grows by one caliper a sheet, from none on the outermost', () => {
  expect(imposeSaddleStitch(16, 0.2).map(sheet => Math.round(sheet.creepMm * 10))).toEqual([0, 2, 4, 6]);
});

test('no pages make no sheets', () => {
  expect(imposeSaddleStitch(0)).toEqual([]);
});
