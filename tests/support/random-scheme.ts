import { createRandom, type Random } from './random.js';

/** What a random scheme may hold; everything by default. */
export interface RandomOptions {
  /** 1 to 8 letters and digits. */
  readonly shortName?: string;
  readonly controllers?: readonly string[];
  readonly instead?: boolean;
}

/**
 * A scheme of a game nobody will play, as Markdown without a fault of language, the same for the same seed. It
 * uses all of the language that fires something: every controller, gesture, chord, `When`, `Instead of`, fallback.
 */
export function randomScheme(seed: number, options: RandomOptions = {}): string {
  const random = createRandom(seed);
  const world = createWorld(random, options);
  return [
    '# Chance game\n\nA scheme made by throwing dice.',
    section('Game', ['Item', 'Value'], gameRows(random, world, options.shortName ?? 'RND')),
    section('Seats', ['Seats', 'Players', 'Left port', 'Right port'], world.seats.map(seatCells)),
    section('Settings', ['Setting', 'Values', 'Starts as', 'Set by'], world.settings.map(settingCells)),
    section(
      'Controllers',
      ['Controller', 'Control', 'Line'],
      OWN.map(({ name, line }) => ['panel', name, line]),
    ),
    section(
      'Actions',
      ['Action', 'Say it as', 'Short', 'Need'],
      world.actions.map(name => [name, 'Do it', '', 'nice']),
    ),
    ...world.modes.map((mode, index) => modeText(random, world, mode, index)),
    section('Fallbacks', ['Without', 'For', 'Instead'], fallbackRows(random, world)),
  ]
    .filter(text => text !== '')
    .join('\n\n')
    .concat('\n');
}

interface World {
  readonly seats: readonly Seat[];
  readonly settings: readonly RandomSetting[];
  readonly actions: readonly string[];
  readonly modes: readonly string[];
  readonly instead: boolean;
}

interface Seat {
  readonly name: string;
  readonly left: string;
  readonly right: string;
  readonly players: number;
}

interface RandomSetting {
  readonly name: string;
  readonly values: readonly string[];
  readonly startsAs: string;
  readonly setBy: string;
}

const OWN = [
  { name: 'lever', line: 'up' },
  { name: 'pedal', line: 'pot A' },
  { name: 'bell', line: 'button' },
];
const CONTROLLERS = ['joystick', 'joystick', 'joystick', 'paddles', 'keypad', 'wheel', 'panel'];
const CONTROLS: Readonly<Record<string, readonly string[]>> = {
  joystick: ['stick up', 'stick down', 'stick left', 'stick right', 'button', 'button'],
  paddles: ['paddle button'],
  keypad: ['key 1', 'key 2', 'key 5', 'key 9', 'key star', 'key 0'],
  wheel: ['button'],
  panel: ['lever', 'pedal', 'bell'],
};
const GROUPS: Readonly<Record<string, readonly string[]>> = {
  joystick: ['stick', 'stick left/right', 'stick up/down'],
};
const TURNING: Readonly<Record<string, string>> = { paddles: 'paddle', wheel: 'wheel' };

function createWorld(random: Random, options: RandomOptions): World {
  const controllers = options.controllers ?? CONTROLLERS;
  const seats = Array.from({ length: 1 + random.below(2) }, (_, index): Seat => {
    const left = random.pick(controllers);
    const right = random.chance(0.3) ? 'empty' : random.pick(controllers);
    const most = [left, right].reduce(
      (sum, name) => sum + (name === 'paddles' ? 2 : name === 'empty' ? 0 : 1),
      0,
    );
    return { name: `Row ${index + 1}`, left, right, players: 1 + random.below(most) };
  });
  return {
    seats,
    settings: settingsOf(random),
    actions: Array.from({ length: 4 + random.below(8) }, (_, index) => `Deed ${index + 1}`),
    modes: ['First', 'Second', 'Third'].slice(0, 1 + random.below(3)),
    instead: options.instead ?? true,
  };
}

function settingsOf(random: Random): readonly RandomSetting[] {
  const made: RandomSetting[] = [
    { name: 'Level', values: ['low', 'middle', 'high'], startsAs: 'low', setBy: 'game' },
    { name: 'Wind', values: ['calm', 'gale'], startsAs: 'calm', setBy: 'left difficulty: B calm, A gale' },
    {
      name: 'Hue',
      values: ['bright', 'grey'],
      startsAs: random.pick(['bright', 'grey']),
      setBy: 'TV type: COLOR bright, B-W grey',
    },
  ];
  return made.filter(() => random.chance(0.6));
}

function gameRows(random: Random, world: World, shortName: string): readonly (readonly string[])[] {
  const hasKeypad = world.seats.some(({ left, right }) => left === 'keypad' || right === 'keypad');
  const latch = hasKeypad ? 'off' : random.pick(['off', 'off', 'cleared each read', 'cleared on use']);
  return [
    ['Short name', shortName],
    [
      'Consoles',
      random.pick(['six-switch', 'six-switch, no-difficulty', 'no-difficulty', 'four-switch, no-difficulty']),
    ],
    ['TV standards', random.pick(['NTSC', 'PAL', 'NTSC, PAL', 'NTSC, PAL, SECAM'])],
    ['Reads inputs', random.pick(['every frame', 'every frame', 'every 2 frames'])],
    ['Button latch', latch],
  ];
}

const seatCells = ({ name, players, left, right }: Seat) => [name, String(players), left, right];

const settingCells = ({ name, values, startsAs, setBy }: RandomSetting) => [
  name,
  values.join(', '),
  startsAs,
  setBy,
];

function modeText(random: Random, world: World, name: string, index: number): string {
  const seats = index === 0 ? world.seats : world.seats.filter(() => random.chance(0.8));
  const listed = seats.length === 0 ? world.seats : seats;
  const count = 2 + random.below(9);
  const rows = Array.from({ length: count }, () => bindingRow(random, world, listed));
  const heads = ['Who', 'Action', 'Control', 'Gesture', 'When', 'Then', 'Instead of'];
  const facts =
    listed.length === world.seats.length ? '' : `\n\n- Seats: ${listed.map(seat => seat.name).join(', ')}`;
  return `## Mode: ${name}\n\nAnything may happen.${facts}\n\n${table(
    heads,
    rows.map((row, at) => holdable(row, at, rows)),
  )}`;
}

/** A row holds back only what it can: where its pick can't be, the action of a row that can, or none. */
function holdable(
  row: readonly string[],
  at: number,
  rows: readonly (readonly string[])[],
): readonly string[] {
  const instead = row.at(-1) ?? '';
  const others = rows
    .filter((other, index) => index !== at && canMeet(row[0], other[0]))
    .map(other => other[1]);
  if (instead === '' || others.includes(instead)) return row;
  return [...row.slice(0, -1), others.find(action => action !== row[1]) ?? ''];
}

function canMeet(who: string | undefined, other: string | undefined): boolean {
  return who === other || [who, other].some(word => word === 'each' || word === 'anyone');
}

function bindingRow(random: Random, world: World, seats: readonly Seat[]): readonly string[] {
  const action = random.pick(world.actions);
  const { who, control, gesture } = binding(random, seats);
  const others = world.actions.filter(name => name !== action);
  const instead = world.instead && random.chance(0.25) && others.length > 0 ? random.pick(others) : '';
  return [who, action, control, gesture, whenText(random, world), thenText(random, world), instead];
}

interface Way {
  readonly who: string;
  readonly control: string;
  readonly gesture: string;
}

function binding(random: Random, seats: readonly Seat[]): Way {
  const kind = random.below(10);
  if (kind < 2)
    return {
      who: 'anyone',
      control: random.pick(['RESET', 'SELECT', 'RESET + SELECT']),
      gesture: momentary(random),
    };
  if (kind < 4) return panelSwitch(random);
  const seat = random.pick(seats);
  const port = random.chance(0.6) || seat.right === 'empty' ? 'left' : 'right';
  const controller = port === 'left' ? seat.left : seat.right;
  const turning = TURNING[controller];
  const own = controller === 'paddles' ? random.pick([`${port} A`, `${port} B`]) : port;
  const who = random.chance(0.4) ? 'each' : own;
  if (turning !== undefined && random.chance(0.3)) return { who, control: turning, gesture: 'turn' };
  return { who, control: momentaryControl(random, controller), gesture: momentary(random) };
}

function panelSwitch(random: Random): Way {
  const [control, one, other] = random.pick([
    ['TV type', 'COLOR', 'B-W'],
    ['left difficulty', 'A', 'B'],
    ['right difficulty', 'A', 'B'],
  ] as const);
  const position = random.pick([one, other]);
  return { who: 'anyone', control, gesture: random.pick([`at ${position}`, `flip to ${position}`, 'flip']) };
}

function momentaryControl(random: Random, controller: string): string {
  const single = CONTROLS[controller] ?? ['button'];
  const groups = GROUPS[controller];
  const kind = random.below(10);
  if (groups !== undefined && kind < 3) return random.pick(groups);
  const [one, other] = random.shuffled([...new Set(single)]);
  if (one === undefined) return 'button';
  if (other !== undefined && kind < 5) return `${one} + ${other}`;
  if (other !== undefined && kind < 6) return `${one} or ${other}`;
  if (kind < 7) return `${one} + SELECT`;
  return one;
}

function momentary(random: Random): string {
  const frames = 2 + random.below(12);
  return random.pick([
    'press',
    'press',
    'release',
    'held',
    `hold ${frames} frames`,
    `tap under ${frames} frames`,
    `hold ${random.pick(['0.1 s', '200 ms'])}`,
    `tap under ${random.pick(['0.1 s', '200 ms'])}`,
    `double tap within ${frames + 4} frames`,
    `repeat every ${frames} frames`,
  ]);
}

function whenText(random: Random, { settings }: World): string {
  if (settings.length === 0 || random.chance(0.65)) return '';
  const chosen = random.shuffled(settings).slice(0, random.chance(0.8) ? 1 : 2);
  return chosen
    .map(({ name, values }) => `${name} is ${random.chance(0.4) ? 'not ' : ''}${random.pick(values)}`)
    .join(' and ');
}

function thenText(random: Random, { settings, modes }: World): string {
  const kept = settings.filter(({ setBy }) => setBy === 'game');
  if (random.chance(0.15)) return `go to ${random.pick(modes)}`;
  const setting = kept[0];
  if (setting === undefined || random.chance(0.7)) return '';
  return `${setting.name}: ${random.pick(['next', 'previous', ...setting.values])}`;
}

function fallbackRows(random: Random, { settings, seats }: World): readonly (readonly string[])[] {
  const wind = settings.find(({ name }) => name === 'Wind');
  if (wind === undefined || random.chance(0.3)) return [];
  const sticks = seats.some(({ left }) => left === 'joystick');
  const instead = random.chance(0.4)
    ? 'stays gale'
    : sticks
      ? 'First: left stick up press'
      : 'First: SELECT press';
  return [['left difficulty', 'Wind', instead]];
}

const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return [row(heads), row(heads.map(() => '---')), ...rows.map(row)].join('\n');
}

function section(title: string, heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return rows.length === 0 ? '' : `## ${title}\n\n${table(heads, rows)}`;
}
