import { pageNumbers, readObject, readPdf } from './pdf-file.js';

/** Where the anchors of a printed document came to stand. */
export interface AnchorPages {
  /** Page numbers, from 1, by id; only of anchors that a link of the document points at. */
  readonly pages: ReadonlyMap<string, number>;
  /** Pages in all. */
  readonly count: number;
}

/** Reads the named destinations (ISO 32000-1, 12.3.2.3) that the browser writes for links within a document. */
export function readAnchorPages(pdf: Uint8Array): AnchorPages {
  const file = readPdf(Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength));
  const numbers = pageNumbers(file);
  const destinations = /\/Dests (\d+) 0 R/.exec(readObject(file, file.root))?.[1];
  const text = destinations === undefined ? '' : readObject(file, Number(destinations));
  const pages = new Map<string, number>();
  for (const [, id = '', page] of text.matchAll(/\/(\S+) \[(\d+) 0 R/g)) {
    const index = numbers.indexOf(Number(page));
    if (index >= 0) pages.set(id, index + 1);
  }
  return { pages, count: numbers.length };
}
