import type { Element } from 'hast';
import { box, label, line, type Point, ptToMm, STROKE } from '../figures/drawing.js';
import { LABEL_LEADING, SMALLEST_PT } from './fit-label.js';
import { type FittedKey, type FittedWords, NOTE_HEIGHT, SIGN_HEIGHT } from './key-cell.js';
import { withMark } from './key-words.js';
import type { Sizes } from './sizes.js';

/** What a label says besides: the words under it, and the sign after it. */
export interface LabelNote {
  readonly words: string;
  readonly mark: string;
}

const INSET = 0.5;

/** A key's cell with its labels, or crossed out where it is not used. */
export function drawKey(
  sign: string,
  { labels, sign: place }: FittedKey,
  notes: readonly LabelNote[],
  at: Point,
  sizes: Sizes,
): readonly Element[] {
  const width = sizes['Key width'];
  const height = sizes['Key height'];
  const cell = box(at, width, height, Math.min(1.2, width / 4, height / 4), {
    fill: 'paper',
    width: STROKE.detail,
  });
  if (labels.length === 0) return [cell, ...cross(at, width, height)];
  const top = place === 'inside' ? SIGN_HEIGHT : INSET;
  const noted = labels.filter(({ note }) => note === 'words').length;
  const share = (height - top - INSET - noted * NOTE_HEIGHT) / labels.length;
  const heights = labels.map(({ note }) => share + (note === 'words' ? NOTE_HEIGHT : 0));
  const tops = heights.map((_, index) => at.y + top + sum(heights.slice(0, index)));
  const middle = at.x + width / 2;
  return [
    cell,
    drawSign(sign, place, at),
    ...labels.flatMap((fitted, index) =>
      drawLabel(
        fitted,
        notes[index] ?? { words: '', mark: '' },
        { x: middle, y: tops[index] ?? at.y },
        share,
      ),
    ),
    ...tops
      .slice(1)
      .map(y => line({ x: at.x + 1.5, y }, { x: at.x + width - 1.5, y }, { width: STROKE.hair })),
  ];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function drawSign(sign: string, place: FittedKey['sign'], at: Point): Element {
  switch (place) {
    case 'inside':
      return label(sign, { x: at.x + 1, y: at.y + 2.35 }, { sizePt: SMALLEST_PT });
    case 'above':
      return label(sign, { x: at.x + 1, y: at.y - 0.55 }, { sizePt: SMALLEST_PT });
    case 'beside':
      return label(sign, { x: at.x - 0.6, y: at.y + 2.2 }, { sizePt: SMALLEST_PT, anchor: 'end' });
    default:
      return place satisfies never;
  }
}

/** @param at the middle of its upper edge */
function drawLabel(
  { lines, sizePt, note }: FittedWords,
  { words, mark }: LabelNote,
  { x, y }: Point,
  share: number,
): readonly Element[] {
  const pitch = ptToMm(sizePt * LABEL_LEADING);
  const first = y + (share - pitch * lines.length) / 2;
  const shown = note === 'sign' ? withMark(lines, mark) : lines;
  const below = y + share + ptToMm(SMALLEST_PT * 0.8);
  return [
    ...shown.map((text, number) =>
      label(
        text,
        { x, y: first + pitch * number + ptToMm(sizePt * 0.86) },
        { sizePt, bold: true, anchor: 'middle' },
      ),
    ),
    ...(note === 'words' ? [label(words, { x, y: below }, { sizePt: SMALLEST_PT, anchor: 'middle' })] : []),
  ];
}

/** An unused key is crossed out. */
function cross({ x, y }: Point, width: number, height: number): readonly Element[] {
  const [near, right, foot] = [0.8, x + width - 0.8, y + height - 0.8];
  const hair = { width: STROKE.hair };
  return [
    line({ x: x + near, y: y + near }, { x: right, y: foot }, hair),
    line({ x: right, y: y + near }, { x: x + near, y: foot }, hair),
  ];
}
