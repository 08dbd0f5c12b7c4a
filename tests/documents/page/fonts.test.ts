import { describe, expect, test } from 'vitest';
import { fontFaceCss, fontStack } from '../../../src/documents/page/fonts.js';
import { measureText, missingCharacters, type TextStyle } from '../../../src/documents/page/measure.js';
import { printDocuments } from '../../../src/print/print.js';
import { readPdfPages, withPdf } from '../../support/pdf.js';
import { browserTool } from '../../support/tools.js';

const samples = [
  'Hold the lever up for two seconds, then let go.',
  'Größe, Straße, Übung „hier“ – l’hôtel d’à côté',
  'AVATAR Toffee “Wave” Ty. Type',
  'Łódź Šárka Đorđe Ğüneş',
  'Ωμέγα Привет',
  'SWCHA %11110000 $0280 0O1lI',
];

const styles: readonly TextStyle[] = [
  { sizePt: 9 },
  { sizePt: 7, weight: 700 },
  { sizePt: 10.25, italic: true },
  { sizePt: 9, family: 'mono' },
  { sizePt: 8, family: 'mono', weight: 700 },
];

function css({ family = 'text', weight = 400, italic = false, sizePt }: TextStyle): string {
  return `font-family:${fontStack[family]};font-weight:${weight};font-style:${italic ? 'italic' : 'normal'};font-size:${sizePt}pt`;
}

describe('fonts', () => {
  test('measured widths are those of the printed text, read with pdf.js', async () => {
    const browser = await browserTool();
    const lines = styles.flatMap(style => samples.map(text => ({ text, style })));
    const body = lines
      .map(({ text, style }) => `<p style="${css(style).replaceAll('"', "'")}">${text}</p>`)
      .join('');
    const html = `<!doctype html><style>${fontFaceCss(body)}@page{size:297mm 420mm;margin:10mm}p{margin:0;white-space:pre}</style>${body}`;
    const [printed] = await printDocuments([{ name: 'lines', title: 'lines', html }], { browser });
    const [page] = await readPdfPages(printed?.pdf ?? new Uint8Array());
    const rows = new Map<number, { left: number; right: number }>();
    for (const { x, y, width } of page?.texts ?? []) {
      const key = Math.round(y * 2) / 2;
      const row = rows.get(key) ?? { left: x, right: x };
      rows.set(key, { left: Math.min(row.left, x), right: Math.max(row.right, x + width) });
    }
    const widths = [...rows].sort(([a], [b]) => b - a).map(([, { left, right }]) => right - left);
    expect(widths).toHaveLength(lines.length);
    for (const [index, { text, style }] of lines.entries()) {
      const measured = measureText(text, style);
      expect(Math.abs(measured - (widths[index] ?? 0)) / measured, `${text} ${css(style)}`).toBeLessThan(
        0.001,
      );
    }
  });

  test('only our fonts are in a PDF, real bold and italic among them', async () => {
    const body = `<p>a <b>b</b> <i>c</i> <b><i>d</i></b> → <code>0 <b>1</b></code> Łódź Ω</p>`;
    const style = `${fontFaceCss(body)}body{font-family:${fontStack.text}}code{font-family:${fontStack.mono}}`;
    const html = `<!doctype html><style>${style}</style>${body}`;
    const [printed] = await printDocuments([{ name: 'f', title: 'f', html }], {
      browser: await browserTool(),
    });
    const names = await withPdf(printed?.pdf ?? new Uint8Array(), async document => {
      const page = await document.getPage(1);
      const { fnArray, argsArray } = await page.getOperatorList();
      const { OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs');
      const ids = fnArray.flatMap((operator, index) =>
        operator === OPS.setFont ? [String(argsArray[index]?.[0])] : [],
      );
      return ids.map(id => String(page.commonObjs.get(id).name).replace(/^[A-Z]{6}\+/, ''));
    });
    expect([...new Set(names)].sort()).toEqual([
      'NotoSans-Bold',
      'NotoSans-BoldItalic',
      'NotoSans-Italic',
      'NotoSans-Regular',
      'NotoSansMono-Bold',
      'NotoSansMono-Regular',
      'NotoSansSymbols-Regular',
    ]);
  });

  test('only the faces that a text needs are embedded', () => {
    const count = (text: string) => fontFaceCss(text).split('@font-face').length - 1;
    expect(count('plain')).toBe(6);
    expect(count('Größe – „x“')).toBe(6);
    expect(count('Łódź')).toBe(12);
    expect(count('→')).toBe(8);
    expect(fontFaceCss('Łódź →')).not.toMatch(/url\((?!data:font\/woff2;base64,)/);
    expect(fontFaceCss()).toContain('font-synthesis:none');
  });

  test('characters without a glyph are told, others are not', () => {
    expect(missingCharacters('Größe Łódź → ↑ × ½ „“ – Ω Ж\n\u00AD')).toEqual([]);
    expect(missingCharacters('日a本日', 'mono')).toEqual(['日', '本']);
  });

  test('every character of the monospace is as wide as the next', () => {
    const widths = new Set(
      [...'0O1lI$%#_.Wi'].map(letter => measureText(letter, { family: 'mono', sizePt: 10 })),
    );
    expect([...widths]).toEqual([6]);
  });

  test('a width grows with the size, and no text has none', () => {
    expect(measureText('', { sizePt: 9 })).toBe(0);
    expect(measureText('wide', { sizePt: 18 })).toBeCloseTo(2 * measureText('wide', { sizePt: 9 }), 9);
  });
});
