import type { Element } from 'hast';
import { s } from 'hastscript';
import { box, label, line, mm, type Point, ptToMm, STROKE } from '../figures/drawing.js';
import { shorten } from '../figures/text-block.js';
import { pxPerMm } from '../page/paper.js';
import { MARK, type PlacedPiece, UNDER_LINE } from './pack.js';

export interface SheetSize {
  readonly width: number;
  readonly height: number;
}

/**
 * A drawing is this much smaller than its page, mm: the browser rounds a page to whole px, and one that is wider
 * by a hair shrinks all pages.
 */
export const EDGE = 0.4;

/** Where the ruler begins, mm from the left edge, and how long it is. */
export const RULER = { x: 15, length: 100, fromFoot: 27 } as const;

/** A sheet as one drawing of the whole page: in px, with everything in it scaled from mm, so that nothing is rounded. */
export function drawSheet(
  pieces: readonly PlacedPiece[],
  size: SheetSize,
  bleed: number,
  text: string,
): Element {
  return s(
    'svg',
    {
      role: 'img',
      ariaLabel: text,
      class: 'sheet-art drawing',
      width: String((size.width - EDGE) * pxPerMm),
      height: String((size.height - EDGE) * pxPerMm),
    },
    s(
      'g',
      { transform: `scale(${pxPerMm})` },
      ...pieces.flatMap(placed => drawPiece(placed, bleed)),
      ...drawRuler({ x: RULER.x, y: size.height - RULER.fromFoot }),
    ),
  );
}

function drawPiece({ piece, x, y, isTurned }: PlacedPiece, bleed: number): readonly Element[] {
  const { width, height, radius } = piece;
  const turn = isTurned
    ? `translate(${mm(x + height + piece.under.length * UNDER_LINE)} ${mm(y)}) rotate(90)`
    : `translate(${mm(x)} ${mm(y)})`;
  const under = piece.under.map((line_, index) => {
    const at = { x: 2, y: height + bleed + UNDER_LINE * (index + 1) };
    return label(shorten(line_, width - 4, { sizePt: 7 }), at, { sizePt: 7 });
  });
  return [
    s(
      'g',
      { transform: turn, class: `piece ${piece.kind}` },
      s('rect', {
        class: 'bleed',
        x: mm(-bleed),
        y: mm(-bleed),
        width: mm(width + 2 * bleed),
        height: mm(height + 2 * bleed),
        rx: mm(radius === 0 ? 0 : radius + bleed),
      }),
      box({ x: 0, y: 0 }, width, height, radius, { width: 0.1 }),
      ...piece.nodes,
      ...piece.folds.map(fold =>
        line({ x: fold, y: 0 }, { x: fold, y: height }, { width: STROKE.hair, dash: '1.6 1.2' }),
      ),
      ...foldMarks(piece.folds, height, bleed),
      ...cutMarks(width, height, bleed),
      ...under,
    ),
  ];
}

/** Two lines at each corner, in line with the cut edges and outside the bleed. */
function cutMarks(width: number, height: number, bleed: number): readonly Element[] {
  const near = bleed + MARK.gap;
  const far = near + MARK.length;
  const hair = { width: STROKE.hair };
  return [0, width].flatMap(x =>
    [0, height].flatMap(y => {
      const outX = x === 0 ? -1 : 1;
      const outY = y === 0 ? -1 : 1;
      return [
        line({ x: x + outX * near, y }, { x: x + outX * far, y }, hair),
        line({ x, y: y + outY * near }, { x, y: y + outY * far }, hair),
      ];
    }),
  );
}

function foldMarks(folds: readonly number[], height: number, bleed: number): readonly Element[] {
  const near = bleed + MARK.gap;
  const style = { width: STROKE.hair, dash: '0.8 0.6' };
  return folds.flatMap(x => [
    line({ x, y: -near }, { x, y: -near - MARK.length }, style),
    line({ x, y: height + near }, { x, y: height + near + MARK.length }, style),
  ]);
}

/** 100 mm, a tick each 5 mm, numbers each 10 mm. */
function drawRuler({ x, y }: Point): readonly Element[] {
  const hair = { width: STROKE.hair };
  const ticks = Array.from({ length: RULER.length / 5 + 1 }, (_, index) => {
    const at = x + index * 5;
    return line({ x: at, y }, { x: at, y: y - (index % 2 === 0 ? 3 : 1.8) }, hair);
  });
  const numbers = Array.from({ length: RULER.length / 10 + 1 }, (_, index) =>
    label(String(index * 10), { x: x + index * 10, y: y + ptToMm(7) + 0.6 }, { sizePt: 7, anchor: 'middle' }),
  );
  return [line({ x, y }, { x: x + RULER.length, y }, hair), ...ticks, ...numbers];
}
