/** A sheet or page size, upright. */
export interface Paper {
  readonly name: PaperName;
  /** Short side, mm. */
  readonly widthMm: number;
  /** Long side, mm. */
  readonly heightMm: number;
  /** Where the size is laid down. */
  readonly source: string;
  /** The paper that holds two such pages side by side, where there is one in this table. */
  readonly doubled?: PaperName;
}

export type PaperName = 'A3' | 'A4' | 'A5' | 'half letter' | 'letter' | 'tabloid';

const iso = 'ISO 216:2007';
const ansi = 'ANSI/ASME Y14.1';

export const papers: Readonly<Record<PaperName, Paper>> = {
  A5: { name: 'A5', widthMm: 148, heightMm: 210, source: iso, doubled: 'A4' },
  A4: { name: 'A4', widthMm: 210, heightMm: 297, source: iso, doubled: 'A3' },
  A3: { name: 'A3', widthMm: 297, heightMm: 420, source: iso },
  'half letter': {
    name: 'half letter',
    widthMm: 139.7,
    heightMm: 215.9,
    source: `half of ${ansi} size A`,
    doubled: 'letter',
  },
  letter: { name: 'letter', widthMm: 215.9, heightMm: 279.4, source: `${ansi} size A`, doubled: 'tabloid' },
  tabloid: { name: 'tabloid', widthMm: 279.4, heightMm: 431.8, source: `${ansi} size B` },
};

/** Points in a millimetre: a point is 1/72 inch (ISO 32000-1, 8.3.2.3), an inch 25.4 mm. */
export const ptPerMm = 72 / 25.4;

/** CSS pixels in a millimetre: a pixel is 1/96 inch (CSS Values and Units 3, 6.2). */
export const pxPerMm = 96 / 25.4;

export function mmToPt(mm: number): number {
  return mm * ptPerMm;
}

/** A size in mm, upright or lying. */
export interface SizeMm {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** The paper turned on its side. */
export function landscape(paper: SizeMm): SizeMm {
  return { widthMm: paper.heightMm, heightMm: paper.widthMm };
}

/** Finds the paper, upright or lying, that a size is meant to be: each side within `toleranceMm`. */
export function nearestPaper(size: SizeMm, toleranceMm = 0.5): SizeMm | undefined {
  const isNear = (paper: SizeMm) =>
    Math.abs(paper.widthMm - size.widthMm) <= toleranceMm &&
    Math.abs(paper.heightMm - size.heightMm) <= toleranceMm;
  return Object.values(papers)
    .flatMap((paper): SizeMm[] => [paper, landscape(paper)])
    .find(isNear);
}
