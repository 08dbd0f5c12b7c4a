import type { Mode, Scheme } from '../../language/model.js';
import { modeBytes, sharedBytes } from './ram-needs.js';

/** The state that reading a scheme's inputs needs, byte by byte. */
export interface RamView {
  /** One sentence: whose layout this is. */
  readonly about: string;
  /** In use in every mode. */
  readonly shared: readonly RamByte[];
  /** Bytes that each mode (or mode and seats row) uses anew: all use the same room. */
  readonly modes: readonly ModeRam[];
  /** What each bit of the shared bytes that tell the game means, by mode; left out where `modes` says it. */
  readonly fired?: readonly ModeRam[];
  /** Shared bytes and those of the mode that needs most. */
  readonly total: number;
}

export interface ModeRam {
  /** The mode, or the modes and seats rows, that use the bytes so. */
  readonly mode: string;
  /** How the bytes' symbols begin; empty where they are whole. */
  readonly prefixes: readonly string[];
  readonly bytes: readonly RamByte[];
}

export interface RamByte {
  /** From the first byte of the state, from 0. Bytes that are never needed at the same time may share one. */
  readonly offset: number;
  readonly name: string;
  readonly holds: string;
  /** From D7 down to D0, '' where a bit is not used; empty where the byte is not told bit by bit. */
  readonly bits: readonly string[];
}

/** A byte that has no place yet. */
export type UnplacedByte = Omit<RamByte, 'offset'>;

/** A layout that is enough for the tests of this appendix. A generated reading routine brings its own. */
export function viewRam(scheme: Scheme): RamView {
  const shared = placeBytes(sharedBytes(scheme), 0);
  const modes = scheme.modes.map(mode => ({
    mode: mode.name,
    prefixes: [],
    bytes: placeBytes(worstSeats(scheme, mode), shared.length),
  }));
  const most = Math.max(0, ...modes.map(({ bytes }) => bytes.length));
  return {
    about: 'What a routine made of the tests above has to remember from one read to the next.',
    shared,
    modes,
    total: shared.length + most,
  };
}

function placeBytes(bytes: readonly UnplacedByte[], start: number): readonly RamByte[] {
  return bytes.map((byte, index) => ({ offset: start + index, ...byte }));
}

/** The bytes of the seats row that needs most in a mode. */
function worstSeats(scheme: Scheme, mode: Mode): readonly UnplacedByte[] {
  let worst: readonly UnplacedByte[] = [];
  for (const seats of mode.seats) {
    const bytes = modeBytes(scheme, mode, seats);
    if (bytes.length > worst.length) worst = bytes;
  }
  return worst;
}
