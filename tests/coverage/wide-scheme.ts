import fc from 'fast-check';

/** Schemes with few modes but thousands of states: many settings, each read and changed by the rows of others. */
export const wideScheme: fc.Arbitrary<string> = fc
  .record({
    sizes: fc.array(fc.integer({ min: 2, max: 5 }), { minLength: 4, maxLength: 5 }),
    modes: fc.array(fc.array(wideRow(), { minLength: 2, maxLength: 7 }), { minLength: 2, maxLength: 3 }),
    variations: fc.array(fc.array(fc.nat(), { minLength: 5, maxLength: 5 }), { minLength: 1, maxLength: 5 }),
  })
  .map(write);

function wideRow() {
  return fc.record({
    when: fc.array(fc.tuple(fc.nat(), fc.boolean(), fc.nat()), { maxLength: 2 }),
    effects: fc.array(fc.tuple(fc.nat(), fc.constantFrom('next', 'previous', 'value'), fc.nat()), {
      maxLength: 3,
    }),
    goTo: fc.option(fc.nat(), { freq: 2 }),
  });
}

interface Parts {
  readonly sizes: readonly number[];
  readonly modes: readonly (readonly Row[])[];
  readonly variations: readonly (readonly number[])[];
}

interface Row {
  readonly when: readonly (readonly [number, boolean, number])[];
  readonly effects: readonly (readonly [number, string, number])[];
  readonly goTo: number | null;
}

function write({ sizes, modes, variations }: Parts): string {
  const settings = sizes.map((size, index) => `| Dial ${index} | 1 to ${size} | 1 | game |`);
  const cells = variations.map((numbers, index) =>
    sizes.map((size, at) => numeral((numbers[at] ?? 0) + index, size)).join(' | '),
  );
  const rowsOf = (rows: readonly Row[]) => rows.map(row => writeRow(row, sizes, modes.length)).join('\n');
  return [
    '# Wide\n',
    '## Game\n\n| Item | Value |\n| - | - |\n| Short name | W |\n| Consoles | four-switch |\n',
    '## Seats\n\n| Seats | Players | Left port | Right port |\n| - | - | - | - |\n| Solo | 1 | joystick | empty |\n',
    `## Settings\n\n| Setting | Values | Starts as | Set by |\n| - | - | - | - |\n${settings.join('\n')}\n| Wind | mild, wild | mild | left difficulty: B mild, A wild |\n`,
    '## Actions\n\n| Action | Say it as |\n| - | - |\n| Act | Do it |\n',
    ...modes.map(
      (rows, mode) =>
        `## Mode: Mode ${mode}\n\n| Who | Action | Control | Gesture | When | Then |\n| - | - | - | - | - | - |\n${rowsOf(rows)}\n`,
    ),
    `## Variations\n\n| Variation | ${sizes.map((_, index) => `Dial ${index}`).join(' | ')} |\n|${' - |'.repeat(sizes.length + 1)}\n${cells.map((row, index) => `| ${index + 1} | ${row} |`).join('\n')}\n`,
  ].join('\n');
}

const numeral = (number: number, size: number): string => String((number % size) + 1);

function writeRow({ when, effects, goTo }: Row, sizes: readonly number[], modes: number): string {
  const conditions = when.map(([setting, is, value]) => {
    if (setting % (sizes.length + 1) === sizes.length) return `Wind is ${is ? 'wild' : 'not wild'}`;
    const index = setting % sizes.length;
    return `Dial ${index} is ${is ? '' : 'not '}${numeral(value, sizes[index] ?? 1)}`;
  });
  const changes = effects.map(([setting, how, value]) => {
    const index = setting % sizes.length;
    return `Dial ${index}: ${how === 'value' ? numeral(value, sizes[index] ?? 1) : how}`;
  });
  if (goTo !== null) changes.push(`go to Mode ${goTo % modes}`);
  return `| left | Act | button | press | ${conditions.join(' and ')} | ${changes.join('; ')} |`;
}
