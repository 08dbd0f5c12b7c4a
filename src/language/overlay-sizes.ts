import type { OverlayItem } from './model.js';

/** Sizes of the printed sheets where a scheme says nothing, in mm. Source R: from memory, to be measured first. */
export const OVERLAY_SIZES: Readonly<Record<OverlayItem, number>> = {
  'Overlay width': 60,
  'Overlay height': 90,
  'Key width': 12,
  'Key height': 12,
  'Key column pitch': 17,
  'Key row pitch': 18,
  'First key from left': 7,
  'First key from top': 12,
  'Corner radius': 3,
  'Strip width': 180,
  'Strip height': 25,
  'Card width': 85,
  'Card height': 55,
  Bleed: 3,
};
