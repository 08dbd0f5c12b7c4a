/** Remembers results of operations on two numbers; a newer one may take the place of an older. */
export interface Memo {
  /** −1 where it is not known (any more). */
  get(operation: number, one: number, other: number): number;
  /** Gives the result back. */
  set(operation: number, one: number, other: number, result: number): number;
}

const SMALLEST = 1 << 9;
const LARGEST = 1 << 19;
/** Operation, two operands, result; no operation is 0. */
const NUMBERS = 4;

export function createMemo(): Memo {
  let size = SMALLEST;
  let entries = new Int32Array(size * NUMBERS);
  let written = 0;
  const slotOf = (operation: number, one: number, other: number): number => {
    const mixed =
      Math.imul(Math.imul(operation, 0x85ebca6b) ^ one, 0x9e3779b1) ^ Math.imul(other, 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 15)) & (size - 1)) * NUMBERS;
  };
  /** What was remembered is lost: it is worked out again where it is still needed. */
  const grow = (): void => {
    size *= 4;
    entries = new Int32Array(size * NUMBERS);
    written = 0;
  };
  return {
    get: (operation, one, other) => {
      const slot = slotOf(operation, one, other);
      const isKnown = entries[slot] === operation && entries[slot + 1] === one && entries[slot + 2] === other;
      return isKnown ? (entries[slot + 3] ?? -1) : -1;
    },
    set: (operation, one, other, result) => {
      if (++written > size && size < LARGEST) grow();
      const slot = slotOf(operation, one, other);
      entries[slot] = operation;
      entries[slot + 1] = one;
      entries[slot + 2] = other;
      entries[slot + 3] = result;
      return result;
    },
  };
}
