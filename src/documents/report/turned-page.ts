import type { SheetPaper } from '../../language/model.js';
import { papers } from '../page/paper.js';

/** A page on its side, for the matrix; heads and feet are those of the other pages. */
export function turnedPage(paper: SheetPaper): string {
  const { widthMm, heightMm } = papers[paper];
  return `@page wall{size:${heightMm}mm ${widthMm}mm}`;
}
