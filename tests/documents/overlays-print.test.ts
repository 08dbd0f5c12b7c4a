import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { speechFor } from '../../src/documents/manual/view.js';
import { keyCorner } from '../../src/documents/overlays/key-piece.js';
import { createOverlays, laySheets } from '../../src/documents/overlays/overlays.js';
import { MARK, type PlacedPiece, UNDER_LINE } from '../../src/documents/overlays/pack.js';
import { RULER } from '../../src/documents/overlays/sheet.js';
import { type Sizes, sizesOf } from '../../src/documents/overlays/sizes.js';
import { papers } from '../../src/documents/page/paper.js';
import { printDocuments } from '../../src/print/print.js';
import { readPdfPages } from '../support/pdf.js';
import { browserTool, tool } from '../support/tools.js';
import { EVERYTHING } from './everything-scheme.js';
import { inputOf, SCHEMES, withGame } from './inputs.js';

/** How far a measured length or place may be off, mm. */
const TOLERANCE = 0.1;
const PT_MM = 25.4 / 72;

interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The bounds of every path on a page, mm from its upper left corner, as poppler finds them in the PDF. */
function pathBounds(pdf: Uint8Array, page: number): readonly Bounds[] {
  const folder = mkdtempSync(join(tmpdir(), 'overlays-'));
  try {
    writeFileSync(join(folder, 'in.pdf'), pdf);
    execFileSync(tool('pdftocairo'), [
      '-svg',
      // It would fit the page to the next whole paper size.
      '-noshrink',
      '-nocenter',
      '-f',
      `${page}`,
      '-l',
      `${page}`,
      join(folder, 'in.pdf'),
      join(folder, 'out.svg'),
    ]);
    const svg = readFileSync(join(folder, 'out.svg'), 'utf8').replace(/<defs>[\s\S]*?<\/defs>/g, '');
    return [...svg.matchAll(/<path[^>]*>/g)].flatMap(([tag]) => {
      const d = / d="([^"]+)"/.exec(tag)?.[1];
      if (d === undefined || !tag.includes('stroke-width')) return [];
      const matrix = / transform="matrix\(([^)]+)\)"/.exec(tag)?.[1]?.split(/[, ]+/).map(Number) ?? [
        1, 0, 0, 1, 0, 0,
      ];
      const [a = 1, b = 0, c = 0, e = 1, x0 = 0, y0 = 0] = matrix;
      const numbers = (d.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []).map(Number);
      const points = Array.from({ length: numbers.length / 2 }, (_, index) => {
        const [x = 0, y = 0] = numbers.slice(index * 2, index * 2 + 2);
        return { x: (a * x + c * y + x0) * PT_MM, y: (b * x + e * y + y0) * PT_MM };
      });
      const xs = points.map(({ x }) => x);
      const ys = points.map(({ y }) => y);
      return [
        { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) },
      ];
    });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const isNear = (one: Bounds, other: Bounds): boolean =>
  (['left', 'top', 'right', 'bottom'] as const).every(side => Math.abs(one[side] - other[side]) <= TOLERANCE);

const SIZES = `
## Overlays

| Item | Value |
| --- | --- |
| Overlay width | 61.3 mm |
| Overlay height | 93.7 mm |
| Key width | 13.4 mm |
| Key height | 11.2 mm |
| Key column pitch | 17.35 mm |
| Key row pitch | 18.65 mm |
| First key from left | 6.15 mm |
| First key from top | 13.05 mm |
| Bleed | 2.5 mm |
`;

/** Where a part of a placed piece is on its sheet, upright or turned by 90° to the right; mm. */
function onSheet(
  { piece, x, y, isTurned }: PlacedPiece,
  px: number,
  py: number,
  w: number,
  h: number,
): Bounds {
  const right = x + piece.height + piece.under.length * UNDER_LINE;
  const place = (left: number, top: number) =>
    isTurned ? { x: right - top, y: y + left } : { x: x + left, y: y + top };
  const [p, q] = [place(px, py), place(px + w, py + h)];
  return {
    left: Math.min(p.x, q.x),
    right: Math.max(p.x, q.x),
    top: Math.min(p.y, q.y),
    bottom: Math.max(p.y, q.y),
  };
}

/** Everything of a piece that must be true to size: its edge, eight cut marks, twelve keys. */
function exactParts(placed: PlacedPiece, sizes: Sizes): readonly (readonly [what: string, at: Bounds])[] {
  const { width, height, kind } = placed.piece;
  const near = sizes.Bleed + MARK.gap;
  const corners = [0, width].flatMap(cx => [0, height].map(cy => ({ cx, cy })));
  const marks = corners.flatMap(({ cx, cy }): [string, Bounds][] => {
    const [sx, sy] = [cx === 0 ? -1 : 1, cy === 0 ? -1 : 1];
    return [
      ['a cut mark', onSheet(placed, cx + sx * near, cy, sx * MARK.length, 0)],
      ['a cut mark', onSheet(placed, cx, cy + sy * near, 0, sy * MARK.length)],
    ];
  });
  const keys = Array.from({ length: kind === 'keys' ? 12 : 0 }, (_, key): [string, Bounds] => {
    const { x, y } = keyCorner(key, sizes);
    return [`key ${key}`, onSheet(placed, x, y, sizes['Key width'], sizes['Key height'])];
  });
  return [[`the edge of a ${kind}`, onSheet(placed, 0, 0, width, height)], ...marks, ...keys];
}

describe.each([
  ['built-in sizes, A4', (SCHEMES['night-exchange'] as () => string)(), 'A4'],
  ['sizes of the scheme, letter', `${EVERYTHING}${SIZES}`, 'letter'],
] as const)('%s, measured in the PDF by poppler', (_, text, paper) => {
  it('ruler, cut marks and key cells are true to 0.1 mm', async () => {
    const browser = await browserTool();
    tool('pdftocairo');
    const input = inputOf(withGame(text, { 'Sheet paper': paper }));
    const { widthMm, heightMm } = papers[paper];
    const sizes = sizesOf(input.scheme);
    const sheets = laySheets(input.scheme, speechFor(input));
    const [printed] = await printDocuments([createOverlays(input)], { browser });
    const pdf = printed?.pdf ?? new Uint8Array();
    const pages = await readPdfPages(pdf);
    expect(pages).toHaveLength(sheets.length);
    for (const { width, height } of pages) {
      expect(Math.abs(width * PT_MM - widthMm)).toBeLessThan(TOLERANCE);
      expect(Math.abs(height * PT_MM - heightMm)).toBeLessThan(TOLERANCE);
    }
    const rulerY = heightMm - RULER.fromFoot;
    const ruler = { left: RULER.x, right: RULER.x + 100, top: rulerY, bottom: rulerY };
    for (const [index, sheet] of sheets.entries()) {
      const drawn = pathBounds(pdf, index + 1);
      for (const [what, at] of [
        ['the ruler', ruler] as const,
        ...sheet.flatMap(placed => exactParts(placed, sizes)),
      ]) {
        const isThere = drawn.some(bounds => isNear(bounds, at));
        expect(isThere, `${what} at ${JSON.stringify(at)}`).toBe(true);
      }
    }
    expect(sheets.flat().filter(({ piece }) => piece.kind === 'keys').length).toBeGreaterThan(0);
  });
});

describe('the sheets as text', () => {
  it('name game, mode and port, say what to do first, and have no type under 7 pt', async () => {
    const found = await browserTool();
    const input = inputOf((SCHEMES['night-exchange'] as () => string)());
    const [printed] = await printDocuments([createOverlays(input)], { browser: found });
    const pages = await readPdfPages(printed?.pdf ?? new Uint8Array());
    for (const { texts } of pages) {
      const said = texts.map(({ text }) => text).join(' ');
      expect(said).toContain('Night Exchange');
      expect(said).toContain('Measure this line first');
      expect(said).toContain('Cut along the corner marks');
      for (const { size, text } of texts) expect(size, text).toBeGreaterThanOrEqual(6.99);
    }
    const all = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join('\n');
    for (const words of [
      'Measure yours first',
      'Duty roster',
      'One operator · Left port',
      'Two operators · Right port',
      'ANSWER',
    ])
      expect(all).toContain(words);
  });
});
