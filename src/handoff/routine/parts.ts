import type { Binding } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import type { Spot } from './banks.js';
import type { Guarded } from './guards.js';

/** What a bit of a bank can say at a read: its level, or how it differs from the read before. */
export type SignalKind = 'on' | 'off' | 'new' | 'let go' | 'changed';

/** One bit of a bank: of a bank of lines, or of channels (`D0`, …) or events (`T0`, …) made from them. */
export interface Signal {
  readonly bank: string;
  readonly mask: number;
  readonly kind: SignalKind;
}

/** A control that counts as engaged or not, made from several lines or with hold-backs taken out. */
export interface Channel {
  /** All must be engaged. */
  readonly parts: readonly Spot[];
  /** By the release-first rule, or as read. */
  readonly counted: boolean;
  /** Numbers of the hold-backs that keep it from counting. */
  readonly heldBy: readonly number[];
}

/** Something that happens at one read: a turn, or what a two-position switch does while something holds it back. */
export interface Happening {
  readonly source:
    | { readonly kind: 'signal'; readonly signal: Signal }
    | { readonly kind: 'wheel'; readonly spot: Spot; readonly contact: Contact }
    | { readonly kind: 'paddle'; readonly contact: Contact };
  readonly heldBy: readonly number[];
}

/** `Instead of`: while it lasts, what it holds back counts as not engaged. */
export interface HoldBackPlan {
  readonly holder: Binding;
  readonly begins:
    | { readonly kind: 'engaged'; readonly parts: readonly Spot[] }
    | { readonly kind: 'signal'; readonly signal: Signal };
  readonly guard: Guarded;
  /** It ends when none of these is engaged. */
  readonly until: readonly Spot[];
}
