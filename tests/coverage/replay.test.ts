import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkCoverage } from '../../src/checks/coverage.js';
import type { RecipeStep } from '../../src/checks/coverage-model.js';
import { createReport } from '../../src/findings/report.js';
import { valuesIn } from '../../src/gestures/play.js';
import type { Scheme } from '../../src/language/model.js';
import { readScheme } from '../../src/language/read.js';
import { replay } from './replay.js';
import { tidyScheme } from './tidy-scheme.js';

const SCHEMES = fileURLToPath(new URL('../../schemes', import.meta.url));

describe('each recipe, played press by press through the gesture engine, arrives', () => {
  test.each(readdirSync(SCHEMES).filter(name => name.endsWith('.md')))('in schemes/%s', name => {
    const scheme = read(readFileSync(`${SCHEMES}/${name}`, 'utf8'));
    expect(replayAll(scheme)).toBeGreaterThan(10);
  });

  test('in schemes where no two rows of a mode share a control', () => {
    let played = 0;
    let longest = 0;
    fc.assert(
      fc.property(tidyScheme, text => {
        played += replayAll(read(text), length => {
          longest = Math.max(longest, length);
        });
      }),
      { numRuns: 120 },
    );
    expect(played).toBeGreaterThan(1000);
    expect(longest).toBeGreaterThan(6);
  });
});

function read(text: string): Scheme {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'test.md', text }], report);
  if (scheme === null) throw new Error(findings[0]?.message ?? 'nothing was read');
  return scheme;
}

/** Replays every recipe; how many there were. */
function replayAll(scheme: Scheme, note: (length: number) => void = () => {}): number {
  const coverage = checkCoverage(scheme, createReport().report);
  let played = 0;
  for (const { console: profile, seats, standard, mode, recipe } of coverage.cells) {
    if (recipe === null || movesWhatARowMoves(recipe)) continue;
    expect(replay({ scheme, seats, profile, standard }, recipe).state.mode).toBe(mode);
    note(recipe.length);
    played++;
  }
  for (const { console: profile, seats, standard, variation, recipe } of coverage.variations) {
    if (recipe === null || movesWhatARowMoves(recipe)) continue;
    const { play, state } = replay({ scheme, seats, profile, standard }, recipe);
    expect(state.mode.kind).toBe('play');
    for (const [setting, value] of variation.values) expect(valuesIn(play, state).get(setting)).toBe(value);
    note(recipe.length);
    played++;
  }
  return played;
}

/**
 * A step that only moves a switch is a step of the graph even in a mode where a row fires at that move; on a
 * console the row then happens too, so such recipes are not what is tested here.
 */
const movesWhatARowMoves = (recipe: readonly RecipeStep[]): boolean =>
  recipe.some(
    step =>
      step.kind === 'switch' &&
      step.mode.rows.some(row =>
        row.alternatives.some(({ parts }) =>
          parts.some(part => part.kind === 'switch' && part.name === step.name),
        ),
      ),
  );
