import type { Report } from '../findings/report.js';
import { badValue, createSpot } from './faults.js';
import { readItems } from './items.js';
import { OVERLAY_ITEMS, type OverlayItem, type OverlaySize } from './model.js';
import { OVERLAY_SIZES } from './overlay-sizes.js';
import type { Section } from './sections.js';
import { tidy } from './spelling.js';
import { placeOf, type Words } from './words.js';

/** Longest side of a sheet that is printed, in mm. */
const LONGEST = 1000;

/** Sizes that may be 0 mm: square corners, no bleed, a key at the very edge. */
const MAY_BE_ZERO: readonly OverlayItem[] = [
  'Corner radius',
  'Bleed',
  'First key from left',
  'First key from top',
];

export function readOverlays(section: Section | undefined, report: Report): readonly OverlaySize[] {
  if (section === undefined) return [];
  const items = readItems(section, OVERLAY_ITEMS, report);
  const sizes: OverlaySize[] = [];
  for (const item of OVERLAY_ITEMS) {
    const words = items.get(item)?.value ?? null;
    const mm = words === null ? null : readSize(words, item, report);
    if (words !== null && mm !== null) sizes.push({ item, mm, at: placeOf(words) });
  }
  checkKeys(sizes, report);
  return sizes;
}

function readSize(words: Words, item: OverlayItem, report: Report): number | null {
  const digits = /^(\d{1,6}(?:\.\d{1,6})?)\s*mm$/i.exec(words.text)?.[1];
  const spot = createSpot(report, '');
  const waysOut = ['Write a size in mm, for example “58.5 mm”.'];
  if (digits === undefined) {
    badValue(spot, words, item, `“${tidy(words.text)}” is not a size`, waysOut);
    return null;
  }
  const mm = Number(digits);
  if (mm <= LONGEST && (mm > 0 || MAY_BE_ZERO.includes(item))) return mm;
  badValue(
    spot,
    words,
    item,
    `${digits} mm is not from ${MAY_BE_ZERO.includes(item) ? 'zero' : 'above zero'} to ${LONGEST} mm`,
    waysOut,
  );
  return null;
}

/** One direction of the key field: so many keys, a pitch apart, after a margin. */
interface Side {
  readonly keys: number;
  readonly first: OverlayItem;
  readonly pitch: OverlayItem;
  readonly key: OverlayItem;
  readonly whole: OverlayItem;
}

const SIDES: readonly Side[] = [
  {
    keys: 3,
    first: 'First key from left',
    pitch: 'Key column pitch',
    key: 'Key width',
    whole: 'Overlay width',
  },
  {
    keys: 4,
    first: 'First key from top',
    pitch: 'Key row pitch',
    key: 'Key height',
    whole: 'Overlay height',
  },
];

/** An overlay must hold its keys, and they must not lie on each other. */
function checkKeys(sizes: readonly OverlaySize[], report: Report): void {
  const said = (item: OverlayItem): OverlaySize | undefined => sizes.find(size => size.item === item);
  const sizeOf = (item: OverlayItem): number => said(item)?.mm ?? OVERLAY_SIZES[item];
  const spot = createSpot(report, '');
  for (const { keys, first, pitch, key, whole } of SIDES) {
    const at = said(whole) ?? said(pitch) ?? said(first) ?? said(key);
    if (at === undefined) continue;
    const needed = sizeOf(first) + (keys - 1) * sizeOf(pitch) + sizeOf(key);
    if (needed > sizeOf(whole) + TOLERANCE)
      badValue(
        spot,
        at.at,
        at.item,
        `the overlay does not hold its keys: ${keys} of them need ${inMm(needed)} of ${inMm(sizeOf(whole))}`,
        [
          `Measure the keypad again: “${whole}” must be at least ${inMm(needed)}, or the keys smaller or closer together.`,
        ],
      );
    else if (sizeOf(key) > sizeOf(pitch) + TOLERANCE)
      badValue(
        spot,
        (said(key) ?? said(pitch) ?? at).at,
        (said(key) ?? said(pitch) ?? at).item,
        `the keys lie on each other: each is ${inMm(sizeOf(key))}, but they are ${inMm(sizeOf(pitch))} apart`,
        [`Make “${key}” smaller than “${pitch}”.`],
      );
  }
}

/** Sums of decimals are not exact. */
const TOLERANCE = 1e-9;

const inMm = (size: number): string => `${Number(size.toFixed(3))} mm`;
