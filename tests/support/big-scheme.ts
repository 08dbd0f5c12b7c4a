/** How large a made-up scheme is. */
export interface BigSchemeSize {
  /** At least 1; the first is the menu. */
  readonly modes: number;
  /** Rows of each mode, at least 4. */
  readonly rows: number;
  /** Settings of four values each, all set by the game. */
  readonly settings: number;
  readonly variations: number;
  /** At least 1; the first three are the built-in ones. */
  readonly consoles: number;
  readonly seats: number;
  /** 1 to 3. */
  readonly standards: number;
}

/** The size that the speed of `check` is stated for. */
export const USUAL_SIZE: BigSchemeSize = {
  modes: 64,
  rows: 32,
  settings: 3,
  variations: 4,
  consoles: 3,
  seats: 2,
  standards: 2,
};

const VALUES = 4;
const BUILT_IN = ['six-switch', 'four-switch', 'no-difficulty'];
const STANDARDS = ['NTSC', 'PAL', 'SECAM'];
const VERBS = ['Lift', 'Turn', 'Paint', 'Count', 'Weigh', 'Polish', 'Hide', 'Fetch', 'Stack'];
const THINGS = [
  'the jar',
  'the crate',
  'the bell',
  'the lamp',
  'the rope',
  'the map',
  'the kite',
  'the drum',
];

/**
 * The text of a scheme of a given size, played on keypads: taps and holds of one key, split by the value of a
 * setting, so that no two rows clash.
 */
export function bigScheme(size: BigSchemeSize): string {
  return [
    '# Harbour Warehouse\n\nA storehouse with more rooms than anyone has counted.\n',
    gameOf(size),
    consolesOf(size),
    seatsOf(size),
    settingsOf(size),
    actionsOf(size),
    ...times(size.modes, mode => modeOf(mode, size)),
    table(
      'Timing',
      ['Name', 'Time'],
      [
        ['short press', '0.5 s'],
        ['long press', '2 s'],
      ],
    ),
    variationsOf(size),
  ].join('\n');
}

const times = <T>(count: number, make: (index: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, index) => make(index));

function table(heading: string, columns: readonly string[], rows: readonly (readonly string[])[]): string {
  if (rows.length === 0) return '';
  return `## ${heading}\n\n${tableText(columns, rows)}`;
}

/** Cells padded as an editor would, so that the text is as long as a real one. */
function tableText(columns: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = columns.map((name, index) =>
    Math.max(...[columns, ...rows].map(row => row[index]?.length ?? 0), name.length),
  );
  const line = (cells: readonly string[]): string =>
    `| ${widths.map((width, index) => (cells[index] ?? '').padEnd(width)).join(' | ')} |\n`;
  return line(columns) + line(widths.map(width => '-'.repeat(width))) + rows.map(line).join('');
}

const consoleNames = ({ consoles }: BigSchemeSize): readonly string[] =>
  times(consoles, index => BUILT_IN[index] ?? `cabin-${index}`);

function gameOf(size: BigSchemeSize): string {
  return table(
    'Game',
    ['Item', 'Value'],
    [
      ['Short name', 'HW'],
      ['Consoles', consoleNames(size).join(', ')],
      ['TV standards', STANDARDS.slice(0, size.standards).join(', ')],
      ['Starts in', modeName(0)],
    ],
  );
}

function consolesOf(size: BigSchemeSize): string {
  const own = consoleNames(size).slice(BUILT_IN.length);
  return table(
    'Consoles',
    ['Console', 'left difficulty'],
    own.map(name => [name, 'fixed A']),
  );
}

function seatsOf({ seats }: BigSchemeSize): string {
  const rows = times(seats, index =>
    index % 2 === 0
      ? [`Watch ${index + 1}`, '1', 'keypad', 'empty']
      : [`Watch ${index + 1}`, '2', 'keypad', 'keypad'],
  );
  return table('Seats', ['Seats', 'Players', 'Left port', 'Right port'], rows);
}

const settingName = (index: number): string => `Shelf ${index + 1}`;

function settingsOf({ settings }: BigSchemeSize): string {
  const rows = times(settings, index => [settingName(index), `1 to ${VALUES}`, '1', 'game']);
  return table('Settings', ['Setting', 'Values', 'Starts as', 'Set by'], rows);
}

/** Each mode has the same actions, one for each row. */
function actionName(index: number): string {
  const name = `${VERBS[index % VERBS.length] ?? ''} ${THINGS[Math.floor(index / VERBS.length) % THINGS.length] ?? ''}`;
  const round = Math.floor(index / (VERBS.length * THINGS.length));
  return round === 0 ? name : `${name} ${round + 1}`;
}

function actionsOf({ rows }: BigSchemeSize): string {
  const lines = times(rows, index => [
    actionName(index),
    `${actionName(index)} in this room`,
    `KEY ${index}`,
    'must',
  ]);
  return table('Actions', ['Action', 'Say it as', 'Short', 'Need'], lines);
}

const modeName = (index: number): string => (index === 0 ? 'Front desk' : `Room ${index}`);

const BINDING_COLUMNS = ['Who', 'Action', 'Control', 'Gesture', 'When', 'Then'];

function modeOf(mode: number, size: BigSchemeSize): string {
  const next = modeName((mode + 1) % size.modes);
  const ways: readonly (readonly string[])[] = [
    ['anyone', 'RESET', 'hold long press', '', `go to ${modeName(0)}`],
    ['anyone', 'SELECT', 'hold short press', '', mode === 0 ? `go to ${next}` : `go to ${modeName(0)}`],
    ['each', 'key hash', 'press', '', `go to ${next}`],
    ...times(2, index => stepRow('key star', mode, index, size)),
    ...times(2, index => stepRow('key 0', mode + 1, index, size)),
  ];
  const rows = times(size.rows, index => {
    const [who = '', control = '', gesture = '', when = '', then = ''] =
      ways[index] ?? keyRow(index - ways.length, mode, size);
    return [who, actionName(index), control, gesture, when, then];
  });
  const facts = mode === 0 ? '- Kind: menu\n\n' : '';
  return `## Mode: ${modeName(mode)}\n\nThe shelves go up to the roof here.\n\n${facts}${tableText(BINDING_COLUMNS, rows)}`;
}

/** A tap steps a setting on, a hold steps it back. */
function stepRow(
  control: string,
  setting: number,
  index: number,
  { settings }: BigSchemeSize,
): readonly string[] {
  const name = settingName(setting % Math.max(1, settings));
  const then = settings === 0 ? '' : `${name}: ${index === 0 ? 'next' : 'previous'}`;
  return ['each', control, GESTURES[index] ?? '', '', then];
}

const GESTURES = ['tap under short press', 'hold short press'];
const KEYS = 9;

function keyRow(index: number, mode: number, { settings }: BigSchemeSize): readonly string[] {
  const gesture = GESTURES[Math.floor(index / KEYS) % GESTURES.length] ?? '';
  const value = Math.floor(index / (KEYS * GESTURES.length)) % VALUES;
  const when = settings === 0 ? '' : `${settingName(mode % settings)} is ${value + 1}`;
  return ['each', `key ${(index % KEYS) + 1}`, gesture, when, ''];
}

function variationsOf({ variations, settings }: BigSchemeSize): string {
  const rows = times(variations, index => [
    `${index + 1}`,
    ...times(settings, setting => String((Math.floor(index / VALUES ** setting) % VALUES) + 1)),
  ]);
  return table('Variations', ['Variation', ...times(settings, settingName)], rows);
}
