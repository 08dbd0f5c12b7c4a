import { describe, expect, it } from 'vitest';
import { recipeText } from '../../src/checks/coverage/recipe-text.js';
import { checkCoverage } from '../../src/checks/coverage.js';
import { createReport } from '../../src/findings/report.js';
import { readScheme } from '../../src/language/read.js';

/** Each mode is left in one way only, so that a way to the last one is a way through all of them. */
const STEPS = [
  ['anyone | Step | RESET | press', 'anyone presses RESET'],
  [
    'left | Step | stick up + button | release',
    'the left player presses left stick up + left button and lets it go',
  ],
  ['right A | Step | paddle button | held', 'the right A player presses right A paddle button'],
  ['left | Step | button | hold 1 s', 'the left player holds left button for 1 s'],
  ['anyone | Step | SELECT | tap under 0.5 s', 'anyone taps SELECT for less than 0.5 s'],
  [
    'left | Step | stick left | double tap within 20 frames',
    'the left player presses left stick left twice within 20 frames',
  ],
  ['left | Step | stick down | repeat every 0.5 s', 'the left player presses left stick down'],
  ['anyone | Step | TV type | at COLOR', 'anyone leaves TV type at COLOR'],
  ['anyone | Step | left difficulty | flip to A', 'anyone moves left difficulty to A'],
  ['anyone | Step | TV type | flip', 'anyone moves TV type'],
  ['right A | Step | paddle | turn', 'the right A player turns right A paddle'],
  ['game | Step | | ', 'the game does it by itself'],
] as const;

const GO_ON = (from: number) => `go to Mode ${from + 1}`;

/** The last mode leads back to the first. */
const LAST = 'anyone | Leave | RESET | press | go to Mode 0';

function scheme(rowsOf: (index: number) => readonly string[], count: number): string {
  const modes = Array.from({ length: count + 1 }, (_, index) => {
    const rows = (index === count ? [LAST] : rowsOf(index)).map(row => `| ${row} |`);
    const head = '| Who | Action | Control | Gesture | Then |\n| - | - | - | - | - |';
    return `## Mode: Mode ${index}\n\n${[head, ...rows].join('\n')}\n`;
  });
  return [
    '# Steps\n',
    '## Game\n\n| Item | Value |\n| - | - |\n| Short name | S |\n',
    '## Seats\n\n| Seats | Players | Left port | Right port |\n| - | - | - | - |\n| Duo | 2 | joystick | paddles |\n',
    `## Actions\n\n| Action | Say it as |\n| - | - |\n${['Step', 'Leap', 'Wait', 'Leave'].map(name => `| ${name} | ${name} now |`).join('\n')}\n`,
    ...modes,
  ].join('\n');
}

/** The recipe of the last mode. */
function recipeOf(text: string): readonly string[] {
  const { report, findings } = createReport();
  const read = readScheme([{ path: 'steps.md', text }], report);
  if (read === null || findings.length > 0) throw new Error(findings[0]?.message ?? 'nothing was read');
  const recipe = checkCoverage(read, report).cells.findLast(
    ({ console }) => console.name === 'six-switch',
  )?.recipe;
  if (recipe === undefined || recipe === null) throw new Error('there is no way');
  return recipeText(recipe);
}

describe('a recipe', () => {
  it('tells each gesture in plain English', () => {
    const text = scheme(index => [`${STEPS[index]?.[0] ?? ''} | ${GO_ON(index)}`], STEPS.length);
    expect(recipeOf(text)).toEqual(STEPS.map(([, words], index) => `Mode ${index}: ${words} (Step)`));
  });

  it('tells which switch to move where', () => {
    const text = scheme(() => [`anyone | Step | right difficulty | at A | ${GO_ON(0)}`], 1);
    expect(recipeOf(text)).toEqual([
      'Mode 0: move right difficulty to A',
      'Mode 0: anyone leaves right difficulty at A (Step)',
    ]);
  });

  it('names the first row of those that do the same', () => {
    const rows = [
      `game | Wait | | | ${GO_ON(0)}`,
      `left | Step | button | press | ${GO_ON(0)}`,
      `anyone | Leap | RESET | press | ${GO_ON(0)}`,
    ];
    expect(recipeOf(scheme(() => rows, 1))).toEqual(['Mode 0: the game does it by itself (Wait)']);
    expect(recipeOf(scheme(() => [...rows].reverse(), 1))).toEqual(['Mode 0: anyone presses RESET (Leap)']);
    expect(recipeOf(scheme(() => [...rows.slice(1), ...rows.slice(0, 1)], 1))).toEqual([
      'Mode 0: the left player presses left button (Step)',
    ]);
  });

  it('is empty at the start', () => {
    expect(recipeOf(scheme(() => [], 0))).toEqual([]);
  });
});
