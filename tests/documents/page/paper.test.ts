import { describe, expect, test } from 'vitest';
import {
  landscape,
  mmToPt,
  nearestPaper,
  type PaperName,
  papers,
} from '../../../src/documents/page/paper.js';

describe('paper sizes', () => {
  // ISO 216: A0 is 1 m² with sides as 1 to √2; each next size halves the long side, rounded down to whole mm.
  test('the A sizes follow from the rule of ISO 216', () => {
    const a0 = [Math.round(1000 * 2 ** -0.25), Math.round(1000 * 2 ** 0.25)] as const;
    const series: [number, number][] = [[...a0]];
    for (let n = 1; n <= 5; n += 1) {
      const [short, long] = series[n - 1] ?? [0, 0];
      series.push([Math.floor(long / 2), short]);
    }
    for (const [name, n] of [
      ['A3', 3],
      ['A4', 4],
      ['A5', 5],
    ] as const) {
      expect([papers[name].widthMm, papers[name].heightMm]).toEqual(series[n]);
    }
  });

  // ANSI/ASME Y14.1: size A is 8.5 × 11 inches, size B 11 × 17; an inch is 25.4 mm (ISO 80000-3).
  test.each([
    ['half letter', 5.5, 8.5],
    ['letter', 8.5, 11],
    ['tabloid', 11, 17],
  ] as const)('%s is %d × %d inches', (name, width, height) => {
    expect(papers[name].widthMm).toBeCloseTo(width * 25.4, 9);
    expect(papers[name].heightMm).toBeCloseTo(height * 25.4, 9);
    expect(mmToPt(papers[name].widthMm)).toBeCloseTo(width * 72, 9);
  });

  test.each(Object.keys(papers) as PaperName[])('two of %s fit its doubled paper', name => {
    const { widthMm, heightMm, doubled } = papers[name];
    if (!doubled) return expect(['A3', 'tabloid']).toContain(name);
    const sheet = landscape(papers[doubled]);
    expect(sheet.heightMm).toBeCloseTo(heightMm, 9);
    expect(sheet.widthMm - 2 * widthMm).toBeGreaterThanOrEqual(0);
    expect(sheet.widthMm - 2 * widthMm).toBeLessThanOrEqual(1); // ISO 216 rounds down
  });

  test('a rounded size is recognised, upright or lying, and a strange one is not', () => {
    expect(nearestPaper({ widthMm: 148.17, heightMm: 209.89 })).toMatchObject({
      widthMm: 148,
      heightMm: 210,
    });
    expect(nearestPaper({ widthMm: 297.1, heightMm: 210 })).toEqual({ widthMm: 297, heightMm: 210 });
    expect(nearestPaper({ widthMm: 100, heightMm: 100 })).toBeUndefined();
  });
});
