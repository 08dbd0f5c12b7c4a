import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { viewConsole } from '../../src/documents/manual/console.js';
import { fillContents } from '../../src/documents/manual/contents.js';
import { createManual } from '../../src/documents/manual/manual.js';
import { speechFor } from '../../src/documents/manual/view.js';
import { papers } from '../../src/documents/page/paper.js';
import { actionWords } from '../../src/documents/wording/rows.js';
import { readAnchorPages } from '../../src/print/anchor-pages.js';
import { printDocuments } from '../../src/print/print.js';
import { type PdfPage, readPdfPages } from '../support/pdf.js';
import { browserTool } from '../support/tools.js';
import { inputOf, SCHEMES, withGame } from './inputs.js';

const squeeze = (text: string) => text.replace(/[\s\u00ad]+/g, '');
const textOf = (page: PdfPage) => squeeze(page.texts.map(({ text }) => text).join(''));

/** As a build does it: printed, the contents list filled, printed again. */
async function printManual(text: string) {
  const browser = await browserTool();
  const document = createManual(inputOf(text));
  const [first] = await printDocuments([document], { browser });
  const { pages, count } = readAnchorPages(first?.pdf ?? new Uint8Array());
  const html = fillContents(document.html, pages, count);
  const [second] = await printDocuments([{ ...document, html }], { browser });
  return { html, anchors: pages, pages: await readPdfPages(second?.pdf ?? new Uint8Array()) };
}

describe.each(Object.keys(SCHEMES))('%s', name => {
  it('says everything the scheme says, in type that can be read, and its contents list is right', async () => {
    const text = (SCHEMES[name] as () => string)();
    const { scheme } = inputOf(text);
    const { pages, html, anchors } = await printManual(text);
    const all = pages.map(textOf).join('');
    const bound = new Set(scheme.modes.flatMap(({ rows }) => rows.map(({ action }) => action)));
    const wanted = [
      scheme.title.value,
      ...scheme.seats.map(row => row.name),
      ...[...bound].map(actionWords),
      ...scheme.modes.map(mode => mode.name),
      ...scheme.settings.flatMap(setting => [setting.name, setting.startsAs]),
      ...scheme.switchWords.map(({ words }) => words),
      ...scheme.variations.flatMap(variation => [variation.name, variation.words]),
      ...scheme.chapters.map(({ title }) => title),
    ];
    for (const words of wanted) expect(all).toContain(squeeze(words));

    const sizes = pages.flatMap(({ texts }) => texts.map(({ size, text: { length } }) => ({ size, length })));
    expect(Math.min(...sizes.map(({ size }) => size))).toBeGreaterThanOrEqual(6.99);
    const bySize = new Map<number, number>();
    for (const { size, length } of sizes)
      bySize.set(Math.round(size * 4) / 4, (bySize.get(Math.round(size * 4) / 4) ?? 0) + length);
    const [body = 0] = [...bySize].toSorted((a, b) => b[1] - a[1])[0] ?? [];
    expect(body).toBeGreaterThanOrEqual(name.startsWith('longest') || name === 'crowded' ? 7 : 9);

    // The quick reference is the last page and nothing but that page.
    const { phrases } = { phrases: squeeze('At a glance') };
    expect(textOf(pages.at(-1) as PdfPage)).toContain(phrases);
    if (pages.length <= 6) expect(html).not.toContain('class="contents"');
    else {
      expect(anchors.size).toBeGreaterThan(4);
      const entries = [
        ...html.matchAll(
          /<span class="entry">([^<]*)<\/span><span class="page" data-page-of="[a-z0-9-]+">(\d+)</g,
        ),
      ];
      expect(entries.length).toBeGreaterThan(4);
      for (const [, title = '', page] of entries)
        expect(textOf(pages[Number(page) - 1] as PdfPage)).toContain(squeeze(title.replace(/&#x27;/g, "'")));
      expect(Number(entries.at(-1)?.[2])).toBe(pages.length);
    }
  });
});

it.each(['kiln-yard', 'swarm-season'])(
  '%s: the switches, what they do, and what to do without them are on one page',
  async name => {
    const text = readFileSync(fileURLToPath(new URL(`../../schemes/${name}.md`, import.meta.url)), 'utf8');
    const { pages } = await printManual(text);
    const [page, ...others] = pages.map(textOf).filter(words => words.includes('Six-switchconsole'));
    expect(others.filter(words => words.includes('Thegameusestheseswitches'))).toEqual([]);
    const inputs = inputOf(text);
    const { calls, boxes } = viewConsole(inputs.scheme, speechFor(inputs));
    expect(boxes.length).toBeGreaterThan(0);
    for (const words of [
      ...calls.flatMap(({ label, lines }) => [label, ...lines]),
      ...boxes.flatMap(({ title, lines }) => [title, ...lines]),
    ])
      expect(page).toContain(squeeze(words));
  },
);

// ISO 216 and ANSI Y14.1 sizes, in mm; see print/paper.ts.
describe('page sizes', () => {
  it.each(['A5', 'half letter', 'A4', 'letter'] as const)('%s', async paper => {
    const text = withGame((SCHEMES['kiln-yard'] as () => string)(), { 'Manual page': paper });
    const { pages, html } = await printManual(text);
    expect(html.includes('class="contents"')).toBe(pages.length > 6);
    for (const [index, { width, height, texts }] of pages.entries()) {
      expect(width).toBeCloseTo((papers[paper].widthMm / 25.4) * 72, 1);
      expect(height).toBeCloseTo((papers[paper].heightMm / 25.4) * 72, 1);
      const said = texts.map(({ text: words }) => words);
      if (index === 0) continue;
      expect(said).toContain(String(index + 1));
      expect(said).toContain(index % 2 === 0 ? 'How to play' : 'Kiln Yard');
    }
  });
});
