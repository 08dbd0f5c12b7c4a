import { KEYPAD } from './keypad.js';
import { fromSource, type Source } from './source.js';
import type { Wire } from './wiring.js';

/** One step of a keypad scan: what to write before the columns of row `row` are read. */
export interface ScanStep {
  /** 1 to 4. */
  readonly row: number;
  /** Value for SWACNT: the driven row pins are outputs, every other pin an input. */
  readonly swacnt: number;
  /** Value for SWCHA: its output bits, 0 for the driven rows. */
  readonly swcha: number;
}

/**
 * The keypad scan that the wires need: a step for each row, or none where no key is among them. Two keypads are
 * scanned together, a row of each at a time; of one keypad two rows are never driven at once.
 */
export function scanSteps(wires: readonly Wire[]): readonly ScanStep[] {
  const keys = wires.filter(wire => wire.kind === 'matrix');
  return KEYPAD.rows.left.flatMap((_, index) => {
    const driven = keys.filter(({ row }) => row === index + 1);
    if (driven.length === 0) return [];
    return [{ row: index + 1, swacnt: driven.reduce((mask, { drive }) => mask | drive.mask, 0), swcha: 0 }];
  });
}

/** What VBLANK must hold apart from D1, which is the picture's. */
export interface VblankSetup {
  /** D6: 1 while the button latch is in use. */
  readonly latch: 0 | 1;
  /**
   * D7: `toggled` where pots are read (1 to dump, 0 to let them charge), 0 where a line on INPT0 to INPT3 is
   * read as a contact, `free` where nothing is read there. Where both are, contacts are read while it is 0.
   */
  readonly dump: 'toggled' | 0 | 'free';
  readonly sources: readonly Source[];
}

/** @param isLatched the scheme's button latch is not `off` */
export function vblankSetup(wires: readonly Wire[], isLatched: boolean): VblankSetup {
  const dump = wires.some(({ kind }) => kind === 'pot')
    ? 'toggled'
    : wires.some(isContactOnPotLine)
      ? 0
      : 'free';
  return { latch: isLatched ? 1 : 0, dump, sources: [fromSource('G', 'TIA 12')] };
}

const POT_REGISTERS = new Set(['INPT0', 'INPT1', 'INPT2', 'INPT3']);

function isContactOnPotLine(wire: Wire): boolean {
  return (wire.kind === 'line' || wire.kind === 'matrix') && POT_REGISTERS.has(wire.bit.register);
}
