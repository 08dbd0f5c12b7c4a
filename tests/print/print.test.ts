import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fontFaceCss, fontStack } from '../../src/documents/page/fonts.js';
import { landscape, type PaperName, papers, ptPerMm } from '../../src/documents/page/paper.js';
import { type PrintJob, printDocuments } from '../../src/print/print.js';
import { readPdfPages, withPdf } from '../support/pdf.js';
import { browserTool, tool } from '../support/tools.js';

function pageRule(paper: PaperName, isLying = false): string {
  const { widthMm, heightMm } = isLying ? landscape(papers[paper]) : papers[paper];
  return `@page{size:${widthMm}mm ${heightMm}mm;margin:12mm}`;
}

function job(name: string, body: string, paper: PaperName = 'A5', extraCss = ''): PrintJob {
  const css = `${fontFaceCss(body)}${pageRule(paper)}body{margin:0;font:9pt ${fontStack.text}}${extraCss}`;
  const html = `<!doctype html><html lang="de"><head><title>${name}</title><style>${css}</style></head><body>${body}</body></html>`;
  return {
    name,
    html,
    title: `Der Kai – ${name}`,
    author: 'A & B <c>',
    subject: '(Steuerung)',
    language: 'de',
  };
}

const words = 'Größe, l’hôtel d’à côté, Łódź: drücken → loslassen';
const table =
  '<table><thead><tr><th scope="col">Hebel<th scope="col">Was</thead><tbody><tr><td>hoch<td>los</tbody></table>';
const chapter = (title: string) => `<h1>${title}</h1><p>${words}</p><h2>Tafel</h2>${table}`;

async function printOne(printJob: PrintJob): Promise<Uint8Array> {
  const [printed] = await printDocuments([printJob], { browser: await browserTool() });
  return printed?.pdf ?? new Uint8Array();
}

describe('printDocuments', () => {
  test('gives the same bytes in another browser, order and place', async () => {
    const browser = await browserTool();
    const jobs = ['eins', 'zwei', 'drei'].map(name => job(name, chapter(name) + table.repeat(60)));
    const first = await printDocuments(jobs, { browser });
    const second = await printDocuments(jobs.toReversed(), { browser });
    expect(first.map(({ name }) => name)).toEqual(['eins', 'zwei', 'drei']);
    for (const { name, pdf } of first) {
      const other = second.find(document => document.name === name);
      expect(Buffer.compare(pdf, other?.pdf ?? new Uint8Array())).toBe(0);
      expect(Buffer.from(pdf).toString('latin1')).not.toMatch(/CreationDate|ModDate/);
    }
  });

  test('the words come back from the PDF, read with pdf.js and with poppler', async () => {
    const pdf = await printOne(job('worte', chapter('Kapitel')));
    const [page] = await readPdfPages(pdf);
    const text = page?.texts.map(item => item.text).join('');
    // Where the font file changes pdf.js begins a new piece of text.
    expect(text?.replace(/\s/g, '')).toContain(words.replace(/\s/g, ''));
    const pdftotext = tool('pdftotext');
    const folder = mkdtempSync(join(tmpdir(), 'words-'));
    try {
      writeFileSync(join(folder, 'w.pdf'), pdf);
      const told = execFileSync(pdftotext, ['-enc', 'UTF-8', join(folder, 'w.pdf'), '-'], {
        encoding: 'utf8',
      });
      expect(told.replace(/\s+/g, ' ')).toContain(words);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test('title, author, subject, language, outline, tags and table headers are there', async () => {
    const pdf = await printOne(job('sache', chapter('Kapitel')));
    await withPdf(pdf, async document => {
      const { info, metadata } = await document.getMetadata();
      const wanted = {
        Title: 'Der Kai – sache',
        Author: 'A & B <c>',
        Subject: '(Steuerung)',
        Language: 'de',
      };
      expect(info).toMatchObject(wanted);
      expect(metadata?.get('dc:title')).toBe('Der Kai – sache');
      expect(metadata?.get('dc:creator')).toEqual(['A & B <c>']);
      expect(metadata?.get('dc:description')).toBe('(Steuerung)');
      const [chapterEntry] = await document.getOutline();
      expect([chapterEntry?.title, chapterEntry?.items[0]?.title]).toEqual(['Kapitel', 'Tafel']);
      expect((await document.getMarkInfo())?.['Marked']).toBe(true);
      const tree = JSON.stringify(await (await document.getPage(1)).getStructTree());
      for (const role of ['H1', 'H2', 'P', 'Table', 'TR', 'TH', 'TD'])
        expect(tree).toContain(`"role":"${role}"`);
    });
  });

  test.each(Object.keys(papers) as PaperName[])('a page of %s is its size within 0.1 mm', async paper => {
    const pdfinfo = tool('pdfinfo');
    const browser = await browserTool();
    const jobs = [false, true].map(isLying => {
      const upright = job(isLying ? 'lying' : 'upright', '<p>x</p>', paper);
      return isLying
        ? { ...upright, html: upright.html.replace(pageRule(paper), pageRule(paper, true)) }
        : upright;
    });
    const folder = mkdtempSync(join(tmpdir(), 'paper-'));
    try {
      for (const { name, pdf } of await printDocuments(jobs, { browser })) {
        writeFileSync(join(folder, 'p.pdf'), pdf);
        const told = execFileSync(pdfinfo, ['-box', join(folder, 'p.pdf')], { encoding: 'utf8' });
        const box = /^MediaBox:\s+(\S+)\s+(\S+)\s+(\S+)\s+(\S+)$/m.exec(told)?.slice(1).map(Number) ?? [];
        const [left = 0, bottom = 0, right = 0, top = 0] = box;
        const wanted = name === 'lying' ? landscape(papers[paper]) : papers[paper];
        expect(Math.abs((right - left) / ptPerMm - wanted.widthMm)).toBeLessThan(0.1);
        expect(Math.abs((top - bottom) / ptPerMm - wanted.heightMm)).toBeLessThan(0.1);
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test('page sizes of several kinds in one document', async () => {
    const css = '@page wide{size:297mm 210mm;margin:0}section{page:wide}';
    const pages = await readPdfPages(
      await printOne(job('mix', '<p>a</p><section>b</section><p>c</p>', 'A5', css)),
    );
    const sizes = pages.map(({ width, height }) =>
      [width, height].map(pt => Math.round((pt / ptPerMm) * 100) / 100),
    );
    expect(sizes).toEqual([
      [148, 210],
      [297, 210],
      [148, 210],
    ]);
  });

  test('an element wider than the page is an error that names document, element and excess', async () => {
    const wide = '<p>ok</p><div><table class="bits map" style="width:150mm"><tr><td>SWCHA bits</table></div>';
    // 148 mm less two margins of 12 mm leave 124 mm.
    await expect(printOne(job('manual', wide))).rejects.toThrow(
      /^The manual does not fit its paper: table\.bits\.map “SWCHA bits” is (25\.9|26\.\d) mm wider/,
    );
    await expect(printOne(job('manual', wide))).rejects.toMatchObject({
      name: 'PrintError',
      document: 'manual',
    });
  });

  test('an element that just fits is none', async () => {
    const pages = await readPdfPages(await printOne(job('m', '<div style="width:124mm;height:1mm">y</div>')));
    expect(pages).toHaveLength(1);
  });
});
