import type { BuiltFile, DocumentName, PrintableDocument } from '../../documents/document.js';
import type { Thumbnail } from '../../documents/index-page/index-page.js';
import type { ManualPage } from '../../language/model.js';
import { makeBooklet } from '../../print/booklet.js';
import { NoBrowserError, PrintError } from '../../print/errors.js';
import { type PrintedDocument, printDocuments } from '../../print/print.js';
import { CliError } from '../errors.js';

export interface PrintedSet {
  /** The PDFs, and the HTML of each document as it was printed. */
  readonly files: readonly BuiltFile[];
  readonly thumbnails: readonly Thumbnail[];
  /** The sentence that says so, where there is no browser; then there are no PDFs. */
  readonly withoutBrowser: string | null;
}

/**
 * The PDFs of the documents, and of the manual its booklet, which is laid out while the next document prints.
 * Throws CliError if a document can’t be printed.
 */
export async function printSet(
  printables: readonly PrintableDocument[],
  manualPage: ManualPage,
  onPrinted: (name: string) => void,
): Promise<PrintedSet> {
  const booklets: Promise<BuiltFile>[] = [];
  try {
    const printed = await printDocuments(printables, {
      thumbnails: true,
      onPrinted({ name, pdf }) {
        onPrinted(name);
        if (name === 'manual') booklets.push(bookletOf(pdf, manualPage));
      },
    });
    const files = printed.flatMap(({ name, html, pdf }) => [
      { name: `${name}.html`, content: html },
      { name: `${name}.pdf`, content: pdf },
    ]);
    return {
      files: [...files, ...(await Promise.all(booklets))],
      thumbnails: printed.flatMap(thumbnailOf),
      withoutBrowser: null,
    };
  } catch (error) {
    await Promise.allSettled(booklets);
    if (error instanceof NoBrowserError) return { files: [], thumbnails: [], withoutBrowser: error.message };
    if (error instanceof PrintError) throw new CliError(`${error.message} The set is left as it was.`);
    throw error;
  }
}

async function bookletOf(pdf: Uint8Array, page: ManualPage): Promise<BuiltFile> {
  const booklet = await makeBooklet(pdf, { page });
  return { name: 'manual-booklet.pdf', content: booklet.pdf };
}

function thumbnailOf({ name, thumbnail }: PrintedDocument<DocumentName>): readonly Thumbnail[] {
  return thumbnail === undefined ? [] : [{ document: name, page: 1, ...thumbnail }];
}
