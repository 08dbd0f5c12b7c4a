import { ptToMm } from '../figures/drawing.js';
import { textWidth } from '../figures/text-block.js';
import { type FittedLabel, fitLabel, fitOrShorten, LABEL_LEADING, SMALLEST_PT } from './fit-label.js';
import { widestMark } from './signs.js';
import type { Sizes } from './sizes.js';

/** A label as it is to be printed. */
export interface LabelWords {
  readonly text: string;
  /** `hold 2 s`: how the key is worked; empty where that needs no telling. */
  readonly note: string;
}

/** A key's labels as printed, each in its share of the cell. */
export interface FittedKey {
  readonly labels: readonly FittedWords[];
  /** Where the key's own sign stands: within the cell, or above or beside it where the labels need its room. */
  readonly sign: SignPlace;
}

export type SignPlace = 'inside' | 'above' | 'beside';

export interface FittedWords extends FittedLabel {
  /** Under the label in words, or as a sign after it, which is the last character of `lines` until it is known. */
  readonly note: 'none' | 'words' | 'sign';
}

/** Free on each side of a key's label, mm. */
const PAD = 0.5;
/** Height of the line for the key's sign, mm. */
export const SIGN_HEIGHT = 3;
/** Height of a note under a label, mm. */
export const NOTE_HEIGHT = ptToMm(SMALLEST_PT * LABEL_LEADING);

/** Notes stand in words where there is room for them, else as signs. */
export function fitKey(labels: readonly LabelWords[], sizes: Sizes): FittedKey {
  const outside = placeOutside(sizes);
  for (const hasWords of [true, false]) {
    for (const sign of ['inside', ...(outside === null ? [] : [outside])] as const) {
      const fitted = fitAll(labels, sizes, sign, hasWords);
      if (fitted !== null) return { labels: fitted, sign };
    }
  }
  const sign = outside ?? 'inside';
  const room = roomFor(labels.length, sizes, sign === 'inside');
  return {
    labels: labels.map(({ text, note }) => ({
      ...fitOrShorten(marked(text, note !== ''), room),
      note: note === '' ? 'none' : 'sign',
    })),
    sign,
  };
}

/** Beside a key there must be 3 mm to the next one, or to the edge. */
function placeOutside(sizes: Sizes): Exclude<SignPlace, 'inside'> | null {
  const above = Math.min(sizes['Key row pitch'] - sizes['Key height'], sizes['First key from top']);
  if (above >= SIGN_HEIGHT) return 'above';
  const beside = Math.min(sizes['Key column pitch'] - sizes['Key width'], sizes['First key from left']);
  return beside >= SIGN_HEIGHT ? 'beside' : null;
}

function fitAll(
  labels: readonly LabelWords[],
  sizes: Sizes,
  sign: SignPlace,
  hasWords: boolean,
): readonly FittedWords[] | null {
  const { width, height } = roomFor(1, sizes, sign === 'inside');
  const noted = labels.filter(({ note }) => note !== '');
  if (hasWords && noted.some(({ note }) => textWidth(note, { sizePt: SMALLEST_PT }) > width)) return null;
  const share = (height - (hasWords ? noted.length * NOTE_HEIGHT : 0)) / Math.max(1, labels.length);
  if (share <= 0) return null;
  const fitted = labels.map(({ text, note }): FittedWords | null => {
    const how = note === '' ? 'none' : hasWords ? 'words' : 'sign';
    const label = fitLabel(how === 'sign' ? marked(text, note !== '') : text, { width, height: share });
    return label === null ? null : { ...label, note: how };
  });
  const whole = fitted.filter(label => label !== null);
  return whole.length === labels.length ? whole : null;
}

/** With the place of a sign, where there is something to tell. */
export const marked = (text: string, hasMark: boolean): string => (hasMark ? `${text}${widestMark()}` : text);

/** Room for one of so many labels on a key, mm. */
export function roomFor(count: number, sizes: Sizes, hasSign: boolean) {
  const height = sizes['Key height'] - 2 * PAD - (hasSign ? SIGN_HEIGHT - PAD : 0);
  return { width: sizes['Key width'] - 2 * PAD, height: height / Math.max(1, count) };
}
