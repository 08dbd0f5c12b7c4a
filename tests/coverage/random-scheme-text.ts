/** Writes the schemes of random-scheme.ts as Markdown. */

interface Setting {
  readonly name: string;
  readonly values: readonly string[];
  readonly setBy: string;
}

const SEATS: Readonly<Record<string, string>> = {
  Solo: '1 | joystick | empty',
  Duet: '2 | joystick | joystick',
  Keys: '2 | keypad | joystick',
  Knobs: '2 | paddles | wheel',
  Guns: '2 | gun | joystick',
};

const SWITCHED: Readonly<Record<string, Setting>> = {
  Wind: { name: 'Wind', values: ['mild', 'wild'], setBy: 'left difficulty: B mild, A wild' },
  Tide: { name: 'Tide', values: ['low', 'high', 'spring'], setBy: 'right difficulty: B high, A low' },
  Lamp: { name: 'Lamp', values: ['lit', 'dark'], setBy: 'TV type: COLOR lit, B-W dark' },
  Mist: { name: 'Mist', values: ['thin', 'thick'], setBy: 'left difficulty: B thin, A thick' },
};

const table = (head: string, rows: readonly string[]): string =>
  rows.length === 0
    ? ''
    : [`| ${head} |`, `|${' --- |'.repeat(head.split('|').length)}`, ...rows.map(row => `| ${row} |`)].join(
        '\n',
      );

const section = (heading: string, body: string): string => (body === '' ? '' : `## ${heading}\n\n${body}\n`);

const pick = <T>(list: readonly T[], number: number): T => {
  const found = list[number % Math.max(1, list.length)];
  if (found === undefined) throw new RangeError('nothing to pick from');
  return found;
};

export interface Parts {
  readonly consoles: readonly string[];
  readonly standards: string;
  readonly seats: readonly string[];
  readonly settings: number;
  readonly switched: readonly string[];
  readonly needs: readonly string[];
  readonly modes: readonly {
    readonly kind: string;
    readonly seats: number | null;
    readonly rows: readonly Row[];
  }[];
  readonly fallbacks: readonly {
    readonly without: string;
    readonly subject: number;
    readonly instead: string;
    readonly mode: number;
    readonly value: number;
  }[];
  readonly variations: readonly (readonly number[])[];
}

export function writeScheme(parts: Parts): string {
  const own = Array.from({ length: parts.settings }, (_, index) => ({
    name: `Level ${index}`,
    values: ['one', 'two', 'three'].slice(0, 2 + (index % 2)),
    setBy: 'game',
  }));
  const settings: Setting[] = [...own, ...parts.switched.map(name => pick([SWITCHED[name]], 0) as Setting)];
  const scheme = { settings, modes: parts.modes.map((_, index) => `Mode ${index}`) };
  const fallbacks = parts.fallbacks.map(each => fallbackRow(each, scheme));
  return [
    '# Test\n\nA test.\n',
    section(
      'Game',
      table('Item | Value', [
        'Short name | T',
        `Consoles | ${parts.consoles.join(', ')}`,
        `TV standards | ${parts.standards}`,
      ]),
    ),
    section(
      'Consoles',
      table('Console | RESET | SELECT | TV type | Left difficulty | Right difficulty', [
        'bare | front | absent | fixed COLOR | fixed B | fixed A',
        'odd | absent | front | rear | front | fixed B',
      ]),
    ),
    section(
      'Controllers',
      table('Controller | Control | Line', ['gun | trigger | button', 'gun | sight | up']),
    ),
    section(
      'Seats',
      table(
        'Seats | Players | Left port | Right port',
        parts.seats.map(name => `${name} | ${SEATS[name]}`),
      ),
    ),
    section(
      'Settings',
      table(
        'Setting | Values | Starts as | Set by',
        settings.map(
          ({ name, values, setBy }) =>
            `${name} | ${values.join(', ')} | ${startOf(values, setBy)} | ${setBy}`,
        ),
      ),
    ),
    section(
      'Actions',
      table(
        'Action | Say it as | Need',
        parts.needs.map((each, index) => `Act ${index} | Do it | ${each}`),
      ),
    ),
    ...parts.modes.map(({ kind, seats, rows }, index) =>
      section(
        `Mode: Mode ${index}`,
        [
          `- Kind: ${kind}`,
          index > 0 && seats !== null ? `- Seats: ${pick(parts.seats, seats)}` : '',
          '',
          table(
            'Who | Action | Control | Gesture | When | Then',
            rows.map(row => bindingRow(row, scheme)),
          ),
        ]
          .filter((line, at) => line !== '' || at > 1)
          .join('\n'),
      ),
    ),
    section('Fallbacks', table('Without | For | Instead', fallbacks)),
    section(
      'Variations',
      settings.length === 0
        ? ''
        : table(
            `Variation | Seats | ${settings.map(({ name }) => name).join(' | ')}`,
            parts.variations.map((numbers, index) => variationRow(index, numbers, settings, parts.seats)),
          ),
    ),
  ].join('\n');
}

type Row = {
  readonly who: string;
  readonly action: number;
  readonly control: readonly [string, string];
  readonly when: readonly (readonly [number, boolean, number])[];
  readonly goTo: number | null;
  readonly set: readonly (readonly [number, string, number])[];
};

interface Names {
  readonly settings: readonly Setting[];
  readonly modes: readonly string[];
}

/** A value that the setting can have at the start. */
const startOf = (values: readonly string[], setBy: string): string =>
  pick(
    values.filter(value => setBy === 'game' || setBy.includes(value)),
    setBy.length,
  );

function bindingRow({ who, action, control, when, goTo, set }: Row, { settings, modes }: Names): string {
  const kept = settings.filter(({ setBy }) => setBy === 'game');
  const conditions =
    settings.length === 0
      ? []
      : when.map(([setting, is, value]) => {
          const { name, values } = pick(settings, setting);
          return `${name} is ${is ? '' : 'not '}${pick(values, value)}`;
        });
  const effects =
    kept.length === 0
      ? []
      : set.map(([setting, how, value]) => {
          const { name, values } = pick(kept, setting);
          return `${name}: ${how === 'value' ? pick(values, value) : how}`;
        });
  if (goTo !== null) effects.push(`go to ${pick(modes, goTo)}`);
  const [words, gesture] = who === 'game' ? ['', ''] : control;
  return `${who} | Act ${action} | ${words} | ${gesture} | ${conditions.join(' and ')} | ${effects.join('; ')}`;
}

function fallbackRow(
  { without, subject, instead, mode, value }: Parts['fallbacks'][number],
  { settings, modes }: Names,
): string {
  const switched = settings.filter(({ setBy }) => setBy.startsWith(without));
  const setting = switched.length === 0 || subject % 3 === 0 ? null : pick(switched, subject);
  if (setting !== null && instead === 'stays')
    return `${without} | ${setting.name} | stays ${pick(setting.values, value)}`;
  const control = instead === 'stays' ? 'button press' : instead;
  return `${without} | ${setting?.name ?? `Act ${subject % 4}`} | ${pick(modes, mode)}: ${control}`;
}

function variationRow(
  index: number,
  numbers: readonly number[],
  settings: readonly Setting[],
  seats: readonly string[],
): string {
  const [first = 0] = numbers;
  const cells = settings.map(({ values }, at) => {
    const number = numbers[at + 1] ?? 0;
    return number % 3 === 0 ? '' : pick(values, number);
  });
  return `${index + 1} | ${first % 2 === 0 ? '' : pick(seats, first)} | ${cells.join(' | ')}`;
}
