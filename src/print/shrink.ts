import { constants, inflateSync } from 'node:zlib';
import type { Page } from 'puppeteer-core';
import { pxPerMm } from '../documents/page/paper.js';
import { type PdfFile, pageNumbers, readObject, readPdf } from './pdf-file.js';

/** User space units a CSS pixel becomes on the page before the browser's own 0.24 (72/300): 300/96. */
const trueScale = 3.125;

/** How far the scale may be off: 0.01 %, 0.03 mm on A4. */
const tolerance = 1e-4;

/** How a page was printed. */
export interface PrintScale {
  /** 1 is true size. */
  readonly scale: number;
  /** Width of the page between its margins, CSS pixels. */
  readonly contentWidthPx: number;
}

/**
 * The scale the pages were printed at if it is not true size. When one element is wider than its page the
 * browser shrinks every page without a word; the content streams tell.
 */
export function findShrink(pdf: Uint8Array): PrintScale | undefined {
  const file = readPdf(Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength));
  return pageNumbers(file)
    .map(number => readPageScale(file, number))
    .find(page => page && Math.abs(page.scale - 1) > tolerance);
}

/**
 * A page's content begins with the browser's own scale, a clip to the area between the margins and the scale
 * of the document. Undefined for a page with nothing on it.
 */
function readPageScale(file: PdfFile, pageNumber: number): PrintScale | undefined {
  const contents = /\/Contents (\d+) 0 R/.exec(readObject(file, pageNumber))?.[1];
  const range = file.objects.get(Number(contents));
  if (!range) return undefined;
  const start = file.bytes.indexOf('stream\n', range.start) + 'stream\n'.length;
  const head = file.bytes.subarray(start, Math.min(range.end, start + 400));
  const text = inflateSync(head, { finishFlush: constants.Z_SYNC_FLUSH }).toString('latin1');
  const scale = [...text.matchAll(/^(\S+) 0 0 \S+ \S+ \S+ cm$/gm)][1]?.[1];
  const width = /^\S+ \S+ (\S+) \S+ re$/m.exec(text)?.[1];
  if (scale === undefined || width === undefined) return undefined;
  return { scale: Number(scale) / trueScale, contentWidthPx: Number(width) / trueScale };
}

/** An element that does not fit its page. */
export interface Overflow {
  /** `table.bits “first words”`. */
  readonly element: string;
  /** How much wider than the page's content area it needs to be, mm. */
  readonly excessMm: number;
}

/**
 * Finds the element that made the browser shrink the pages: the innermost one that reaches furthest to the
 * right in a window as wide as the page. Undefined if in such a window everything fits.
 */
export async function findOverflow(
  page: Page,
  { contentWidthPx }: PrintScale,
): Promise<Overflow | undefined> {
  await page.emulateMediaType('print');
  await page.setViewport({ width: Math.floor(contentWidthPx), height: 1000 });
  const widest = await page.$$eval('body *', elements => {
    let found: { element: string; right: number } | undefined;
    for (const element of elements) {
      const { left, right: edge } = element.getBoundingClientRect();
      const right = Math.max(edge, left + element.scrollWidth);
      if (found && right < found.right) continue;
      const text = (element.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 40);
      const className = (element.getAttribute('class') ?? '').trim().replace(/\s+/g, '.');
      const name =
        element.localName + (element.id ? `#${element.id}` : '') + (className ? `.${className}` : '');
      found = { element: text ? `${name} “${text}”` : name, right };
    }
    return found;
  });
  const excessMm = ((widest?.right ?? 0) - contentWidthPx) / pxPerMm;
  return widest && excessMm > 0 ? { element: widest.element, excessMm } : undefined;
}
