import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { manualMargins } from '../../src/documents/page/furniture.js';
import { papers } from '../../src/documents/page/paper.js';
import { launchBrowser, type PrintBrowser } from '../../src/print/launch.js';
import { printDocuments } from '../../src/print/print.js';
import { readPdfPages } from '../support/pdf.js';
import { browserTool } from '../support/tools.js';
import { findOverflow } from './find-overflow.js';
import { documentsOf, inputOf, SCHEMES, withGame } from './inputs.js';

let browser: PrintBrowser | undefined;

const openPage = async () => {
  browser ??= await launchBrowser(await browserTool(), 110_000);
  return browser.openPage();
};

beforeAll(async () => {
  await openPage().catch(() => undefined);
});
afterAll(() => browser?.close());

const languages = ['en', 'de', 'fr'];
const pages = ['A5', 'half letter', 'A4', 'letter'] as const;

describe.each(Object.keys(SCHEMES))('%s', name => {
  const text = (SCHEMES[name] as () => string)();

  it.each(languages)('nothing leaves its box or lies on something else (%s)', async language => {
    const page = await openPage();
    const manualPage = pages[languages.indexOf(language)] ?? 'A5';
    const sheetPaper = language === 'fr' ? 'letter' : 'A4';
    const input = inputOf(
      withGame(text, { Language: language, 'Manual page': manualPage, 'Sheet paper': sheetPaper }),
    );
    for (const document of documentsOf(input)) {
      await page.setContent(document.html, { waitUntil: 'load' });
      const { inner, outer } = manualMargins[manualPage];
      const width =
        document.name === 'manual' ? papers[manualPage].widthMm - inner - outer : papers[sheetPaper].widthMm;
      expect(await findOverflow(page, width), document.name).toEqual([]);
    }
    await page.close();
  });

  it('every page keeps its margins, and no line of text lies on another', async () => {
    const found = await browserTool();
    const [manual] = documentsOf(inputOf(text));
    if (manual === undefined) throw new Error('no manual');
    const [printed] = await printDocuments([manual], { browser: found });
    for (const [index, { width, texts }] of (
      await readPdfPages(printed?.pdf ?? new Uint8Array())
    ).entries()) {
      const margin = (12 / 25.4) * 72;
      for (const { x, width: length, text: words } of texts) {
        expect(x, `page ${index + 1}: ${words}`).toBeGreaterThan(margin);
        expect(x + length, `page ${index + 1}: ${words}`).toBeLessThan(width - margin);
      }
      const lines = texts.toSorted((a, b) => a.y - b.y);
      lines.forEach((line, at) => {
        for (const other of lines.slice(at + 1)) {
          if (other.y - other.size * 0.2 >= line.y + line.size * 0.68) break;
          const isBeside = other.x >= line.x + line.width - 0.6 || line.x >= other.x + other.width - 0.6;
          expect(isBeside, `page ${index + 1}: “${line.text}” and “${other.text}”`).toBe(true);
        }
      });
    }
  });
});

describe('type', () => {
  it.each(Object.keys(SCHEMES))('is nowhere under 7 pt, in no document of %s', async name => {
    const found = await browserTool();
    const documents = documentsOf(inputOf((SCHEMES[name] as () => string)()));
    for (const { name: document, pdf } of await printDocuments(documents, { browser: found })) {
      const texts = (await readPdfPages(pdf)).flatMap(page => page.texts);
      const small = texts.filter(({ size }) => size < 6.99);
      expect(
        small.map(({ text, size }) => `${size.toFixed(2)} pt: ${text}`),
        document,
      ).toEqual([]);
    }
  });
});

describe('the check itself', () => {
  it('sees text that leaves its box, its drawing or the page, and texts on each other', async () => {
    const page = await openPage();
    await page.setContent(`<body style="margin:0"><p style="width:20px;white-space:nowrap">a long sentence</p>
      <svg width="20" height="20"><text x="5" y="15">drawn</text></svg>
      <div style="position:absolute;top:300px">one</div><div style="position:absolute;top:302px">two</div></body>`);
    const faults = await findOverflow(page, 100);
    expect(faults.some(fault => fault.includes('leaves its p'))).toBe(true);
    expect(faults.some(fault => fault.includes('leaves its svg'))).toBe(true);
    expect(faults.some(fault => fault.includes('lie on each other'))).toBe(true);
    await page.close();
  });
});
