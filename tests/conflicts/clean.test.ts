import { describe, expect, it } from 'vitest';
import { checkConflicts } from '../../src/checks/conflicts.js';
import { CONFLICTS_RULES } from '../../src/findings/catalogue/conflicts.js';
import { createReport } from '../../src/findings/report.js';
import { readScheme } from '../../src/language/read.js';
import { type SmallOptions, type SmallRow, smallText } from '../support/small-scheme.js';

function rulesFor(text: string): readonly string[] {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'yard.md', text }], report);
  if (scheme === null) throw new Error('no scheme');
  expect(findings.map(({ message }) => message)).toEqual([]);
  checkConflicts(scheme, report);
  return findings.map(({ rule }) => rule);
}

/** Designs that are good: none of the family’s rules finds anything. */
const CLEAN: readonly {
  readonly name: string;
  readonly rows: readonly SmallRow[];
  readonly options?: SmallOptions;
}[] = [
  {
    name: 'a tap and a hold of one time',
    rows: [
      { action: 'Hop', control: 'button', gesture: 'tap under 0.5 s' },
      { action: 'Rest', control: 'button', gesture: 'hold 0.5 s' },
    ],
    options: { game: { 'TV standards': 'NTSC, PAL' } },
  },
  {
    name: 'a tap for the part, a chord for the special',
    rows: [
      { action: 'Hop', control: 'button', gesture: 'tap under 0.5 s' },
      { action: 'Roll', control: 'button + stick down', gesture: 'press', insteadOf: 'Hop' },
    ],
  },
  {
    name: 'a release for the part, a chord for the special',
    rows: [
      { action: 'Hop', control: 'button', gesture: 'release' },
      { action: 'Roll', control: 'button + stick down', gesture: 'press', insteadOf: 'Hop' },
    ],
  },
  {
    name: 'a held part that gives way to a chord',
    rows: [
      { action: 'Duck', control: 'stick down', gesture: 'held' },
      { action: 'Roll', control: 'button + stick down', gesture: 'press', insteadOf: 'Duck' },
    ],
  },
  {
    name: 'a hold beside a quick double tap',
    rows: [
      { action: 'Rest', control: 'button', gesture: 'hold 1 s' },
      { action: 'Spin', control: 'button', gesture: 'double tap within 0.3 s' },
    ],
  },
  {
    name: 'the two positions of a switch',
    rows: [
      { who: 'anyone', action: 'Day', control: 'TV type', gesture: 'at COLOR' },
      { who: 'anyone', action: 'Night', control: 'TV type', gesture: 'at B-W' },
    ],
  },
  {
    name: 'chords of opposite directions',
    rows: [
      { action: 'Hop', control: 'button + stick up', gesture: 'press' },
      { action: 'Roll', control: 'button + stick down', gesture: 'press' },
    ],
  },
  {
    name: 'a press that enters a mode with a hold, a tap and a release',
    rows: [
      { mode: 'Gate', action: 'Enter', control: 'button', gesture: 'press', does: 'go to Yard' },
      { action: 'Hop', control: 'button', gesture: 'tap under 0.5 s' },
      { action: 'Rest', control: 'button', gesture: 'hold 0.5 s' },
      { action: 'Leave', control: 'stick up', gesture: 'release', does: 'go to Gate' },
    ],
  },
];

describe('a good design has no finding of this family', () => {
  it.each(CLEAN)('$name', ({ rows, options }) => {
    expect(rulesFor(smallText(rows, options))).toEqual([]);
  });
});

/** The example of each rule’s entry is a table of bindings, or whole modes, that has the fault. */
describe('the catalogue’s example has its fault', () => {
  it.each(Object.entries(CONFLICTS_RULES))('%s', (rule, { example }) => {
    const modes = example.startsWith('##') ? example : `## Mode: Yard\n\n${example}`;
    const cells = [...modes.matchAll(/^\| *(?:each|anyone|left|right) *\| *([^|]+?) *\|/gm)].map(
      ([, action]) => action,
    );
    const settings = ['Lamp | out, lit | out | game', 'Level | 1 to 8 | 1 | game'];
    const text = smallText([{ action: 'x', control: 'button', gesture: 'press' }], { settings })
      .replace(/## Actions[\s\S]*/, '')
      .concat(
        '## Actions\n\n| Action | Say it as |\n| --- | --- |\n',
        [...new Set(cells)].map(action => `| ${action} | Do it |\n`).join(''),
        '\n',
        modes,
        '\n',
      );
    expect(rulesFor(text)).toContain(rule);
  });
});
