import type { Element } from 'hast';
import { describe, expect, test } from 'vitest';
import { measureText } from '../../../src/documents/page/measure.js';
import { breakLines } from '../../../src/documents/report/break-lines.js';
import { timingFigures } from '../../../src/documents/report/timing-figure.js';
import { viewTiming } from '../../../src/documents/report/timing-view.js';
import type { Witness, WitnessStep } from '../../../src/findings/finding.js';
import { inputOf } from '../bits/support.js';
import { SLUICE_RUN } from './sluice.js';

const { scheme } = inputOf(SLUICE_RUN);

/** Frames a second from the NTSC colour subcarrier (SMPTE 170M): 315/88 MHz, 228 clocks a line, 262 lines. */
const NTSC = 315e6 / 88 / (228 * 262);

function witnessOf(
  ...runs: readonly (readonly [reads: number, engaged: readonly string[], fires: readonly string[]])[]
): Witness {
  const steps: WitnessStep[] = [];
  for (const [reads, engaged, fires] of runs) {
    for (let count = 0; count < reads; count++) steps.push({ read: steps.length, engaged, fires });
  }
  return { standard: 'NTSC', steps };
}

const BUTTON = ['left button'];
const HOLD = witnessOf([1, BUTTON, ['Open']], [118, BUTTON, []], [1, BUTTON, ['Flood']]);

describe('a witness as a timing diagram', () => {
  const view = viewTiming(HOLD, scheme);

  test('folds the long run and says how long it lasts', () => {
    expect(view.columns.map(({ first, reads, label }) => [first, reads, label])).toEqual([
      [0, 1, ''],
      [1, 118, `118 reads, ${(118 / NTSC).toFixed(2)} s`],
      [119, 1, ''],
    ]);
    expect(view.columns.map(({ startMs }) => startMs.toFixed(1))).toEqual(
      [0, 1, 119].map(read => ((read / NTSC) * 1000).toFixed(1)),
    );
  });

  test('has a track for each control and action, in the order in which they come', () => {
    expect(view.tracks).toEqual([
      { kind: 'control', name: 'left button', on: [true, true, true] },
      { kind: 'action', name: 'Open', on: [true, false, false] },
      { kind: 'action', name: 'Flood', on: [false, false, true] },
    ]);
  });

  test('keeps short runs read by read', () => {
    const short = viewTiming(witnessOf([3, BUTTON, []], [4, [], []]), scheme);
    expect(short.columns.map(({ first, reads }) => [first, reads])).toEqual([
      [0, 1],
      [1, 1],
      [2, 1],
      [3, 4],
    ]);
  });

  test('covers every read of the witness once', () => {
    for (const witness of [HOLD, witnessOf([5, [], []], [1, BUTTON, []], [255, ['RESET'], ['Rest']])]) {
      const { columns } = viewTiming(witness, scheme);
      const reads = columns.flatMap(({ first, reads: count }) =>
        Array.from({ length: count }, (_, index) => first + index),
      );
      expect(reads).toEqual(witness.steps.map(({ read }) => read));
    }
  });

  test('says the same in words', () => {
    expect(view.inWords).toBe(
      'Read 0 (0 ms): left button; fires Open. Reads 1 to 118 (17 ms): left button. Read 119 (1.99 s): left button; fires Flood.',
    );
  });
});

describe('its drawing', () => {
  const partsOf = (element: Element, className: string): readonly Element[] =>
    element.children.flatMap(child =>
      child.type !== 'element'
        ? []
        : [
            ...(String(child.properties['className'] ?? '')
              .split(/[ ,]/)
              .includes(className)
              ? [child]
              : []),
            ...partsOf(child, className),
          ],
    );

  test('has a mark for each firing and a gap for each fold', () => {
    const [drawing, ...more] = timingFigures(viewTiming(HOLD, scheme));
    if (drawing === undefined) throw new Error('nothing drawn');
    expect(more).toEqual([]);
    expect(partsOf(drawing, 'mark')).toHaveLength(2);
    expect(partsOf(drawing, 'fold')).toHaveLength(1);
    expect(partsOf(drawing, 'wave')).toHaveLength(1);
    expect(drawing.properties['role']).toBe('img');
  });

  test('goes on in further rows where the time is too long, and stays inside its width', () => {
    const busy = Array.from({ length: 60 }, (_, index) => [1, index % 2 === 0 ? BUTTON : [], []] as const);
    const rows = timingFigures(viewTiming(witnessOf(...busy), scheme));
    expect(rows.length).toBeGreaterThan(3);
    for (const row of rows) {
      const [, , width = 0] = String(row.properties['viewBox']).split(' ').map(Number);
      const ends = partsOf(row, 'row').map(({ properties }) => Number(properties['x2']));
      expect(Math.max(...ends)).toBeLessThanOrEqual(width);
    }
  });

  test('breaks long names into lines that fit, losing nothing', () => {
    const measure = (text: string) => measureText(text, { sizePt: 8 });
    for (const name of [
      'Whistle twice for the men at the far end of the long canal',
      'W'.repeat(80),
      'a',
      '',
    ]) {
      const lines = breakLines(name, 100, measure);
      expect(lines.join(name.includes(' ') ? ' ' : '')).toBe(name);
      for (const line of lines) expect(measure(line)).toBeLessThanOrEqual(100);
    }
  });
});
