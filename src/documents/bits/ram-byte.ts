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
