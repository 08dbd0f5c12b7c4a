/** The nodes of decision diagrams: each different one is kept once, its children in one long list. */
export interface Store {
  child(node: number, value: number): number;
  /** The node of a level with the children that stand in the level's buffer. */
  make(level: number): number;
  readonly buffers: readonly Int32Array[];
}

export function createStore(sizes: readonly number[], most: number): Store {
  let children = new Int32Array(1 << 10);
  /** By node: where its children begin, and the hash of level and children. */
  let starts = new Int32Array(1 << 8);
  let hashes = new Int32Array(1 << 8);
  /** Node numbers by hash; 0 where there is none. At least twice as long as there are nodes. */
  let table = new Int32Array(1 << 9);
  let nodes = 1;
  let used = 0;
  const buffers = sizes.map(size => new Int32Array(size));

  const place = (node: number): void => {
    const mask = table.length - 1;
    let slot = ((hashes[node] ?? 0) >>> LEVEL_BITS) & mask;
    while (table[slot] !== 0) slot = (slot + 1) & mask;
    table[slot] = node;
  };

  const grow = (needed: number): void => {
    if (used + needed > children.length)
      children = widen(children, new Int32Array(children.length * 2 + needed));
    if (nodes < starts.length) return;
    starts = widen(starts, new Int32Array(starts.length * 2));
    hashes = widen(hashes, new Int32Array(hashes.length * 2));
    table = new Int32Array(table.length * 2);
    for (let node = 1; node < nodes; node++) place(node);
  };

  const make = (level: number): number => {
    const buffer = buffers[level] ?? new Int32Array(0);
    const hash = hashOf(level, buffer);
    if (hash === 0) return 0;
    const mask = table.length - 1;
    let slot = (hash >>> LEVEL_BITS) & mask;
    for (let node = table[slot] ?? 0; node !== 0; node = table[slot] ?? 0) {
      if (hashes[node] === hash && isSame(children, starts[node] ?? 0, buffer)) return node;
      slot = (slot + 1) & mask;
    }
    if (used + buffer.length > most) throw new TooManyStatesError(most);
    grow(buffer.length);
    const node = nodes++;
    starts[node] = used;
    hashes[node] = hash;
    children.set(buffer, used);
    used += buffer.length;
    place(node);
    return node;
  };

  return {
    child: (node, value) => children[(starts[node] ?? 0) + value] ?? 0,
    make,
    buffers,
  };
}

const LEVEL_BITS = 8;

/** 0 where no child is anything; the lowest bits tell the level, so that nodes of two levels never look the same. */
function hashOf(level: number, buffer: Int32Array): number {
  let sum = 1;
  let any = 0;
  for (let value = 0; value < buffer.length; value++) {
    const child = buffer[value] ?? 0;
    any |= child;
    sum = Math.imul(sum ^ child, 0x9e3779b1);
    sum ^= sum >>> 15;
  }
  return any === 0 ? 0 : (sum << LEVEL_BITS) | (level + 1);
}

function isSame(children: Int32Array, start: number, buffer: Int32Array): boolean {
  for (let value = 0; value < buffer.length; value++)
    if (children[start + value] !== buffer[value]) return false;
  return true;
}

function widen(from: Int32Array<ArrayBuffer>, into: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  into.set(from);
  return into;
}

/** The states to be explored need more room than is given to them. */
export class TooManyStatesError extends Error {
  override readonly name = 'TooManyStatesError';
  /** Numbers that there is room for. */
  readonly limit: number;

  constructor(limit: number) {
    super(`The states need more room than ${limit} numbers.`);
    this.limit = limit;
  }
}

/** About 70 MB at most; on two shared cores that is less than two seconds of work. */
export const MOST_NUMBERS = 16_000_000;
