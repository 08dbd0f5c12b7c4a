import type { Binding } from '../../gestures/bindings.js';
import type { Action } from '../../language/model.js';

export interface KeyLabel {
  /** The action's `Short`, or its name; `+` before it where the key is part of a chord. */
  readonly text: string;
  readonly action: Action | null;
}

const QUICK_FIRST = ['press', 'tap', 'held', 'repeat', 'double tap', 'hold', 'release'];

/**
 * What stands on a key.
 *
 * @param onKey the bindings that the key is a part of
 */
export function keyLabelsOf(onKey: readonly Binding[]): readonly KeyLabel[] {
  const own = onKey.toSorted(
    (a, b) => QUICK_FIRST.indexOf(a.gesture.kind) - QUICK_FIRST.indexOf(b.gesture.kind),
  );
  const labels = new Map<string, KeyLabel>();
  for (const { action, actionName, parts } of own) {
    const short = action?.short?.value ?? action?.name ?? actionName;
    const text = parts.length > 1 ? `+${short}` : short;
    if (!labels.has(text)) labels.set(text, { text, action });
  }
  return [...labels.values()];
}
