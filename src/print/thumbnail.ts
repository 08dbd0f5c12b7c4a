/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import type { Page } from 'puppeteer-core';
import { pageNumbers, readBox, readObject, readPdf } from './pdf-file.js';

/** A picture of a document's first page. */
export interface Thumbnail {
  /** A `data:` URI. */
  readonly image: string;
  /** px as shown; the picture has those of the whole page, for fine screens. */
  readonly width: number;
  readonly height: number;
}

const SHOWN_WIDTH = 176;
/** WebP, 0 to 100. */
const QUALITY = 60;
const pxPerPt = 96 / 72;

/**
 * A small picture of the first page of the document that stands in the browser and was printed as `pdf`: its
 * print styles laid out on one page of the paper's size. Running heads and page numbers are not in it.
 */
export async function takeThumbnail(page: Page, pdf: Uint8Array): Promise<Thumbnail> {
  const { width, height } = firstPageSize(pdf);
  await page.emulateMediaType('print');
  // Only at this scale does the browser draw the same pixels each time.
  await page.setViewport({ width, height, deviceScaleFactor: 1 });
  await page.evaluate(layOutOnPage, height);
  const picture = await page.screenshot({
    type: 'webp',
    quality: QUALITY,
    encoding: 'base64',
    captureBeyondViewport: false,
  });
  return {
    image: `data:image/webp;base64,${picture}`,
    width: SHOWN_WIDTH,
    height: Math.round((height * SHOWN_WIDTH) / width),
  };
}

/** In CSS px. */
function firstPageSize(pdf: Uint8Array): { readonly width: number; readonly height: number } {
  const file = readPdf(Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength));
  const [first = 0] = pageNumbers(file);
  const [left, bottom, right, top] = readBox(readObject(file, first), 'MediaBox');
  return { width: Math.round((right - left) * pxPerPt), height: Math.round((top - bottom) * pxPerPt) };
}

/** Runs in the browser: the margins of `@page` around the content, and nothing of the second page on the first. */
function layOutOnPage(pageHeight: number): void {
  const rules = [...document.styleSheets].flatMap(sheet => [...sheet.cssRules]);
  const page = rules.findLast(rule => rule instanceof CSSPageRule && rule.selectorText === '');
  const { body } = document;
  body.style.boxSizing = 'border-box';
  body.style.margin = '0';
  body.style.padding = page instanceof CSSPageRule ? page.style.margin : '0';
  document.documentElement.style.background = '#fff';
  let isPastFirst = false;
  for (const element of document.querySelectorAll<HTMLElement>('body *')) {
    const { breakAfter, breakBefore } = getComputedStyle(element);
    const { top } = element.getBoundingClientRect();
    if (breakAfter === 'page' && top < pageHeight) element.style.minHeight = `${pageHeight}px`;
    if (breakBefore === 'page' && top > 1) isPastFirst = true;
    if (isPastFirst) element.style.visibility = 'hidden';
  }
}
