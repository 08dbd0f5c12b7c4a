import { controlText } from '../language/controls.js';
import type { Chord } from '../language/model.js';

/** A chord as a row names it: `stick up + button`. */
export function chordText(chord: Chord): string {
  return chord.parts.map(controlText).join(' + ');
}
