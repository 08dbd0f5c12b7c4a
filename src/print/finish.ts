import { mmToPt, nearestPaper, ptPerMm } from '../documents/page/paper.js';
import { type DocumentInfo, writeInfo, writeTextString, writeXmp } from './metadata.js';
import { type PdfFile, pageNumbers, readObject, readPdf, writePdf } from './pdf-file.js';
import { numberStructureIds } from './structure-ids.js';

/**
 * Makes the browser's PDF the same bytes each time and true to size: structure ids counted from 1, no dates,
 * page boxes of the exact paper size, and full metadata. Everything else stays as it was written.
 */
export function finishPdf(printed: Uint8Array, info: DocumentInfo): Uint8Array {
  const file = readPdf(Buffer.from(printed));
  const metadata = Math.max(...file.objects.keys()) + 1;
  const changed = new Map<number, string | undefined>([
    ...numberStructureIds(file),
    [file.info, writeObject(file.info, writeInfo(info))],
    [metadata, writeMetadata(metadata, writeXmp(info))],
    [file.root, withMetadata(readObject(file, file.root), metadata, info.language ?? 'en')],
  ]);
  for (const number of pageNumbers(file)) changed.set(number, withExactBox(file, number));
  return writePdf(file, changed);
}

/**
 * The browser rounds a page up to whole pixels, 0.26 mm, and draws from the top left corner: the box is cut to
 * the size of the paper that is meant, at that corner.
 */
function withExactBox(file: PdfFile, number: number): string {
  const page = readObject(file, number);
  return page.replace(/\/MediaBox \[0 0 (\S+) (\S+)\]/, (box, width: string, height: string) => {
    const paper = nearestPaper({ widthMm: Number(width) / ptPerMm, heightMm: Number(height) / ptPerMm });
    if (!paper) return box;
    const bottom = Number(height) - mmToPt(paper.heightMm);
    return `/MediaBox [0 ${writeNumber(bottom)} ${writeNumber(mmToPt(paper.widthMm))} ${writeNumber(Number(height))}]`;
  });
}

/** Without a language of the document the browser writes down its own, which is that of the machine. */
function withMetadata(catalog: string, metadata: number, language: string): string {
  const entries = `/Type /Catalog\n/Metadata ${metadata} 0 R\n/Lang ${writeTextString(language)}`;
  return catalog.replace(/\s*\/Lang \([^)]*\)/, '').replace('/Type /Catalog', () => entries);
}

function writeMetadata(number: number, xmp: string): string {
  const bytes = Buffer.from(xmp, 'utf8');
  const dictionary = `<</Type /Metadata\n/Subtype /XML\n/Length ${bytes.length}>>`;
  return writeObject(number, `${dictionary} stream\n${bytes.toString('latin1')}\nendstream`);
}

function writeObject(number: number, content: string): string {
  return `${number} 0 obj\n${content}\nendobj\n`;
}

function writeNumber(value: number): string {
  return String(Math.round(value * 1e5) / 1e5);
}
