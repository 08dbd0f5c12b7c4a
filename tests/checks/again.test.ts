import { expect, it } from 'vitest';
import { compile } from '../../src/compile.js';
import { writeReportJson } from '../../src/documents/report-json.js';
import { createReader } from '../../src/language/read.js';

const SCHEME = `# Orchard

## Game

| Item | Value |
| --- | --- |
| Short name | OR |
| Consoles | no-difficulty |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Solo | 1 | joystick | empty |

## Settings

| Setting | Values | Starts as | Set by |
| --- | --- | --- | --- |
| Wind | mild, wild | mild | left difficulty: B mild, A wild |

## Actions

| Action | Say it as |
| --- | --- |
| Shake | Shake the tree |

## Mode: Grove

| Who | Action | Control | Gesture |
| --- | --- | --- | --- |
| left | Shake | button | hold long |

## Timing

| Name | Time |
| --- | --- |
| long | 9 s |
`;

/** Each moves what a finding points at, without changing what it says. */
const CHANGES: readonly (readonly [string, (text: string) => string])[] = [
  ['a line of dashes in the settings', text => text.replace('Set by |\n| --- |', 'Set by |\n| -------- |')],
  ['a line of dashes in the times', text => text.replace('Time |\n| --- |', 'Time |\n| ------ |')],
  ['more room in the seats', text => text.replace('| Solo | 1 |', '| Solo   |   1 |')],
  [
    'more room in the actions',
    text => text.replace('| Shake | Shake the tree |', '|   Shake |  Shake the tree |'),
  ],
  ['a paragraph above everything', text => text.replace('## Game', 'Pick the apples.\n\n## Game')],
];

it.each(CHANGES)('a finding stands where it stands now after a change: %s', (_, change) => {
  const read = createReader();
  const told = (text: string, reader = read) => {
    const files = [{ path: 'scheme.md', text }];
    return writeReportJson({ ...compile(files, { read: reader }), files });
  };
  const changed = change(SCHEME);
  expect(changed).not.toBe(SCHEME);
  const first = told(SCHEME);
  expect(first).toContain('"no-fallback"');
  expect(first).toContain('"too-long-for-a-byte"');
  expect(told(changed)).toBe(told(changed, createReader()));
  expect(told(SCHEME)).toBe(first);
});
