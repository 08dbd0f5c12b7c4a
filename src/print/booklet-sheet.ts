import { landscape, mmToPt, type PaperName, papers, type SizeMm } from '../documents/page/paper.js';
import { PrintError } from './errors.js';

/** Edges in mm from the sheet's lower left corner. */
export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** Where things lie on one side of a booklet's sheet. */
export interface SheetLayout {
  readonly sheet: Box;
  /** The two pages together. */
  readonly trim: Box;
  /** What may be printed beyond them. */
  readonly bleed: Box;
  /** mm from the sheet's left edge. */
  readonly foldX: number;
}

const markLengthMm = 4;
const markWidthPt = 0.25;
const bleedMm = 3;

/** Sheets and pages whose sizes differ by less are alike, mm. */
const toleranceMm = 0.1;

/**
 * Lays two pages in the middle of a sheet, by default the paper twice their size, lying. Throws PrintError if
 * there is no such paper or the sheet is too small.
 */
export function layOutSheet(pageName: PaperName, chosen?: SizeMm): SheetLayout {
  const page = papers[pageName];
  const doubled = page.doubled && landscape(papers[page.doubled]);
  const size = chosen ?? doubled;
  if (!size) throw new PrintError(`There is no paper twice the size of ${pageName} to print a booklet on.`);
  const left = (size.widthMm - 2 * page.widthMm) / 2;
  const bottom = (size.heightMm - page.heightMm) / 2;
  if (left < -toleranceMm || bottom < -toleranceMm) {
    throw new PrintError(
      `A sheet of ${size.widthMm} × ${size.heightMm} mm does not hold two ${pageName} pages.`,
    );
  }
  const sheet = { left: 0, bottom: 0, right: size.widthMm, top: size.heightMm };
  const trim = { left, bottom, right: size.widthMm - left, top: size.heightMm - bottom };
  const bleed = {
    left: Math.max(0, left - bleedMm),
    bottom: Math.max(0, bottom - bleedMm),
    right: Math.min(sheet.right, trim.right + bleedMm),
    top: Math.min(sheet.top, trim.top + bleedMm),
  };
  return { sheet, trim, bleed, foldX: size.widthMm / 2 };
}

/**
 * The fold marks, dashed, and crop marks, solid, as PDF operators (ISO 32000-1, 8.4 and 8.5). They stand outside
 * the pages where the sheet has room; on a sheet just as large as two pages they are short ticks at its edge.
 * A trimmed edge that is the sheet's own edge needs no mark.
 */
export function drawMarks({ sheet, trim, foldX }: SheetLayout): string {
  const upDown = markEnds(trim.bottom, trim.top, sheet.top);
  const leftRight = markEnds(trim.left, trim.right, sheet.right);
  const cutX = trim.left > toleranceMm ? [trim.left, trim.right] : [];
  const cutY = trim.bottom > toleranceMm ? [trim.bottom, trim.top] : [];
  const folds = upDown.map(([from, to]) => line(foldX, from, foldX, to));
  const cuts = [
    ...cutX.flatMap(x => upDown.map(([from, to]) => line(x, from, x, to))),
    ...cutY.flatMap(y => leftRight.map(([from, to]) => line(from, y, to, y))),
  ];
  return [`q ${markWidthPt} w 0 G`, ...cuts, '[2 1.5] 0 d', ...folds, 'Q'].join('\n');
}

type Segment = readonly [from: number, to: number];

/** Where the marks at both ends of an edge lie along it, mm: outside the bleed if the sheet has room. */
function markEnds(trimFrom: number, trimTo: number, sheetTo: number): readonly Segment[] {
  if (trimFrom < 2) {
    return [
      [0, markLengthMm],
      [sheetTo - markLengthMm, sheetTo],
    ];
  }
  const gap = Math.min(bleedMm, trimFrom / 2);
  const reach = Math.min(trimFrom, gap + markLengthMm);
  return [
    [trimFrom - reach, trimFrom - gap],
    [trimTo + gap, trimTo + reach],
  ];
}

function line(x1: number, y1: number, x2: number, y2: number): string {
  return `${writePt(x1)} ${writePt(y1)} m ${writePt(x2)} ${writePt(y2)} l S`;
}

/** Millimetres as points with four decimals, which is finer than any printer. */
export function writePt(mm: number): string {
  return String(Math.round(mmToPt(mm) * 1e4) / 1e4);
}

/** A box as PDF writes it: left, bottom, right, top in pt. */
export function writeBox({ left, bottom, right, top }: Box): string {
  return `[${[left, bottom, right, top].map(writePt).join(' ')}]`;
}
