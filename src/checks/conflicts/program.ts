import type { GestureSpec } from '../../gestures/automaton.js';

/**
 * Two bindings and what holds them back, stripped to what their conflicts depend on: contacts are bits, times
 * are reads, names are gone. Many pairs of a scheme make the same program, so that each is searched once.
 */
export interface Program {
  /** By contact. */
  readonly contacts: readonly ProgramContact[];
  readonly x: Part;
  /** Null where only one binding is looked at. */
  readonly y: Part | null;
  readonly holdBacks: readonly PartHoldBack[];
}

export interface ProgramContact {
  readonly type: 'momentary' | 'two-position' | 'turning';
  /** The positions (as levels) it may begin in: 0 for all but two-position switches. */
  readonly starts: readonly number[];
  /** A switch that the console fixes never moves. */
  readonly isFixed: boolean;
  /** Its position gives a setting that must keep its value: a read after it was moved is out of bounds. */
  readonly isFrozen: boolean;
  /** Index of the contact that is never engaged together with it. */
  readonly opposite: number | null;
}

/** One binding: its gesture, and what it is made on. */
export interface Part extends GestureSpec {
  /** One bit for each contact of its control. */
  readonly mask: number;
  /** The level that `at P` and `flip to P` ask for. */
  readonly wanted: number | null;
  /** Whether it leaves the mode (or enters it anew). */
  readonly goesTo: boolean;
}

/** A live binding that holds x or y back. Its `When` holds throughout. */
export interface PartHoldBack {
  readonly target: 'x' | 'y';
  readonly holder: Omit<Part, 'goesTo' | 'reads'>;
  /** One bit for each line that must be let go before it ends. */
  readonly until: number;
}

/** Contacts beyond this do not fit the bits; only a chord of dozens of controls of an own controller gets there. */
export const MOST_CONTACTS = 30;

/** A text that is the same for programs that have the same conflicts. */
export function programKey({ contacts, x, y, holdBacks }: Program): string {
  const partKey = (part: Part | null) =>
    part === null ? '' : `${part.kind}${part.reads},${part.mask},${part.wanted ?? ''},${part.goesTo ? 1 : 0}`;
  const contactKey = ({ type, starts, isFixed, isFrozen, opposite }: ProgramContact) =>
    type === 'momentary'
      ? (opposite ?? '')
      : `${type}${starts.join('')}${isFixed ? 'f' : ''}${isFrozen ? 'z' : ''}`;
  const holdKey = ({ target, holder, until }: PartHoldBack) =>
    `${target}${holder.kind},${holder.mask},${holder.wanted ?? ''},${until}`;
  return `${partKey(x)}/${partKey(y)}/${contacts.map(contactKey).join(';')}/${holdBacks.map(holdKey).join(';')}`;
}
