import { describe, expect, it } from 'vitest';
import { createReport } from '../../src/findings/report.js';
import { AMOUNTS, ROWS } from '../../src/language/amounts.js';
import { LIMITS } from '../../src/language/limits.js';
import { readScheme } from '../../src/language/read.js';
import { smallText } from '../support/small-scheme.js';

const times = (count: number, make: (index: number) => string): readonly string[] =>
  Array.from({ length: count }, (_, index) => make(index + 1));

const ROW = { action: 'Wave', control: 'button', gesture: 'press' };
const plain = smallText([ROW]);
const table = (heading: string, heads: string, rows: readonly string[]): string =>
  `\n## ${heading}\n\n| ${heads} |\n${heads.replace(/[^|]+/g, ' --- ').replace(/^/, '|')}|\n${rows.map(row => `| ${row} |`).join('\n')}\n`;

const lines = (text: string): readonly string[] => text.split('\n');
const moreRows = (after: string, rows: readonly string[]): string => {
  const at = lines(plain).findIndex(line => line.startsWith(after));
  return lines(plain)
    .toSpliced(at + 1, 0, ...rows)
    .join('\n');
};

interface Limit {
  readonly name: string;
  readonly most: number;
  /** A scheme that holds so many of what is limited. */
  readonly scheme: (count: number) => string;
}

const BINDING = '| each | Wave | button | press | | | | |';

const limits: readonly Limit[] = [
  {
    name: 'characters',
    most: LIMITS.characters,
    scheme: count =>
      plain + `${'word '.repeat(99)}abcd\n`.repeat(count / 500 + 1).slice(0, count - plain.length),
  },
  {
    name: 'characters of a line',
    most: LIMITS.lineCharacters,
    scheme: count => `${plain}\n${'x'.repeat(count)}`,
  },
  {
    name: 'marks of emphasis in a paragraph',
    most: LIMITS.marksInBlock,
    scheme: count => `${plain}\n## Manual: A\n\n${'*a '.repeat(count)}`,
  },
  {
    name: 'marks of lists at the beginning of a line',
    most: LIMITS.nestedMarks - 1,
    scheme: count => `${plain}\n## Manual: A\n\n${'> '.repeat(count)}a`,
  },
  {
    name: 'spaces at the beginning of a line',
    most: LIMITS.indent - 1,
    scheme: count => `${plain}\n## Manual: A\n\n- a\n${' '.repeat(count)}b`,
  },
  {
    name: 'modes',
    most: AMOUNTS.modes,
    scheme: count =>
      plain +
      times(count - 1, index =>
        table(`Mode: M${index}`, HEADS, ['each | Wave | button | press | go to Yard']),
      ).join(''),
  },
  {
    name: 'rows of a mode',
    most: ROWS.mode,
    scheme: count =>
      moreRows(
        '| each',
        times(count - 1, () => BINDING),
      ),
  },
  { name: 'rows of all modes', most: AMOUNTS.bindings, scheme: allRows },
  {
    name: 'alternatives',
    most: AMOUNTS.alternatives,
    scheme: count => smallText([{ ...ROW, control: times(count, chordOf).join(' or ') }]),
  },
  {
    name: 'seats rows',
    most: ROWS.seats,
    scheme: count =>
      moreRows(
        '| Solo',
        times(count - 1, index => `| S${index} | 1 | joystick | empty |`),
      ),
  },
  {
    name: 'settings',
    most: ROWS.settings,
    scheme: count =>
      moreRows(
        '| Lamp',
        times(count - 1, index => `| L${index} | a, b | a | game |`),
      ),
  },
  {
    name: 'values of a setting',
    most: 256,
    scheme: count => plain.replace('out, lit | out', `1 to ${count} | 1`),
  },
  {
    name: 'actions',
    most: ROWS.actions,
    scheme: count =>
      moreRows(
        '| Wave',
        times(count - 1, index => `| A${index} | Do it |`),
      ),
  },
  {
    name: 'console profiles',
    most: ROWS.consoles,
    scheme: count =>
      plain +
      table(
        'Consoles',
        'Console | RESET | SELECT | TV type | Left difficulty | Right difficulty',
        times(count, index => `C${index} | front | front | front | front | front`),
      ),
  },
  {
    name: 'variations',
    most: ROWS.variations,
    scheme: count =>
      plain +
      table(
        'Variations',
        'Variation | Lamp',
        times(count, index => `V${index} | lit`),
      ),
  },
  {
    name: 'fallbacks',
    most: ROWS.fallbacks,
    scheme: count =>
      plain +
      table(
        'Fallbacks',
        'Without | For | Instead',
        times(count, () => 'SELECT | Wave | Yard: button press'),
      ),
  },
  {
    name: 'times',
    most: ROWS.timing,
    scheme: count =>
      plain +
      table(
        'Timing',
        'Name | Time',
        times(count, index => `T${index} | 1 s`),
      ),
  },
  {
    name: 'accepted findings',
    most: ROWS.accepted,
    scheme: count =>
      plain +
      table(
        'Accepted',
        'Rule | Where | Why',
        times(count, () => 'no-words | Wave | Because'),
      ),
  },
  {
    name: 'rows of own controllers',
    most: ROWS.controllers,
    scheme: count =>
      plain +
      table(
        'Controllers',
        'Controller | Control | Line',
        times(count, index => `P${index} | lever | up`),
      ),
  },
];

const HEADS = 'Who | Action | Control | Gesture | Then';

/** Modes of as many rows as one may have, and one with the rest. */
function allRows(count: number): string {
  const full = Math.floor((count - 1) / ROWS.mode);
  const sizes = [...Array.from({ length: full }, () => ROWS.mode), (count - 1) % ROWS.mode].filter(
    size => size > 0,
  );
  return (
    plain +
    sizes
      .map((size, index) =>
        table(
          `Mode: M${index}`,
          HEADS,
          times(size, () => 'each | Wave | button | press | '),
        ),
      )
      .join('')
  );
}

function read(text: string) {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'yard.md', text }], report);
  return { scheme, findings };
}

/** Says that there is a limit, and which. */
const isOfLimit = (message: string, most: number): boolean =>
  message.includes(String(most)) || /nested too deeply/.test(message);

describe('each limit', () => {
  it.each(limits.map(limit => [limit.name, limit] as const))(
    'is told where it is passed, not before: %s',
    (_, { most, scheme }) => {
      expect(
        read(scheme(most)).findings.filter(({ message }) =>
          /limit|longer than|more than|nested/.test(message),
        ),
      ).toEqual([]);
      const { findings, scheme: over } = read(scheme(most + 1));
      const told = findings.filter(({ message }) => isOfLimit(message, most));
      expect(told.map(({ rule }) => rule)).toEqual(['bad-value']);
      expect(findings).toEqual(told);
      expect(over?.complete ?? false).toBe(false);
    },
  );
});

/** Two keys, no pair twice. */
const chordOf = (index: number): string =>
  `key ${1 + (index % 4)} + key ${5 + (Math.floor(index / 4) % 5)}`.concat(index > 19 ? ' + key star' : '');
