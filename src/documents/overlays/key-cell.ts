import { type FittedLabel, fitLabel, fitOrShorten } from './fit-label.js';
import type { KeyCell } from './key-view.js';
import type { Sizes } from './sizes.js';

/** A key's labels as printed, each in its share of the cell. */
export interface FittedKey {
  readonly labels: readonly FittedLabel[];
  /** Whether there is room for the key's own sign in the corner. */
  readonly hasSign: boolean;
}

/** Free on each side of a key's label, mm. */
const PAD = 0.5;
/** Height of the line for the key's sign, mm. */
export const SIGN_HEIGHT = 3;

/** The key's sign is left out where the labels need its room. */
export function fitKey({ labels }: KeyCell, sizes: Sizes): FittedKey {
  for (const hasSign of [true, false]) {
    const fitted = labels.map(({ text }) => fitLabel(text, roomFor(labels.length, sizes, hasSign)));
    const whole = fitted.filter(label => label !== null);
    if (whole.length === labels.length) return { labels: whole, hasSign };
  }
  const room = roomFor(labels.length, sizes, false);
  return { labels: labels.map(({ text }) => fitOrShorten(text, room)), hasSign: false };
}

/** Room for one of so many labels on a key, mm. */
export function roomFor(count: number, sizes: Sizes, hasSign: boolean) {
  const height = sizes['Key height'] - 2 * PAD - (hasSign ? SIGN_HEIGHT - PAD : 0);
  return { width: sizes['Key width'] - 2 * PAD, height: height / Math.max(1, count) };
}
