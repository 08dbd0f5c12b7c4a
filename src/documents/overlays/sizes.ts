import { OVERLAY_ITEMS, type OverlayItem, type Scheme } from '../../language/model.js';
import { OVERLAY_SIZES } from '../../language/overlay-sizes.js';

/** Sizes of the printed pieces, mm. */
export type Sizes = Readonly<Record<OverlayItem, number>>;

/** What the scheme says, and the built-in sizes (from memory) for the rest. */
export function sizesOf(scheme: Scheme): Sizes {
  const said = new Map(scheme.overlays.map(({ item, mm }) => [item, mm]));
  const entries = OVERLAY_ITEMS.map(item => [item, said.get(item) ?? OVERLAY_SIZES[item]] as const);
  return Object.fromEntries(entries) as Sizes;
}

const KEY_ITEMS: readonly OverlayItem[] = [
  'Overlay width',
  'Overlay height',
  'Key width',
  'Key height',
  'Key column pitch',
  'Key row pitch',
  'First key from left',
  'First key from top',
];

/** True where a size that must fit a real thing is a built-in one. */
export function isFromMemory(scheme: Scheme, piece: 'keys' | 'strip' | 'card'): boolean {
  const said = new Set(scheme.overlays.map(({ item }) => item));
  const needed: Readonly<Record<typeof piece, readonly OverlayItem[]>> = {
    keys: KEY_ITEMS,
    strip: ['Strip width', 'Strip height'],
    card: [],
  };
  return needed[piece].some(item => !said.has(item));
}
