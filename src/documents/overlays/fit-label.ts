import { ptToMm } from '../figures/drawing.js';
import { shorten, textWidth } from '../figures/text-block.js';

/** A label as it is printed. */
export interface FittedLabel {
  /** pt */
  readonly sizePt: number;
  readonly lines: readonly string[];
}

/** Smaller type can't be read on a printed key. */
export const SMALLEST_PT = 7;
const LARGEST_PT = 12;
const STEP_PT = 0.25;

/** Line pitch of a label, as a multiple of its size. */
export const LABEL_LEADING = 1.06;

interface Room {
  /** mm */
  readonly width: number;
  /** mm */
  readonly height: number;
}

/**
 * The largest size, in steps of a quarter point, at which the label fits, every way of breaking it between
 * words tried; of equal sizes the one with fewer lines. Null where it does not fit at 7 pt.
 */
export function fitLabel(text: string, { width, height }: Room, largestPt = LARGEST_PT): FittedLabel | null {
  let best: FittedLabel | null = null;
  for (const lines of lineBreaks(text)) {
    // Widths grow with the size: one measurement gives the size at which the line is as wide as the room.
    const widest = Math.max(...lines.map(line => textWidth(line, { sizePt: 100, bold: true })));
    const byWidth = widest === 0 ? largestPt : (width / widest) * 100;
    const byHeight = height / ptToMm(lines.length * LABEL_LEADING);
    const sizePt = Math.floor(Math.min(largestPt, byWidth, byHeight) / STEP_PT + 1e-9) * STEP_PT;
    const isBetter =
      best === null || sizePt > best.sizePt || (sizePt === best.sizePt && lines.length < best.lines.length);
    if (sizePt >= SMALLEST_PT && isBetter) best = { sizePt, lines };
  }
  return best;
}

/** As fitLabel, but what does not fit is cut short: for texts that no rule holds to a length. */
export function fitOrShorten(text: string, room: Room, largestPt = LARGEST_PT): FittedLabel {
  const fitted = fitLabel(text, room, largestPt);
  if (fitted !== null) return fitted;
  return { sizePt: SMALLEST_PT, lines: [shorten(text, room.width, { sizePt: SMALLEST_PT, bold: true })] };
}

/** All ways of putting a label's words on lines; names of more than eight words are broken at most thrice. */
function lineBreaks(text: string): readonly (readonly string[])[] {
  const words = text.split(/(?<=-)|[ \n\t]+/).filter(Boolean);
  if (words.length === 0) return [['']];
  const gaps = words.length - 1;
  const glue = (index: number) =>
    words[index]?.endsWith('-') && !text.includes(`${words[index]} `) ? '' : ' ';
  const ways = Math.min(2 ** gaps, 256);
  return Array.from({ length: ways }, (_, breaks) => {
    const lines: string[] = [words[0] ?? ''];
    for (let gap = 0; gap < gaps; gap += 1) {
      const word = words[gap + 1] ?? '';
      if ((breaks >> gap) & 1) lines.push(word);
      else lines[lines.length - 1] = `${lines.at(-1)}${glue(gap)}${word}`;
    }
    return lines;
  });
}
