import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A piece of text of a page, as pdf.js (an independent reader) finds it; pt from the page's lower left corner. */
export interface PdfText {
  readonly text: string;
  readonly x: number;
  /** Of the baseline. */
  readonly y: number;
  readonly width: number;
  /** The size of the type. */
  readonly size: number;
}

export interface PdfPage {
  /** pt */
  readonly width: number;
  /** pt */
  readonly height: number;
  readonly texts: readonly PdfText[];
}

/** Reads the pages of a PDF with pdf.js. */
export function readPdfPages(pdf: Uint8Array): Promise<readonly PdfPage[]> {
  return withPdf(pdf, async document => {
    const pages: PdfPage[] = [];
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
      const content = await page.getTextContent();
      const texts = content.items.flatMap((item): PdfText[] =>
        'str' in item && item.str.trim() !== ''
          ? [
              {
                text: item.str,
                x: Number(item.transform[4]) - left,
                y: Number(item.transform[5]) - bottom,
                width: item.width,
                size: Math.hypot(Number(item.transform[2]), Number(item.transform[3])),
              },
            ]
          : [],
      );
      pages.push({ width: right - left, height: top - bottom, texts });
    }
    return pages;
  });
}

/** Opens a PDF with pdf.js for a question of its own. */
export async function withPdf<T>(
  pdf: Uint8Array,
  ask: (document: PDFDocumentProxy) => Promise<T>,
): Promise<T> {
  // pdf.js takes the bytes away from their owner: it gets a copy.
  const task = getDocument({ data: Uint8Array.from(pdf), verbosity: 0, useSystemFonts: false });
  try {
    return await ask(await task.promise);
  } finally {
    await task.destroy();
  }
}
