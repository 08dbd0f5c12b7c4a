import { describe, expect, test } from 'vitest';
import type { Coverage, CoverageCell } from '../../../src/checks/coverage-model.js';
import { viewMatrix } from '../../../src/documents/report/matrix-view.js';
import { viewModeRecipes } from '../../../src/documents/report/recipe-view.js';
import { letterOf } from '../../../src/documents/report/write-matrix.js';
import { DYE_WORKS, inputOf } from '../bits/support.js';

const { scheme, coverage } = inputOf(DYE_WORKS);
if (coverage === null) throw new Error('coverage was not explored');

/** The same coverage with some cells changed. */
const changed = (change: (cell: CoverageCell) => CoverageCell): Coverage => ({
  ...coverage,
  cells: coverage.cells.map(change),
});

describe('the matrix', () => {
  const view = viewMatrix(coverage, scheme);

  test('counts every cell', () => {
    const all = Object.values(view.counts).reduce((sum, count) => sum + count, 0);
    expect(all).toBe(3 * 3 * 3 * 2);
    expect(view.counts.broken).toBe(coverage.cells.filter(({ verdict }) => verdict === 'broken').length);
  });

  test('gives each cell its verdict', () => {
    for (const panel of view.panels) {
      const consoles = panel.consoles.flatMap(({ name, span }) => Array<string>(span).fill(name));
      const seats = panel.seats.flatMap(({ name, span }) => Array<string>(span).fill(name));
      expect(consoles).toHaveLength(panel.standards.length);
      expect(seats).toHaveLength(panel.standards.length);
      for (const row of panel.rows) {
        for (const [index, cell] of row.cells.entries()) {
          const own = coverage.cells.filter(
            each =>
              each.mode.name === row.mode &&
              each.console.name === consoles[index] &&
              each.seats.name === seats[index] &&
              panel.standards[index]?.split(', ').includes(each.standard.name),
          );
          expect(own.length).toBeGreaterThan(0);
          for (const { verdict } of own) expect(cell.verdict).toBe(verdict);
        }
      }
    }
  });

  test('explains each altered and broken cell beneath, with all its reasons', () => {
    const cells = view.panels.flatMap(({ rows }) =>
      rows.flatMap(row => row.cells.map(cell => ({ ...cell, mode: row.mode }))),
    );
    for (const { verdict, note, mode } of cells) {
      expect(note === null).toBe(verdict === 'plays' || verdict === 'not offered');
      const explanation = view.explanations.find(({ number }) => number === note);
      if (note === null) continue;
      expect(explanation?.verdict).toBe(verdict);
      expect(explanation?.text).toContain(mode);
      expect(explanation?.text).toMatch(/\.$/);
    }
    for (const { reasons } of coverage.cells) {
      const text = reasons.join('; ');
      if (text !== '')
        expect(view.explanations.some(explanation => explanation.text.endsWith(`: ${text}.`))).toBe(true);
    }
    expect(new Set(view.explanations.map(({ text }) => text)).size).toBe(view.explanations.length);
  });

  test('calls the explanations by letters, as numbers are those of the findings', () => {
    expect([1, 2, 26, 27, 52, 53, 702, 703].map(letterOf)).toEqual([
      'a',
      'b',
      'z',
      'aa',
      'az',
      'ba',
      'zz',
      'aaa',
    ]);
  });

  test('puts standards into one column only where all modes play alike', () => {
    expect(view.panels.flatMap(({ standards }) => standards)).toEqual(Array(9).fill('NTSC, PAL, SECAM'));
    const split = viewMatrix(
      changed(cell =>
        cell.standard.name === 'PAL' && cell.console.name === 'six-switch' && cell.mode.name === 'Work'
          ? { ...cell, verdict: 'broken', reasons: ['it is too slow'] }
          : cell,
      ),
      scheme,
    );
    expect(split.panels[0]?.standards.slice(0, 2)).toEqual(['NTSC, SECAM', 'PAL']);
  });

  test('is cut into tables that fit, between consoles where it can be', () => {
    const apart = viewMatrix(
      changed(cell => ({ ...cell, verdict: 'altered', reasons: [cell.standard.name] })),
      scheme,
    );
    expect(apart.panels.map(({ standards }) => standards.length)).toEqual([9, 9, 9]);
    expect(apart.panels.map(({ consoles }) => consoles.map(({ name }) => name))).toEqual([
      ['six-switch'],
      ['no-difficulty'],
      ['workbench'],
    ]);
  });
});

describe('recipes', () => {
  test('tell a way for each mode where it is offered', () => {
    const recipes = viewModeRecipes(coverage, scheme);
    expect(recipes.map(({ target }) => target)).toEqual(['Yard', 'Work']);
    expect(recipes[0]?.ways).toEqual([{ where: 'on any console', steps: [] }]);
    expect(recipes[1]?.ways).toEqual([
      { where: 'on any console', steps: ['Yard: anyone presses RESET (Open the gate)'] },
    ]);
  });

  test('say a repeated step once, and where there is no way', () => {
    const [step] = coverage.cells.find(({ mode }) => mode.name === 'Work')?.recipe ?? [];
    if (step === undefined) throw new Error('no step');
    const longer = changed(cell => ({
      ...cell,
      recipe: cell.console.name === 'workbench' ? null : [step, step, step],
    }));
    expect(viewModeRecipes(longer, scheme)[0]?.ways).toEqual([
      {
        where: 'on six-switch and no-difficulty',
        steps: ['Yard: anyone presses RESET (Open the gate), 3 times'],
      },
      { where: 'on workbench', steps: null },
    ]);
  });
});
