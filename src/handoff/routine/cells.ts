import type { Cell } from './code.js';

/**
 * Bytes of RAM by what becomes of them: `fired` is for the game to read, `setting` and `position` for the game
 * to write, `kept` holds lines from mode to mode, `state` from read to read within a mode, `scratch` within a
 * read.
 */
export type CellKind = 'fired' | 'setting' | 'position' | 'kept' | 'state' | 'scratch';

export interface RamCell {
  readonly symbol: string;
  readonly kind: CellKind;
  /** One line for the person who reads the file. */
  readonly holds: string;
}

/** The bytes a unit uses; asking for one makes it known. */
export interface Cells {
  readonly get: (name: string, kind: CellKind, holds: string) => Cell;
  readonly all: () => readonly RamCell[];
}

/**
 * @param shared begins the symbols of bytes that all modes have in common (settings come with a whole symbol)
 * @param own begins those of this unit
 */
export function createCells(shared: string, own: string): Cells {
  const cells = new Map<string, RamCell>();
  return {
    get: (name, kind, holds) => {
      const begin = kind === 'state' || kind === 'scratch' ? own : shared;
      const symbol = kind === 'setting' || kind === 'position' ? name : `${begin}${name}`;
      if (!cells.has(symbol)) cells.set(symbol, { symbol, kind, holds });
      return { symbol, reach: 'zero page' };
    },
    all: () => [...cells.values()],
  };
}
