import { s } from 'hastscript';
import { MaxRectsPacker } from 'maxrects-packer/dist/maxrects-packer.mjs';
import { group, mm } from '../figures/drawing.js';
import type { Piece } from './piece.js';

/** A piece with its place on a sheet: upper left corner of its cut edge, mm from the sheet's. */
export interface PlacedPiece {
  readonly piece: Piece;
  readonly x: number;
  readonly y: number;
  /** Turned by 90° to the right: then `x`, `y` is the corner of the turned piece. */
  readonly isTurned: boolean;
}

export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Length of a cut mark and its distance from the bleed, mm. */
export const MARK = { length: 4, gap: 1 } as const;
/** Height of a line under a piece, mm. */
export const UNDER_LINE = 3.4;

/** What a piece needs around it on each side: bleed, gap and mark, mm. */
export const marginOf = (bleed: number): number => bleed + MARK.gap + MARK.length;

/**
 * The pieces on as few sheets as the packer finds, turned only where that saves one; kinds are kept in their order.
 * A piece larger than the area is
 * printed in parts to be joined. The same pieces give the same sheets.
 */
export function packPieces(
  pieces: readonly Piece[],
  area: Area,
  bleed: number,
): readonly (readonly PlacedPiece[])[] {
  const margin = marginOf(bleed);
  const parts = pieces.flatMap(each => partsOf(each, area, margin));
  const turned = pack(parts, area, margin, true);
  const isTooWide = (piece: Piece) => {
    const { width, height } = spaceOf(piece, margin);
    return width > area.width || height > area.height;
  };
  if (parts.some(isTooWide)) return turned;
  const upright = pack(parts, area, margin, false);
  return upright.length > turned.length ? turned : upright;
}

function pack(
  parts: readonly Piece[],
  area: Area,
  margin: number,
  allowRotation: boolean,
): readonly (readonly PlacedPiece[])[] {
  const packer = new MaxRectsPacker<Piece>(area.width, area.height, 0, {
    // A sheet has its whole size from the start.
    smart: false,
    pot: false,
    square: false,
    allowRotation,
    border: 0,
  });
  for (const piece of parts) {
    const { width, height } = spaceOf(piece, margin);
    packer.add(width, height, piece);
  }
  return packer.bins.map(bin =>
    bin.rects.map(rect => ({
      piece: rect.data,
      x: area.x + rect.x + margin,
      y: area.y + rect.y + margin,
      isTurned: rect.rot,
    })),
  );
}

/** What a piece takes up with its marks and the lines under it, mm. */
const spaceOf = ({ width, height, under }: Piece, margin: number) => ({
  width: width + 2 * margin,
  height: height + 2 * margin + under.length * UNDER_LINE,
});

/** The piece itself where it fits, upright or turned; else parts of it, side by side and one below the other. */
function partsOf(piece: Piece, area: Area, margin: number): readonly Piece[] {
  const { width, height } = spaceOf(piece, margin);
  const fits = (w: number, h: number) => w <= area.width && h <= area.height;
  if (fits(width, height) || fits(height, width)) return [piece];
  const across = Math.ceil(piece.width / (area.width - 2 * margin));
  const down = Math.ceil(piece.height / (area.height - 2 * margin - piece.under.length * UNDER_LINE));
  const size = { width: piece.width / across, height: piece.height / down };
  return Array.from({ length: across * down }, (_, index) => {
    const x = (index % across) * size.width;
    const y = Math.floor(index / across) * size.height;
    return { ...piece, ...size, radius: 0, nodes: [clipped(piece, x, y, size)], folds: [] };
  });
}

/** A window on the piece's art: a nested svg clips what is outside it. */
function clipped(
  piece: Piece,
  x: number,
  y: number,
  size: { readonly width: number; readonly height: number },
) {
  return s(
    'svg',
    { width: mm(size.width), height: mm(size.height), overflow: 'hidden' },
    group(piece.nodes, { x: -x, y: -y }),
  );
}
