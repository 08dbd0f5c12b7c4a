import type { Mode, Scheme, SeatsRow } from '../language/model.js';
import type { Names } from './names.js';
import type { OutputsOfMode } from './outputs.js';
import type { RamLayout } from './ram.js';
import type { Piece, UnitRoutine } from './routine/routine.js';
import type { Times } from './times.js';
import type { ConsoleClass } from './units.js';

/** All that is handed to the programmer, before it is written down. */
export interface Handoff {
  readonly scheme: Scheme;
  readonly names: Names;
  readonly classes: readonly ConsoleClass[];
  readonly times: Times;
  readonly outputs: ReadonlyMap<Mode, OutputsOfMode>;
  /** In the order of modes, seats rows, classes of consoles. */
  readonly routines: readonly UnitRoutine[];
  readonly ram: RamLayout;
  /** What each unit costs, by class of consoles, in the order of `classes`. */
  readonly costs: readonly ClassCosts[];
  /** Every symbol that is handed over, in the order of the files. */
  readonly symbols: readonly SymbolGroup[];
}

export interface ClassCosts {
  readonly consoles: ConsoleClass;
  readonly units: readonly UnitCost[];
}

/** A hand-off whose symbols are not named yet, nor its costs counted. */
export type UnnamedHandoff = Omit<Handoff, 'symbols' | 'costs'>;

/** A subroutine where it lies when the file is assembled from a page boundary. */
export interface PlacedPiece {
  readonly piece: Piece;
  /** Other labels of the same code: seats rows that read alike. */
  readonly aliases: readonly string[];
  /** Bytes from the page boundary. */
  readonly offset: number;
  /** At its worst, JSR and RTS included. */
  readonly cycles: number;
  /** Added at most where the file does not begin on a page. */
  readonly moreElsewhere: number;
}

/** What a unit costs. */
export interface UnitCost {
  readonly routine: UnitRoutine;
  /** The routine whose code it shares; itself where it has its own. */
  readonly code: UnitRoutine;
  readonly read: PlacedPiece;
  readonly enter: PlacedPiece;
  readonly start: PlacedPiece | null;
  readonly scan: readonly PlacedPiece[];
  /** Cycles a read at its worst: the steps of the scan and the read. */
  readonly cycles: number;
  readonly romBytes: number;
  readonly ramBytes: number;
}

export interface SymbolEntry {
  readonly name: string;
  /** 0 to $FFFF. */
  readonly value: number;
  readonly about: string;
}

export interface SymbolGroup {
  readonly title: string;
  readonly entries: readonly SymbolEntry[];
}

export function routineOf({ routines }: Handoff, mode: Mode, seats: SeatsRow, console: string): UnitRoutine {
  const found = routines.find(
    ({ unit }) =>
      unit.mode === mode &&
      unit.seats === seats &&
      unit.consoles.profiles.some(({ name }) => name === console),
  );
  if (found === undefined)
    throw new RangeError(`${mode.name} is not played with ${seats.name} on ${console}`);
  return found;
}
