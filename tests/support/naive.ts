/**
 * The meaning of the gestures a second time: straight from the table of the design page, looking back over the whole
 * history at every read. Slow on purpose and without any state, so that it shares no mistake with the engine.
 */

/** What is read of one contact at every read: whether it is engaged, or a switch’s position, or a knob’s. */
export type History = readonly (readonly number[])[];

export type NaiveKind =
  | 'press'
  | 'release'
  | 'held'
  | 'hold'
  | 'tap'
  | 'double tap'
  | 'repeat'
  | 'at'
  | 'flip'
  | 'flip to'
  | 'turn';

export interface NaiveBinding {
  readonly kind: NaiveKind;
  /** Reads; 1 where the gesture has no time. */
  readonly n: number;
  /** Indices of contacts. */
  readonly parts: readonly number[];
  /** For `at P` and `flip to P`. */
  readonly position?: 0 | 1;
}

/** `holder` holds `held` back; `until` are the lines that must be let go. */
export interface NaiveHoldBack {
  readonly holder: NaiveBinding;
  /** Whether the holder’s `When` holds at each read; always where it is left out. */
  readonly when?: readonly boolean[];
  readonly until: readonly number[];
}

const at = (history: History, read: number, contact: number): number => history[read]?.[contact] ?? 0;

/** A control as read. */
export function isEngaged(history: History, read: number, parts: readonly number[]): boolean {
  return read >= 0 && parts.every(part => at(history, read, part) === 1);
}

/** Held back at this read: some read before (or this) began it, and a line was engaged at every read since. */
export function isHeldBack(history: History, read: number, holdBacks: readonly NaiveHoldBack[]): boolean {
  return holdBacks.some(({ holder, when, until }) => {
    for (let began = 0; began <= read; began++) {
      if (!isMadeAsRead(history, began, holder) || when?.[began] === false) continue;
      let lasts = true;
      for (let later = began; later < read; later++)
        if (!until.some(line => at(history, later, line) === 1)) lasts = false;
      if (lasts) return true;
    }
    return false;
  });
}

function isMadeAsRead(history: History, read: number, binding: NaiveBinding): boolean {
  return isPosition(binding.kind) ? isMoved(history, read, binding) : isEngaged(history, read, binding.parts);
}

const isPosition = (kind: NaiveKind) =>
  kind === 'at' || kind === 'flip' || kind === 'flip to' || kind === 'turn';

function isMoved(history: History, read: number, { kind, parts, position }: NaiveBinding): boolean {
  const [contact = 0] = parts;
  const now = at(history, read, contact);
  if (position !== undefined && now !== position) return false;
  if (kind === 'at') return true;
  return read > 0 && at(history, read - 1, contact) !== now;
}

/**
 * Whether a binding fires at a read, its `When` aside.
 *
 * @param firstLetGo contacts that were engaged when the mode was entered (the release-first rule)
 */
export function fires(
  history: History,
  read: number,
  binding: NaiveBinding,
  holdBacks: readonly NaiveHoldBack[] = [],
  firstLetGo: readonly number[] = [],
): boolean {
  if (isHeldBack(history, read, holdBacks)) return false;
  if (isPosition(binding.kind)) return isMoved(history, read, binding);
  const counts = (when: number): boolean =>
    isEngaged(history, when, binding.parts) &&
    !isHeldBack(history, when, holdBacks) &&
    (binding.kind === 'held' ||
      binding.parts.every(part => !firstLetGo.includes(part) || wasLetGo(history, when, part)));
  const c = Array.from({ length: read + 1 }, (_, when) => counts(when));
  return firesOn(c, read, binding);
}

const wasLetGo = (history: History, read: number, contact: number): boolean =>
  history.slice(0, read + 1).some((_, when) => at(history, when, contact) === 0);

/** The table of gestures, on whether the control counts as engaged. */
function firesOn(c: readonly boolean[], read: number, { kind, n }: NaiveBinding): boolean {
  const now = c[read] === true;
  const before = c[read - 1] === true;
  switch (kind) {
    case 'press':
      return now && !before;
    case 'release':
      return before && !now;
    case 'held':
      return now;
    case 'hold':
      return now && runAt(c, read) === n;
    case 'tap':
      return before && !now && runAt(c, read - 1) <= n - 1;
    case 'double tap':
      return isSecondPress(c, read, n);
    case 'repeat':
      return comesDue(c, read, n);
    default:
      throw new Error(kind);
  }
}

function runAt(c: readonly boolean[], read: number): number {
  let run = 0;
  while (c[read - run] === true) run++;
  return run;
}

const isPress = (c: readonly boolean[], read: number): boolean => c[read] === true && c[read - 1] !== true;

function isSecondPress(c: readonly boolean[], read: number, n: number): boolean {
  if (!isPress(c, read)) return false;
  for (let earlier = read - 1; earlier >= 0; earlier--)
    if (isPress(c, earlier)) return read - earlier <= n && !isSecondPress(c, earlier, n);
  return false;
}

/** Due where engaged, unless it came due in the n − 1 reads before: worked out from the first read on. */
function comesDue(c: readonly boolean[], read: number, n: number): boolean {
  const due: boolean[] = [];
  for (let when = 0; when <= read; when++)
    due.push(c[when] === true && !due.slice(Math.max(0, when - (n - 1)), when).includes(true));
  return due[read] === true;
}
