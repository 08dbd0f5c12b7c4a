import fc from 'fast-check';

/**
 * Schemes in which no two rows of a mode share a control, so that doing one row does nothing else: there a recipe
 * must arrive whatever the gestures are.
 */
export const tidyScheme: fc.Arbitrary<string> = fc
  .record({
    modes: fc.array(
      fc.record({ isPlay: fc.boolean(), rows: fc.shuffledSubarray(keysOf(10), { maxLength: 6 }) }),
      {
        minLength: 2,
        maxLength: 5,
      },
    ),
    gestures: fc.array(fc.nat(), { minLength: 60, maxLength: 60 }),
    thens: fc.array(fc.nat(), { minLength: 60, maxLength: 60 }),
    whens: fc.array(fc.nat(), { minLength: 60, maxLength: 60 }),
    variations: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.nat()), { maxLength: 4 }),
    every: fc.constantFrom('every frame', 'every 2 frames', 'every 3 frames'),
    stays: fc.boolean(),
  })
  .map(write);

function keysOf(count: number): number[] {
  return Array.from({ length: count }, (_, index) => index);
}

const CONTROLS = [
  ['anyone', 'RESET'],
  ['anyone', 'SELECT'],
  ['left', 'stick up'],
  ['left', 'stick left + button'],
  ['right', 'key 1'],
  ['right', 'key 5 + key star'],
  ['right', 'key 9'],
  ['anyone', 'right difficulty'],
  ['game', ''],
  ['left', 'stick down'],
] as const;

const GESTURES = [
  'press',
  'release',
  'held',
  'hold 0.25 s',
  'hold 20 frames',
  'tap under 0.3 s',
  'double tap within 0.4 s',
  'repeat every 0.35 s',
];

interface Parts {
  readonly modes: readonly { readonly isPlay: boolean; readonly rows: readonly number[] }[];
  readonly gestures: readonly number[];
  readonly thens: readonly number[];
  readonly whens: readonly number[];
  readonly variations: readonly (readonly [number, number, number])[];
  readonly every: string;
  readonly stays: boolean;
}

const SETTINGS = [
  ['Wind', ['mild', 'wild']],
  ['Slope', ['1', '2', '3', '4']],
  ['Fog', ['off', 'low', 'high']],
] as const;

function write({ modes, gestures, thens, whens, variations, every, stays }: Parts): string {
  const at = (list: readonly number[], mode: number, row: number) =>
    list[(mode * 10 + row) % list.length] ?? 0;
  const sections = modes.map(({ isPlay, rows }, mode) => {
    const lines = rows.map(row => {
      const [who = '', control = ''] = CONTROLS[row] ?? [];
      const number = at(gestures, mode, row);
      const gesture = gestureOf(control, number);
      return `| ${who} | Act ${row} | ${control} | ${gesture} | ${whenOf(at(whens, mode, row))} | ${thenOf(at(thens, mode, row), modes.length)} |`;
    });
    const head = '| Who | Action | Control | Gesture | When | Then |\n| - | - | - | - | - | - |\n';
    return `## Mode: Mode ${mode}\n\n- Kind: ${isPlay ? 'play' : 'menu'}\n\n${lines.length === 0 ? '' : head}${lines.join('\n')}\n`;
  });
  const cells = variations.map(
    (numbers, index) =>
      `| ${index + 1} | ${SETTINGS.map(([, values], setting) => values[(numbers[setting] ?? 0) % values.length]).join(' | ')} |`,
  );
  return [
    '# Tidy\n',
    `## Game\n\n| Item | Value |\n| - | - |\n| Short name | T |\n| TV standards | NTSC, PAL |\n| Reads inputs | ${every} |\n`,
    '## Seats\n\n| Seats | Players | Left port | Right port |\n| - | - | - | - |\n| Mixed | 2 | joystick | keypad |\n',
    '## Settings\n\n| Setting | Values | Starts as | Set by |\n| - | - | - | - |\n| Wind | mild, wild | wild | left difficulty: B mild, A wild |\n| Slope | 1 to 4 | 2 | game |\n| Fog | off, low, high | off | game |\n',
    `## Actions\n\n| Action | Say it as |\n| - | - |\n${CONTROLS.map((_, row) => `| Act ${row} | Do it |`).join('\n')}\n`,
    ...sections,
    `## Fallbacks\n\n| Without | For | Instead |\n| - | - | - |\n| left difficulty | Wind | ${stays ? 'stays mild' : 'Mode 0: left stick right press'} |\n`,
    cells.length === 0
      ? ''
      : `## Variations\n\n| Variation | Wind | Slope | Fog |\n| - | - | - | - |\n${cells.join('\n')}\n`,
  ].join('\n');
}

function gestureOf(control: string, number: number): string {
  if (control === '') return '';
  if (control.endsWith('difficulty')) return ['flip', 'flip to A', 'flip to B'][number % 3] ?? '';
  return GESTURES[number % GESTURES.length] ?? '';
}

const WHENS = [
  '',
  '',
  'Wind is wild',
  'Slope is not 2',
  'Fog is low',
  'Slope is 4 and Fog is not off',
  'Fog is high',
];
const whenOf = (number: number): string => WHENS[number % WHENS.length] ?? '';

const STEPS = ['', 'Slope: next', 'Slope: previous', 'Fog: next', 'Fog: high; Slope: next', 'Slope: 1'];

function thenOf(number: number, modes: number): string {
  const steps = STEPS[number % STEPS.length] ?? '';
  const goTo = number % 7 < 4 ? `go to Mode ${Math.floor(number / 7) % modes}` : '';
  return [steps, goTo].filter(text => text !== '').join('; ');
}
