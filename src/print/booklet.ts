import { mmToPt, type PaperName, papers, type SizeMm } from '../documents/page/paper.js';
import { drawMarks, layOutSheet, type SheetLayout, writeBox, writePt } from './booklet-sheet.js';
import { PrintError } from './errors.js';
import { type BookletSheet, imposeSaddleStitch, type Spread } from './imposition.js';
import {
  type NewPdf,
  type PdfFile,
  pageNumbers,
  reachableFrom,
  readBox,
  readDictionary,
  readObject,
  readPdf,
  writeNewPdf,
} from './pdf-file.js';

export interface BookletOptions {
  /** The size of one page; the sheet is the paper that holds two of them, lying. */
  readonly page: PaperName;
  /** A larger sheet than that, mm: gives room for bleed and for crop marks outside the pages. */
  readonly sheet?: SizeMm;
  /** Thickness of one sheet, mm; that of 80 g/m² paper if left out. */
  readonly caliperMm?: number;
}

export interface Booklet {
  readonly pdf: Uint8Array;
  readonly sheets: readonly BookletSheet[];
  /** What the innermost sheet stands out beyond the outermost and is trimmed off, mm. */
  readonly creepMm: number;
}

/** A page of the manual, made a drawing that can be placed. */
interface PlacedPage {
  /** The object that holds it. */
  readonly object: number;
  /** Its lower left corner in its own coordinates, pt. */
  readonly origin: readonly [x: number, y: number];
}

/**
 * Puts the pages of a PDF that printDocuments made two up in saddle-stitch order, at true size, with fold and
 * crop marks and trim and bleed boxes. For the printer: tags, outline and links stay with the plain PDF. The
 * same bytes in give the same bytes out. Throws PrintError if the page has no double paper or the sheet is too
 * small. Works on the objects of the file, which takes some milliseconds; loading a general library takes half
 * a second.
 */
export async function makeBooklet(manual: Uint8Array, options: BookletOptions): Promise<Booklet> {
  const layout = layOutSheet(options.page, options.sheet);
  const source = readPdf(Buffer.from(manual));
  const numbers = pageNumbers(source);
  const sheets = imposeSaddleStitch(numbers.length, options.caliperMm);
  const sides = sheets.flatMap(({ front, back }) => [front, back]);
  const pdf = writeNewPdf(source, imposeFile(source, numbers, sides, layout, papers[options.page]));
  return { pdf, sheets, creepMm: sheets.at(-1)?.creepMm ?? 0 };
}

function imposeFile(
  source: PdfFile,
  pageObjects: readonly number[],
  sides: readonly Spread[],
  layout: SheetLayout,
  page: SizeMm,
): NewPdf {
  const objects = new Map<number, string>();
  const placed = pageObjects.map(number => placePage(source, number, page, objects));
  for (const number of reachableFrom(source, [...objects.values()])) {
    if (!objects.has(number)) objects.set(number, readObject(source, number));
  }
  objects.set(source.info, readObject(source, source.info));
  let next = Math.max(...source.objects.keys());
  const add = (write: (number: number) => string): number => {
    next += 1;
    objects.set(next, `${next} 0 obj\n${write(next)}\nendobj\n`);
    return next;
  };
  const tree = add(() => '');
  const marks = drawMarks(layout);
  const kids = sides.map(side => {
    const contents = add(() => writeStream(`${drawSpread(side, placed, layout)}${marks}\n`));
    return add(() => writeSide(side, placed, layout, contents, tree));
  });
  const kidList = kids.map(number => `${number} 0 R`).join(' ');
  objects.set(tree, `${tree} 0 obj\n<</Type /Pages\n/Count ${kids.length}\n/Kids [${kidList}]>>\nendobj\n`);
  const root = add(() => writeCatalog(source, tree, objects));
  return { objects, root, info: source.info };
}

/** Makes a page's content a form XObject (ISO 32000-1, 8.10) that is cut to the page's size. */
function placePage(source: PdfFile, number: number, size: SizeMm, objects: Map<number, string>): PlacedPage {
  const page = readObject(source, number);
  const contents = Number(/\/Contents (\d+) 0 R/.exec(page)?.[1]);
  const [left, , , top] = readBox(page, 'MediaBox');
  const box = [left, top - mmToPt(size.heightMm), left + mmToPt(size.widthMm), top];
  const resources = readDictionary(page, 'Resources');
  const form = `<</Type /XObject\n/Subtype /Form\n/BBox [${box.map(round).join(' ')}]\n/Resources ${resources}\n`;
  const content = readObject(source, contents);
  if (!/^\d+ 0 obj\s*<</.test(content))
    throw new PrintError('The pages of the manual can’t be put on sheets.');
  objects.set(
    contents,
    content.replace('<<', () => form),
  );
  return { object: contents, origin: [left, top - mmToPt(size.heightMm)] };
}

function drawSpread([left, right]: Spread, placed: readonly PlacedPage[], layout: SheetLayout): string {
  const draw = (page: number | undefined, xMm: number) => {
    const drawing = page === undefined ? undefined : placed[page - 1];
    if (!drawing) return '';
    const x = round(mmToPt(xMm) - drawing.origin[0]);
    const y = round(mmToPt(layout.trim.bottom) - drawing.origin[1]);
    return `q 1 0 0 1 ${x} ${y} cm /P${page} Do Q\n`;
  };
  return draw(left, layout.trim.left) + draw(right, layout.foldX);
}

function writeSide(
  side: Spread,
  placed: readonly PlacedPage[],
  { sheet, trim, bleed }: SheetLayout,
  contents: number,
  tree: number,
): string {
  const drawings = side.flatMap(page => {
    const drawing = page === undefined ? undefined : placed[page - 1];
    return drawing ? [`/P${page} ${drawing.object} 0 R`] : [];
  });
  return [
    '<</Type /Page',
    `/MediaBox [0 0 ${writePt(sheet.right)} ${writePt(sheet.top)}]`,
    `/TrimBox ${writeBox(trim)}`,
    `/BleedBox ${writeBox(bleed)}`,
    `/Resources <</XObject <<${drawings.join(' ')}>>>>`,
    `/Contents ${contents} 0 R`,
    `/Parent ${tree} 0 R>>`,
  ].join('\n');
}

/** Takes title, author and language over from the manual. */
function writeCatalog(source: PdfFile, tree: number, objects: Map<number, string>): string {
  const catalog = readObject(source, source.root);
  const metadata = /\/Metadata (\d+) 0 R/.exec(catalog)?.[1];
  if (metadata !== undefined) objects.set(Number(metadata), readObject(source, Number(metadata)));
  const entries = [
    '/Type /Catalog',
    '/Version /1.7', // the first with the two wishes to the printer below
    `/Pages ${tree} 0 R`,
    metadata === undefined ? '' : `/Metadata ${metadata} 0 R`,
    '/ViewerPreferences <</DisplayDocTitle true /PrintScaling /None /Duplex /DuplexFlipShortEdge>>',
    /\/Lang <[^>]*>/.exec(catalog)?.[0] ?? '',
  ];
  return `<<${entries.filter(Boolean).join('\n')}>>`;
}

function writeStream(text: string): string {
  return `<</Length ${text.length}>> stream\n${text}endstream`;
}

function round(pt: number): number {
  return Math.round(pt * 1e4) / 1e4;
}
