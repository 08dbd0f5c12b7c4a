import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { OPS, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { fontFaceCss, fontStack } from '../../src/documents/page/fonts.js';
import { type PaperName, papers, ptPerMm } from '../../src/documents/page/paper.js';
import { makeBooklet } from '../../src/print/booklet.js';
import { PrintError } from '../../src/print/errors.js';
import { printDocuments } from '../../src/print/print.js';
import { readPdfPages, withPdf } from '../support/pdf.js';
import { browserTool, tool } from '../support/tools.js';

interface Manual {
  readonly pageCount: number;
  readonly paper: PaperName;
}

/** Manuals whose pages say their number 20 mm from the left edge. */
async function printManuals(manuals: readonly Manual[]): Promise<readonly Uint8Array[]> {
  const jobs = manuals.map(({ pageCount, paper }) => {
    const { widthMm, heightMm } = papers[paper];
    const text = (page: number) => `<text x="20mm" y="30mm">page ${page + 1}</text>`;
    const svg = (page: number) => `<svg width="${widthMm}mm" height="${heightMm - 1}mm">${text(page)}</svg>`;
    const style = `${fontFaceCss()}@page{size:${widthMm}mm ${heightMm}mm;margin:0}body{margin:0}svg{display:block;break-inside:avoid;font:12pt ${fontStack.text}}`;
    const pages = Array.from({ length: pageCount }, (_, page) => svg(page)).join('');
    return { name: 'manual', title: 'The “Quay”', html: `<!doctype html><style>${style}</style>${pages}` };
  });
  const printed = await printDocuments(jobs, { browser: await browserTool() });
  return printed.map(({ pdf }) => pdf);
}

async function printManual(pageCount: number, paper: PaperName): Promise<Uint8Array> {
  const [manual] = await printManuals([{ pageCount, paper }]);
  return manual ?? new Uint8Array();
}

const placesOf = async (pdf: Uint8Array) =>
  (await readPdfPages(pdf)).map(({ width, texts }) =>
    texts.map(({ text, x }) => ({ page: Number(text.slice(5)), isLeft: x < width / 2 })),
  );

type Line = readonly [x1: number, y1: number, x2: number, y2: number];

/** The straight lines of the first page outside its drawings, in mm. */
async function readLines(document: PDFDocumentProxy): Promise<readonly Line[]> {
  const { fnArray, argsArray } = await (await document.getPage(1)).getOperatorList();
  let depth = 0;
  return fnArray.flatMap((operator, index): readonly Line[] => {
    if (operator === OPS.paintFormXObjectBegin) depth += 1;
    if (operator === OPS.paintFormXObjectEnd) depth -= 1;
    if (operator !== OPS.constructPath || depth > 0) return [];
    // [painting operator, [path], [least x, least y, greatest x, greatest y]]
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = [...(argsArray[index]?.[2] ?? [])].map(
      pt => Math.round((Number(pt) / ptPerMm) * 1000) / 1000,
    );
    return [[x1, y1, x2, y2]];
  });
}

describe('booklet', () => {
  test('1 to 40 pages come in order, read with pdf.js', async () => {
    const counts = Array.from({ length: 40 }, (_, index) => index + 1);
    const manuals = await printManuals(counts.map(pageCount => ({ pageCount, paper: 'A5' })));
    for (const [index, manual] of manuals.entries()) {
      const count = index + 1;
      const { pdf, sheets } = await makeBooklet(manual, { page: 'A5' });
      const sides = await placesOf(pdf);
      expect(sides).toHaveLength(2 * Math.ceil(count / 4));
      expect(sheets).toHaveLength(Math.ceil(count / 4));
      // A reader pages inwards (right of the front, left of the back), then outwards.
      const at = (side: number, isLeft: boolean) => sides[side]?.find(place => place.isLeft === isLeft)?.page;
      const inwards = sheets.flatMap((_, sheet) => [at(2 * sheet, false), at(2 * sheet + 1, true)]);
      const outwards = sheets
        .flatMap((_, sheet) => [at(2 * sheet, true), at(2 * sheet + 1, false)])
        .reverse();
      const read = [...inwards, ...outwards].filter(page => page !== undefined);
      expect(read).toEqual(Array.from({ length: count }, (_, page) => page + 1));
    }
  });

  test.each([
    ['A5', 297, 210],
    ['half letter', 279.4, 215.9],
    ['A4', 420, 297],
    ['letter', 431.8, 279.4],
  ] as const)('%s goes on a sheet of %d × %d mm at true size', async (page, width, height) => {
    const { pdf } = await makeBooklet(await printManual(4, page), { page });
    const [side] = await readPdfPages(pdf);
    expect(side?.width).toBeCloseTo(width * ptPerMm, 2);
    expect(side?.height).toBeCloseTo(height * ptPerMm, 2);
    const right = side?.texts.find(({ text }) => text === 'page 1');
    expect(right?.x).toBeCloseTo((width / 2 + 20) * ptPerMm, 1);
    expect(right?.y).toBeCloseTo((height - 30) * ptPerMm, 1);
    expect(right?.size).toBeCloseTo(12, 3);
  });

  test('trim and bleed boxes, read with poppler', async () => {
    const pdfinfo = tool('pdfinfo');
    const folder = mkdtempSync(join(tmpdir(), 'booklet-'));
    try {
      const sheet = { widthMm: 330, heightMm: 240 };
      const { pdf } = await makeBooklet(await printManual(5, 'A5'), { page: 'A5', sheet });
      writeFileSync(join(folder, 'b.pdf'), pdf);
      const told = execFileSync(pdfinfo, ['-box', join(folder, 'b.pdf')], { encoding: 'utf8' });
      const box = (name: string) =>
        (new RegExp(`^${name}:(.*)$`, 'm').exec(told)?.[1] ?? '')
          .trim()
          .split(/\s+/)
          .map(pt => Number(pt) / ptPerMm);
      const near = (name: string, wanted: readonly number[]) =>
        expect(box(name).map((mm, index) => Math.abs(mm - (wanted[index] ?? 0)) < 0.1)).toEqual([
          true,
          true,
          true,
          true,
        ]);
      near('MediaBox', [0, 0, 330, 240]);
      near('TrimBox', [17, 15, 313, 225]);
      near('BleedBox', [14, 12, 316, 228]);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test('the same manual gives the same bytes', async () => {
    const manual = await printManual(9, 'A4');
    const [first, second] = [
      await makeBooklet(manual, { page: 'A4' }),
      await makeBooklet(manual, { page: 'A4' }),
    ];
    expect(Buffer.compare(first.pdf, second.pdf)).toBe(0);
  });

  test('fold and crop marks stand where they should, read with pdf.js', async () => {
    const sheet = { widthMm: 330, heightMm: 240 };
    const { pdf } = await makeBooklet(await printManual(4, 'A5'), { page: 'A5', sheet });
    const lines = await withPdf(pdf, document => readLines(document));
    const upright = lines.filter(([x1, , x2]) => x1 === x2);
    const lying = lines.filter(([, y1, , y2]) => y1 === y2);
    const near = (a: number, b: number) => Math.abs(a - b) < 0.1;
    // The trimmed pair of pages is 296 × 210 mm in the middle of 330 × 240; marks stay out of 3 mm of bleed.
    for (const x of [17, 165, 313]) expect(upright.filter(([at]) => near(at, x))).toHaveLength(2);
    for (const y of [15, 225]) expect(lying.filter(([, at]) => near(at, y))).toHaveLength(2);
    expect(lines).toHaveLength(10);
    for (const [, from, , to] of upright) expect(to <= 12.01 || from >= 227.99).toBe(true);
    for (const [from, , to] of lying) expect(to <= 14.01 || from >= 315.99).toBe(true);
  });

  test('title and language are the manual’s', async () => {
    const { pdf } = await makeBooklet(await printManual(1, 'A5'), { page: 'A5' });
    const { info } = await withPdf(pdf, document => document.getMetadata());
    expect(info).toMatchObject({ Title: 'The “Quay”', Creator: 'Leverleaf', Language: 'en' });
  });

  test('creep is told', async () => {
    const { creepMm } = await makeBooklet(await printManual(20, 'A5'), { page: 'A5', caliperMm: 0.15 });
    expect(creepMm).toBeCloseTo(0.6, 9);
  });

  test('a page without a double paper and a sheet too small are errors', async () => {
    const manual = await printManual(1, 'A3');
    await expect(makeBooklet(manual, { page: 'A3' })).rejects.toThrow(PrintError);
    const sheet = { widthMm: 290, heightMm: 210 };
    await expect(makeBooklet(manual, { page: 'A5', sheet })).rejects.toThrow('does not hold two A5 pages');
  });
});
