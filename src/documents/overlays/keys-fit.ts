import type { Action, Mode, Scheme } from '../../language/model.js';
import { textWidth } from '../figures/text-block.js';
import { fitLabel, SMALLEST_PT } from './fit-label.js';
import { roomFor } from './key-cell.js';
import { type KeyCell, type KeyOverlay, viewKeyOverlays } from './key-view.js';
import { type Sizes, sizesOf } from './sizes.js';

/** What is wrong with a label on its printed key, in words for `short-too-long`. */
export interface KeyMisfit {
  readonly problem: string;
  readonly limit: string;
}

/**
 * Tells of an action's `Short` whether it fits every printed key it stands on, at 7 pt or more, in the very font
 * that is printed. Keys are laid out when the first label is asked about.
 */
export function createKeyFit(scheme: Scheme): (action: Action, short: string) => KeyMisfit | null {
  const sizes = sizesOf(scheme);
  let printed: ReadonlyMap<Action, readonly PrintedKey[]> | undefined;
  return (action, short) => {
    printed ??= keysByAction(viewKeyOverlays(scheme));
    for (const { cell, mode } of printed.get(action) ?? []) {
      const misfit = misfitOn(cell, action, short, mode.name, sizes);
      if (misfit !== null) return misfit;
    }
    return null;
  };
}

interface PrintedKey {
  readonly cell: KeyCell;
  readonly mode: Mode;
  /** The action's label on it. */
  readonly text: string;
}

/** The keys that an action's label stands on; of those that are alike for it in one mode, only the first. */
function keysByAction(overlays: readonly KeyOverlay[]): ReadonlyMap<Action, readonly PrintedKey[]> {
  const printed = new Map<Action, PrintedKey[]>();
  for (const { keys, mode } of overlays) {
    for (const cell of keys) {
      for (const { action, text } of cell.labels) {
        if (action === null) continue;
        const known = printed.get(action) ?? [];
        const isAlike = (key: PrintedKey) =>
          key.mode === mode && key.text === text && key.cell.labels.length === cell.labels.length;
        if (!known.some(isAlike)) printed.set(action, [...known, { cell, mode, text }]);
      }
    }
  }
  return printed;
}

function misfitOn(
  { name, labels }: KeyCell,
  action: Action,
  short: string,
  mode: string,
  sizes: Sizes,
): KeyMisfit | null {
  const room = roomFor(labels.length, sizes, false);
  const label = labels.find(each => each.action === action);
  if (label === undefined || fitLabel(label.text, room) !== null) return null;
  const where = `${name} in ${mode}`;
  const widest = Math.max(...label.text.split(/\s+/).map(word => smallestWidth(word)));
  if (widest <= room.width) {
    const others = labels.length > 1 ? ` beside ${labels.length - 1} more` : '';
    return {
      problem: `has no room on ${where}${others}: at ${SMALLEST_PT} pt it is too high for its ${inMm(room.height)}`,
      limit: 'fewer words, or fewer actions on the key',
    };
  }
  return {
    problem: `does not fit ${where}: at ${SMALLEST_PT} pt it is ${inMm(widest)} wide, the key has ${inMm(room.width)}`,
    limit: `words of about ${Math.max(1, Math.floor((short.length * room.width) / widest))} letters`,
  };
}

const smallestWidth = (text: string): number => textWidth(text, { sizePt: SMALLEST_PT, bold: true });

const inMm = (value: number): string => `${Math.round(value * 10) / 10} mm`;
