import type { Mode, Scheme } from '../../language/model.js';
import type { RamByte, UnplacedByte } from './ram-byte.js';
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
