import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createMemo } from '../../src/checks/coverage/memo.js';

const LARGEST = 1 << 19;
const small = fc.integer({ min: 0, max: 3 });

describe('the memo of operations on sets', () => {
  test('knows what was just put in, and gives no other result for what it forgot', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.integer({ min: 1, max: 4 }), small, small, fc.nat())), entries => {
        const memo = createMemo();
        const all = new Map<string, number>();
        for (const [operation, one, other, result] of entries) {
          const before = memo.get(operation, one, other);
          expect([-1, all.get(`${operation} ${one} ${other}`) ?? -1]).toContain(before);
          expect(memo.set(operation, one, other, result)).toBe(result);
          expect(memo.get(operation, one, other)).toBe(result);
          all.set(`${operation} ${one} ${other}`, result);
        }
      }),
    );
  });

  test('takes no operation or operand for another', () => {
    const memo = createMemo();
    for (let number = 0; number < 400; number++) memo.set(1, number, number + 1, number);
    for (let number = 0; number < 400; number++) {
      expect(memo.get(2, number, number + 1)).toBe(-1);
      expect(memo.get(1, number + 1, number + 1)).toBe(-1);
      expect(memo.get(1, number, number + 2)).toBe(-1);
    }
  });

  test.each([4, 300, 1000, 100_000, 160_000])('still knows most of the last half of %i', count => {
    expect(knownOfLast(count, count / 2)).toBeGreaterThan(count / 4);
  });

  test('at its largest loses the older one by one, not all together', () => {
    // It has grown as often as it may after a third of LARGEST; one that grew on would just have forgotten all.
    const count = Math.floor(LARGEST * 1.335);
    expect(knownOfLast(count, LARGEST / 2)).toBeGreaterThan(LARGEST / 4);
  });
});

/** How many of the last so many results are known, after so many have been put in. */
function knownOfLast(count: number, last: number): number {
  const memo = createMemo();
  for (let number = 0; number < count; number++) memo.set(1, number, number * 7, number);
  let known = 0;
  for (let number = count - last; number < count; number++)
    if (memo.get(1, number, number * 7) === number) known++;
  return known;
}
