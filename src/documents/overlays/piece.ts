import type { Element } from 'hast';
import type { Sign } from './signs.js';

/** A piece to cut out, at true size. */
export interface Piece {
  readonly kind: 'keys' | 'strip' | 'card';
  /** Of the cut edge, mm. */
  readonly width: number;
  readonly height: number;
  /** Of the corners, mm. */
  readonly radius: number;
  /** Line art in mm from the piece's upper left corner. */
  readonly nodes: readonly Element[];
  /** What it is, for those who can't see it, and beside the piece where there is no room on it. */
  readonly text: string;
  /** Lines that found no room on the piece; printed under it. */
  readonly under: readonly string[];
  /** Its size is a built-in one. */
  readonly isFromMemory: boolean;
  /** Where it is folded: x in mm. */
  readonly folds: readonly number[];
  /** Those that stand on it. */
  readonly signs: readonly Sign[];
}
