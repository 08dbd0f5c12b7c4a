import { describe, expect, test } from 'vitest';
import { recipeText } from '../../src/checks/coverage/recipe-text.js';
import { checkCoverage } from '../../src/checks/coverage.js';
import { createReport } from '../../src/findings/report.js';
import { readScheme } from '../../src/language/read.js';

const HEAD = `# Orchard

## Game

| Item | Value |
| --- | --- |
| Short name | TB |
| Consoles | six-switch, four-switch, no-difficulty |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Solo | 1 | joystick | empty |

## Settings

| Setting | Values | Starts as | Set by |
| --- | --- | --- | --- |
| Wind | mild, wild | mild | left difficulty: B mild, A wild |
| Slope | 1 to 3 | 1 | game |

## Actions

| Action | Say it as | Need |
| --- | --- | --- |
| Begin | Begin now | must |
| Whistle | Whistle now | nice |
| Call | Call now | must |
| Leave | Leave now | must |
`;

const mode = (name: string, kind: string, ...rows: readonly string[]): string =>
  `\n## Mode: ${name}\n\n- Kind: ${kind}\n\n| Who | Action | Control | Gesture | When | Then |\n| --- | --- | --- | --- | --- | --- |\n${rows.map(row => `| ${row} |\n`).join('')}`;

const fallbacks = (...rows: readonly string[]): string =>
  `\n## Fallbacks\n\n| Without | For | Instead |\n| --- | --- | --- |\n${rows.map(row => `| ${row} |\n`).join('')}`;

const TITLE = mode('Title', 'menu', 'anyone | Begin | RESET | press | | go to Grove');
const LEAVE = 'anyone | Leave | RESET | press | | go to Title';
const STAYS = fallbacks('left difficulty | Wind | stays mild');

function check(...sections: readonly string[]) {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'scheme.md', text: HEAD + sections.join('') }], report);
  if (scheme === null || findings.length > 0) throw new Error(findings[0]?.message ?? 'nothing was read');
  const { cells } = checkCoverage(scheme, report);
  return (profile: string, name: string) => {
    const cell = cells.find(each => each.console.name === profile && each.mode.name === name);
    if (cell === undefined) throw new Error(`there is no cell of ${name} on ${profile}`);
    const { verdict, reasons, lostActions, lostValues, recipe } = cell;
    return { said: [verdict, ...reasons], lostActions, lostValues, recipe: recipeText(recipe ?? []) };
  };
}

describe('the reasons of a cell', () => {
  test('a mode that nobody leads to', () => {
    const at = check(TITLE, mode('Grove', 'play', LEAVE), mode('Hall', 'play', LEAVE), STAYS);
    expect(at('six-switch', 'Title').said).toEqual(['plays']);
    expect(at('six-switch', 'Hall').said).toEqual(['broken', 'can’t be reached']);
  });

  test('no way out, and none back, with what decides it', () => {
    const at = check(
      mode(
        'Title',
        'menu',
        'anyone | Begin | RESET | press | | go to Grove',
        'anyone | Begin | SELECT | press | | Slope: next; go to Grove',
      ),
      mode('Grove', 'play', 'anyone | Leave | RESET | press | Slope is not 2 | go to Title'),
      mode('Hall', 'play', LEAVE),
      STAYS,
    );
    expect(at('six-switch', 'Grove').said).toEqual([
      'broken',
      'no way out with “Slope” at 2',
      'no way back to “Title” or a menu with “Slope” at 2',
    ]);
  });

  test('nothing said about a setting, for every mode, or about an action, for its own', () => {
    const at = check(TITLE, mode('Grove', 'play', 'anyone | Call | left difficulty | flip | |', LEAVE));
    const setting = 'nothing is said about “Wind” without the left difficulty switch';
    expect(at('no-difficulty', 'Title').said).toEqual(['broken', setting]);
    expect(at('no-difficulty', 'Grove').said).toEqual([
      'broken',
      setting,
      'nothing is said about “Call” without the left difficulty switch',
      '“Call” is lost for everyone',
    ]);
    expect(at('no-difficulty', 'Grove').lostActions).toEqual(['Call']);
    expect(at('six-switch', 'Grove')).toMatchObject({ said: ['plays'], lostActions: [] });
  });

  test('a row at the rear, an action that is only nice, a value, and a switch that is not there', () => {
    const at = check(
      TITLE,
      mode(
        'Grove',
        'play',
        'left | Whistle | left difficulty | flip | |',
        'anyone | Call | right difficulty | at A | | Slope: 2',
        'anyone | Call | SELECT | press | |',
        LEAVE,
      ),
      STAYS,
    );
    const stays = 'without the left difficulty switch “Wind” stays “mild”';
    expect(at('four-switch', 'Title').said).toEqual(['plays']);
    expect(at('four-switch', 'Grove').said).toEqual([
      'altered',
      '“Whistle” is on the left difficulty switch, at the rear',
      '“Call” is on the right difficulty switch, at the rear',
    ]);
    const value = '“Slope” can’t become “2”';
    expect(at('no-difficulty', 'Title')).toMatchObject({ said: ['altered', value, stays], lostActions: [] });
    expect(at('no-difficulty', 'Grove')).toMatchObject({
      said: ['altered', '“Whistle” is lost for the left player', value, stays],
      lostActions: ['Whistle'],
      lostValues: [{ setting: { name: 'Slope' }, value: '2' }],
    });
  });

  test('fallbacks, with their controls as the scheme writes them', () => {
    const at = check(
      TITLE,
      mode(
        'Grove',
        'play',
        'anyone | Call | left difficulty | flip | |',
        'left | Whistle | right difficulty | flip | |',
        LEAVE,
      ),
      fallbacks(
        'left difficulty | Wind | Title: left stick up or SELECT press',
        'left difficulty | Call | Grove: SELECT + left button press',
        'right difficulty | Whistle | Grove: stick down press',
      ),
    );
    expect(at('no-difficulty', 'Grove').said).toEqual([
      'altered',
      'without the left difficulty switch “Wind” is chosen with left stick up or SELECT in “Title”',
      'without the left difficulty switch “Call” is done with SELECT + left button in “Grove”',
      'without the right difficulty switch “Whistle” is done with stick down in “Grove”',
    ]);
  });
});

test('a recipe tells the first of the rows that do the same for it', () => {
  const at = check(
    mode(
      'Title',
      'menu',
      'anyone | Begin | SELECT | press | | Slope: next; go to Grove',
      'anyone | Begin | RESET | press | | go to Grove',
    ),
    mode('Grove', 'play', LEAVE),
    STAYS,
  );
  expect(at('six-switch', 'Grove').recipe).toEqual(['Title: anyone presses SELECT (Begin)']);
});
