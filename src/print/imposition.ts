/** Two pages side by side on one side of a sheet, by number from 1; undefined is a blank that fills up. */
export type Spread = readonly [left: number | undefined, right: number | undefined];

/** One sheet of a saddle-stitched booklet. */
export interface BookletSheet {
  /** From 1, the outermost, inwards. */
  readonly number: number;
  readonly front: Spread;
  readonly back: Spread;
  /** How far the sheet's pages stand out beyond those of the outermost sheet once folded, mm. */
  readonly creepMm: number;
}

/** Thickness of one sheet of 80 g/m² paper, mm (from memory: 0.10 to 0.11). */
export const usualCaliperMm = 0.1;

/**
 * Orders pages for a booklet that is folded once and stitched through the fold, printed on both sides and
 * turned over the short edge. The number of pages is filled up to a multiple of four with blanks at the end.
 *
 *     sheet 1 of 8 pages   front  8 | 1     back  2 | 7
 *     sheet 2              front  6 | 3     back  4 | 5
 */
export function imposeSaddleStitch(
  pageCount: number,
  caliperMm: number = usualCaliperMm,
): readonly BookletSheet[] {
  const sheetCount = Math.ceil(pageCount / 4);
  const filled = sheetCount * 4;
  const page = (number: number) => (number <= pageCount ? number : undefined);
  return Array.from({ length: sheetCount }, (_, index) => ({
    number: index + 1,
    front: [page(filled - 2 * index), page(2 * index + 1)],
    back: [page(2 * index + 2), page(filled - 2 * index - 1)],
    creepMm: index * caliperMm,
  }));
}
