import type { Action, Scheme } from '../../language/model.js';
import { createMemory } from '../../memory.js';
import { textWidth } from '../figures/text-block.js';
import { fitLabel, SMALLEST_PT } from './fit-label.js';
import { marked, roomFor } from './key-cell.js';
import type { KeyLabel } from './key-labels.js';
import { type KeyCell, type KeyOverlay, viewKeyOverlaysIn } from './key-view.js';
import { FALLBACK_MARK } from './signs.js';
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
  let misfits: ReadonlyMap<Action, KeyMisfit> | undefined;
  return action => {
    misfits ??= misfitsOf(scheme);
    return misfits.get(action) ?? null;
  };
}

type Misfits = ReadonlyMap<Action, KeyMisfit>;

/** The first of each action, in the order of the overlays. */
function misfitsOf(scheme: Scheme): Misfits {
  const sizes = sizesOf(scheme);
  const labels = JSON.stringify([sizes, scheme.actions.map(({ short }) => short?.value)]);
  const { fallbacks, consoles } = scheme;
  const known = rememberedFits([scheme.actions, labels], () => new Map());
  const fits: Fits = (text, room) => {
    const key = `${room.width} ${room.height} ${text}`;
    const fit = known.get(key) ?? fitLabel(text, room) !== null;
    known.set(key, fit);
    return fit;
  };
  const all = scheme.seats.flatMap(seats =>
    scheme.modes.map(mode =>
      remembered([mode.rows, mode, seats, fallbacks, consoles, labels], () =>
        misfitsOn(viewKeyOverlaysIn(scheme, seats, mode), sizes, fits),
      ),
    ),
  );
  const first = new Map<Action, KeyMisfit>();
  for (const misfits of all)
    for (const [action, misfit] of misfits) if (!first.has(action)) first.set(action, misfit);
  return first;
}

const remembered = createMemory<Misfits>();
/** The same label stands on many keys. */
const rememberedFits = createMemory<Map<string, boolean>>(1);

type Fits = (text: string, room: { readonly width: number; readonly height: number }) => boolean;

function misfitsOn(overlays: readonly KeyOverlay[], sizes: Sizes, fits: Fits): Misfits {
  const found = new Map<Action, KeyMisfit>();
  for (const { keys, mode } of overlays)
    for (const cell of keys)
      for (const { action } of cell.labels) {
        if (action === null || action.short === null || found.has(action)) continue;
        const misfit = misfitOn(cell, action, action.short.value, mode.name, sizes, fits);
        if (misfit !== null) found.set(action, misfit);
      }
  return found;
}

function misfitOn(
  { name, labels }: KeyCell,
  action: Action,
  short: string,
  mode: string,
  sizes: Sizes,
  fits: Fits,
): KeyMisfit | null {
  const room = roomFor(labels.length, sizes, false);
  const label = labels.find(each => each.action === action);
  if (label === undefined) return null;
  const text = printedText(label);
  if (fits(text, room)) return null;
  const where = `${name} in ${mode}`;
  const widest = Math.max(...text.split(/\s+/).map(word => smallestWidth(word)));
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

/** With room for the signs that it may need. */
const printedText = ({ text, gesture, partners, without }: KeyLabel): string =>
  marked(without === null ? text : `${text}${FALLBACK_MARK}`, gesture !== null || partners.length > 0);

const smallestWidth = (text: string): number => textWidth(text, { sizePt: SMALLEST_PT, bold: true });

const inMm = (value: number): string => `${Math.round(value * 10) / 10} mm`;
