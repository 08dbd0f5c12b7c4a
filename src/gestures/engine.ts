import type { Time } from '../language/model.js';
import { carriesOver, type GestureSpec, isPositional, stepGesture } from './automaton.js';
import type { Binding } from './bindings.js';
import { type Contact, contactType } from './contacts.js';
import { fitsParts, positionLevel, positionOf } from './fit.js';
import { holdBacksOf } from './hold-backs.js';

/**
 * The meaning of the gestures of one mode, read by read. Everything is numbers: contacts and bindings are known
 * by their index, a control's level is what was read of it.
 *
 * A **level** is, for a momentary contact, 1 while it is engaged and else 0; for a two-position switch the index
 * of its position among the switch's positions (COLOR 0, B-W 1; B 0, A 1); for a paddle or wheel its position,
 * in any whole number (only whether it changes counts).
 */
export interface Engine {
  readonly bindings: readonly Binding[];
  /** Levels are given in this order. */
  readonly contacts: readonly Contact[];
  /** By contact: whether it is engaged or not (and neither has positions nor turns). */
  readonly momentary: readonly boolean[];
  /** By binding. */
  readonly gestures: readonly EngineGesture[];
  readonly holdBacks: readonly EngineHoldBack[];
}

/** A binding as numbers. */
export interface EngineGesture extends GestureSpec {
  /** False where the gesture can't be made on this control: it never fires. */
  readonly fits: boolean;
  /** Indices of contacts. */
  readonly parts: readonly number[];
  /** The level that `at P` and `flip to P` ask for. */
  readonly wanted: number | null;
}

interface EngineHoldBack {
  readonly holder: number;
  readonly held: number;
  readonly until: readonly number[];
}

/** Where an engine stands after a read. Plain numbers, never changed in place. */
export interface EngineState {
  /** By contact, at the read before; null before the first read of all. */
  readonly levels: readonly number[] | null;
  /** By contact: 1 while the release-first rule keeps it from counting. */
  readonly masked: readonly number[];
  /** By binding: its automaton's state. */
  readonly gestures: readonly number[];
  /** By hold-back: 1 while it lasts. */
  readonly holding: readonly number[];
}

export interface EngineStep {
  readonly state: EngineState;
  /** Indices of the bindings that fire at this read, in their order. */
  readonly fired: readonly number[];
}

/**
 * The engine for the bindings of one mode in one seats row on one console.
 *
 * @param readsOf a time in reads, at least 1 (`language/time` for a standard and a read rate)
 * @param contacts what levels are given of; those of the bindings where left out. Must hold every part of every
 *   binding (a RangeError says which is missing)
 */
export function createEngine(
  bindings: readonly Binding[],
  readsOf: (time: Time) => number,
  contacts: readonly Contact[] = contactsOf(bindings),
): Engine {
  const indexOf = new Map(contacts.map(({ id }, index) => [id, index]));
  const contactIndex = (id: string): number => {
    const index = indexOf.get(id);
    if (index === undefined) throw new RangeError(`no level is given for ${id}`);
    return index;
  };
  return {
    bindings,
    contacts,
    momentary: contacts.map(contact => contactType(contact) === 'momentary'),
    gestures: bindings.map(({ gesture, parts }) => ({
      kind: gesture.kind,
      reads: 'time' in gesture ? readsOf(gesture.time) : 1,
      fits: fitsParts(gesture, parts),
      parts: parts.map(({ id }) => contactIndex(id)),
      wanted: parts[0] === undefined ? null : positionLevel(parts[0], positionOf(gesture)),
    })),
    holdBacks: holdBacksOf(bindings).map(({ holder, held, until }) => ({
      holder,
      held,
      until: until.map(contactIndex),
    })),
  };
}

/** The contacts that some bindings use, each once, in order of appearance. */
export function contactsOf(bindings: readonly Binding[]): readonly Contact[] {
  const byId = new Map<string, Contact>();
  for (const { parts } of bindings) for (const part of parts) if (!byId.has(part.id)) byId.set(part.id, part);
  return [...byId.values()];
}

/** At rest, before the first read. */
export function startEngine(engine: Engine): EngineState {
  return {
    levels: null,
    masked: engine.contacts.map(() => 0),
    gestures: engine.bindings.map(() => 0),
    holding: engine.holdBacks.map(() => 0),
  };
}

/**
 * Entering a mode: engagements and positions carry over, no gesture is begun, and what was engaged at the last
 * read of the old mode must be let go first.
 *
 * @param levels of the last read in the old mode, by contact of `engine`
 */
export function enterEngine(engine: Engine, levels: readonly number[]): EngineState {
  const masked = engine.contacts.map((_, index) => (isEngaged(engine, levels, index) ? 1 : 0));
  return { ...startEngine(engine), levels, masked };
}

/**
 * One read.
 *
 * @param levels what is read, by contact; a missing one counts as 0
 * @param mayFire whether a binding's `When` holds, judged on the values before the read
 */
export function stepEngine(
  engine: Engine,
  state: EngineState,
  levels: readonly number[],
  mayFire: (binding: number) => boolean,
): EngineStep {
  const read: EngineRead = { engine, levels, before: state.levels ?? levels, mayFire };
  const masked = state.masked.map((mask, index) => (mask === 1 && levels[index] === 1 ? 1 : 0));
  const { held, holding } = stepHoldBacks(read, state.holding);
  const fired: number[] = [];
  const gestures = engine.gestures.map((gesture, index) => {
    const is = isPositional(gesture.kind)
      ? isMade(read, gesture)
      : !held.has(index) && isCounted(read, gesture, masked);
    const stepped = stepGesture(gesture, state.gestures[index] ?? 0, is);
    if ((stepped & 1) === 1 && !held.has(index) && mayFire(index)) fired.push(index);
    return stepped >> 1;
  });
  return { state: { levels, masked, gestures, holding }, fired };
}

/** A short text that is the same for two states exactly if the engine goes on the same from both. */
export function engineKey({ levels, masked, gestures, holding }: EngineState): string {
  return [levels ?? '-', masked, gestures, holding].join('|');
}

interface EngineRead {
  readonly engine: Engine;
  readonly levels: readonly number[];
  /** The levels of the read before; at the first read of all, of this one: nothing has been moved. */
  readonly before: readonly number[];
  readonly mayFire: (binding: number) => boolean;
}

const isEngaged = ({ momentary }: Engine, levels: readonly number[], contact: number): boolean =>
  momentary[contact] === true && levels[contact] === 1;

/** Engaged as the gesture counts it: without what must be let go first, unless the gesture carries over. */
function isCounted(
  { engine, levels }: EngineRead,
  gesture: EngineGesture,
  masked: readonly number[],
): boolean {
  const counts = (part: number) => carriesOver(gesture.kind) || masked[part] === 0;
  return gesture.fits && gesture.parts.every(part => isEngaged(engine, levels, part) && counts(part));
}

/** A positional gesture: whether the switch is in P, or was moved since the read before. */
function isMade({ levels, before }: EngineRead, { kind, fits, parts, wanted }: EngineGesture): boolean {
  const [part] = parts;
  if (!fits || part === undefined) return false;
  const isThere = wanted === null || levels[part] === wanted;
  return isThere && (kind === 'at' || levels[part] !== before[part]);
}

/**
 * A binding's control as read, for `Instead of`: neither the release-first rule nor a hold-back touches it. What
 * has positions counts as engaged while its gesture is made: `at P` in P, `flip` and `turn` at the read they move.
 */
function isEngagedAsRead(read: EngineRead, gesture: EngineGesture): boolean {
  if (isPositional(gesture.kind)) return isMade(read, gesture);
  return gesture.fits && gesture.parts.every(part => isEngaged(read.engine, read.levels, part));
}

/** Which bindings are held back at this read, and which hold-backs go on after it. */
function stepHoldBacks(
  read: EngineRead,
  before: readonly number[],
): { readonly held: ReadonlySet<number>; readonly holding: readonly number[] } {
  const { engine, levels, mayFire } = read;
  const held = new Set<number>();
  const holding = engine.holdBacks.map((holdBack, index) => {
    const holder = engine.gestures[holdBack.holder];
    const begins = holder !== undefined && isEngagedAsRead(read, holder) && mayFire(holdBack.holder);
    if (!begins && before[index] !== 1) return 0;
    held.add(holdBack.held);
    return holdBack.until.some(line => isEngaged(engine, levels, line)) ? 1 : 0;
  });
  return { held, holding };
}
