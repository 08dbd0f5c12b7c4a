/** Schemes in which coverage is easily wrong by one step, one switch or one console; each must be complete. */

interface Parts {
  readonly game?: readonly string[];
  readonly consoles?: readonly string[];
  readonly seats?: readonly string[];
  readonly settings?: readonly string[];
  readonly actions?: readonly string[];
  /** The first line of a mode is its heading, then facts beginning with `-`, then rows. */
  readonly modes: readonly (readonly string[])[];
  readonly fallbacks?: readonly string[];
  /** The settings of the columns, then the rows. */
  readonly variations?: readonly [string, ...string[]];
}

const table = (head: string, rows: readonly string[]): string =>
  [`| ${head} |`, `|${' - |'.repeat(head.split('|').length)}`, ...rows.map(row => `| ${row} |`)].join('\n');

const section = (heading: string, head: string, rows: readonly string[] = []): string =>
  rows.length === 0 ? '' : `## ${heading}\n\n${table(head, rows)}\n`;

function write({
  game = [],
  consoles,
  seats,
  settings,
  actions,
  modes,
  fallbacks,
  variations,
}: Parts): string {
  const [columns, ...rows] = variations ?? [''];
  const named = modes.flatMap(([, ...lines]) =>
    lines.filter(line => !line.startsWith('-')).map(line => line.split('|')[1]?.trim() ?? ''),
  );
  return [
    '# Test\n\nA test.\n',
    section('Game', 'Item | Value', ['Short name | T', ...game]),
    section('Consoles', 'Console | RESET | SELECT | TV type | Left difficulty | Right difficulty', consoles),
    section('Seats', 'Seats | Players | Left port | Right port', seats ?? ['Solo | 1 | joystick | empty']),
    section('Settings', 'Setting | Values | Starts as | Set by', settings),
    section(
      'Actions',
      'Action | Say it as | Need',
      actions ?? [...new Set(named)].map(name => `${name} | ${name} now | must`),
    ),
    ...modes.map(([name, ...lines]) => {
      const facts = lines.filter(line => line.startsWith('-'));
      const own = lines.filter(line => !line.startsWith('-'));
      const body = own.length === 0 ? '' : table('Who | Action | Control | Gesture | When | Then', own);
      return `## Mode: ${name}\n\n${facts.join('\n')}\n\n${body}\n`;
    }),
    section('Fallbacks', 'Without | For | Instead', fallbacks),
    section('Variations', `Variation | ${columns}`, rows),
  ]
    .filter(text => text !== '')
    .join('\n');
}

const WIND = 'Wind | mild, wild | mild | left difficulty: B mild, A wild';
const FOG = 'Fog | off, low, high, thick, dense | off | game';
const LEAVE = 'anyone | Leave | RESET | press | | go to Title';
const GROVE = ['Grove', LEAVE] as const;

/** A scheme that is played with Wind wild after one row of Title has been done. */
const withWind = (row: string): string =>
  write({
    settings: [WIND],
    modes: [['Title', '- Kind: menu', row], GROVE],
    variations: ['Wind', '1 | mild', '2 | wild'],
  });

export const AWKWARD: Readonly<Record<string, string>> = {
  'a flip that leaves the mode': withWind('anyone | Begin | left difficulty | flip | | go to Grove'),
  'a flip to A that leaves the mode': withWind(
    'anyone | Begin | left difficulty | flip to A | | go to Grove',
  ),
  'a flip to B that leaves the mode': withWind(
    'anyone | Begin | left difficulty | flip to B | | go to Grove',
  ),
  'a switch looked at that leaves the mode': withWind(
    'anyone | Begin | left difficulty | at A | | go to Grove',
  ),
  'a switch looked at where it rests': withWind('anyone | Begin | left difficulty | at B | | go to Grove'),

  'two rows that do the same before one that does not': write({
    settings: [FOG],
    modes: [
      [
        'Title',
        '- Kind: menu',
        'anyone | Begin | RESET | press | | go to Grove',
        'left | More | stick up | press | | Fog: next',
        'left | More still | stick right | press | | Fog: next',
        'left | Less | stick down | press | | Fog: previous',
        'left | Clear | stick left | press | | Fog: off',
      ],
      ['Grove', 'anyone | Leave | RESET | press | | Fog: off; go to Title'],
    ],
    variations: ['Fog', '1 | off', '2 | low', '3 | high', '4 | thick', '5 | dense'],
  }),

  'effects one after the other': write({
    settings: [FOG],
    modes: [
      [
        'Title',
        '- Kind: menu',
        'anyone | Begin | RESET | press | | Fog: thick; Fog: previous; go to Grove',
        'anyone | Choose | SELECT | press | | Fog: next; Fog: next',
      ],
      [
        'Grove',
        'anyone | Leave | SELECT | press | | go to Title',
        'left | Thin | button | press | Fog is high | Fog: previous',
      ],
    ],
    variations: ['Fog', '1 | off', '2 | low', '3 | high', '4 | thick', '5 | dense'],
  }),

  'a fallback for two rows of one action': write({
    game: ['Consoles | six-switch, plain box'],
    consoles: ['plain box | front | absent | front | front | front'],
    settings: ['Fog | off, low | off | game'],
    modes: [
      [
        'Title',
        '- Kind: menu',
        'left | More | stick up | press | | Fog: next',
        'anyone | Begin | SELECT | press | Fog is off | go to Grove',
        'anyone | Begin | SELECT | press | Fog is low | go to Glade',
      ],
      GROVE,
      ['Glade', LEAVE],
    ],
    fallbacks: ['SELECT | Begin | Title: left button press'],
  }),

  'two switches in one row': write({
    game: ['Consoles | six-switch, no-difficulty, grey box'],
    consoles: ['grey box | front | front | front | fixed B | front'],
    settings: [WIND, 'Tide | low, high | high | right difficulty: B low, A high'],
    modes: [
      [
        'Title',
        '- Kind: menu',
        'anyone | Begin | left difficulty or right difficulty | at A | | go to Grove',
        'anyone | Jump | left difficulty or right difficulty | flip to B | Wind is mild | go to Glade',
      ],
      GROVE,
      ['Glade', LEAVE],
    ],
    fallbacks: [
      'left difficulty | Wind | stays mild',
      'right difficulty | Tide | Title: left stick up press',
    ],
    variations: ['Wind | Tide', '1 | wild | low', '2 | mild | high', '3 | mild | low'],
  }),

  'consoles that fix a switch in different positions': write({
    game: ['Consoles | grey box, black box'],
    consoles: [
      'grey box | front | front | front | fixed B | front',
      'black box | front | front | front | fixed A | front',
    ],
    modes: [
      ['Title', '- Kind: menu', 'anyone | Begin | RESET | press | | go to Grove'],
      [
        'Grove',
        LEAVE,
        'anyone | Whistle | left difficulty | at A | | ',
        'anyone | Howl | left difficulty | at B | | ',
      ],
    ],
  }),

  'standards that differ in every mode': write({
    game: ['TV standards | NTSC, PAL'],
    modes: [
      ['Title', '- Kind: menu', 'left | Begin | button | tap under 0.018 s | | go to Grove'],
      ['Grove', 'left | Leave | button | double tap within 0.018 s | | go to Title'],
    ],
  }),

  'a condition that a fixed switch never meets, on another switch': write({
    game: ['Consoles | six-switch, grey box'],
    consoles: ['grey box | front | front | front | fixed B | front'],
    settings: [WIND],
    modes: [
      [
        'Title',
        '- Kind: menu',
        'anyone | Begin | RESET | press | | go to Grove',
        'anyone | Climb | right difficulty | flip to A | Wind is wild | go to Ridge',
        'anyone | Dive | right difficulty | at A | Wind is wild | go to Lake',
      ],
      GROVE,
      ['Ridge', LEAVE],
      ['Lake', LEAVE],
    ],
    fallbacks: ['left difficulty | Wind | stays mild'],
  }),

  'a value that another console only stays at': write({
    game: ['Consoles | six-switch, no-difficulty'],
    settings: ['Wind | mild, wild, storm | mild | left difficulty: B mild, A wild'],
    modes: [['Title', '- Kind: menu', 'anyone | Begin | RESET | press | | go to Grove'], GROVE],
    fallbacks: ['left difficulty | Wind | stays storm'],
    variations: ['Wind', '1 | mild', '2 | wild', '3 | storm'],
  }),

  'rows of a mode that is not reached there': write({
    game: ['Consoles | grey box, six-switch, plain box'],
    consoles: [
      'grey box | front | front | front | fixed B | front',
      'plain box | front | absent | front | front | front',
    ],
    settings: [WIND, 'Fog | off, low | off | game'],
    modes: [
      [
        'Title',
        '- Kind: menu',
        'anyone | Begin | RESET | press | | go to Grove',
        'anyone | Climb | SELECT | press | Wind is wild | go to Ridge',
      ],
      GROVE,
      [
        'Ridge',
        LEAVE,
        'left | Shout | button | press | | Fog: next',
        'anyone | Call | SELECT | press | Fog is low |',
      ],
    ],
    fallbacks: ['left difficulty | Wind | stays mild'],
    variations: ['Fog', '1 | low'],
  }),

  'a switch that is only there where the mode is not reached': write({
    game: ['Consoles | grey box, plain box'],
    consoles: [
      'grey box | front | front | front | fixed B | front',
      'plain box | front | absent | front | front | front',
    ],
    settings: [WIND],
    modes: [
      [
        'Title',
        '- Kind: menu',
        'anyone | Begin | RESET | press | | go to Grove',
        'left | Climb | button | press | Wind is wild | go to Ridge',
      ],
      GROVE,
      ['Ridge', LEAVE, 'anyone | Call | SELECT | press | |'],
    ],
    fallbacks: ['left difficulty | Wind | stays mild'],
  }),

  'a mode that is the only one for some seats': write({
    seats: ['Solo | 1 | joystick | empty', 'Duet | 2 | joystick | joystick'],
    modes: [
      ['Title', '- Kind: menu', 'anyone | Begin | RESET | press | | go to Grove'],
      ['Grove', '- Seats: Duet', 'each | Pick | button | press | |', LEAVE],
    ],
  }),

  'one console, which lacks what is needed': write({
    game: ['Consoles | no-difficulty'],
    settings: [WIND],
    modes: [
      ['Title', '- Kind: menu', 'anyone | Begin | RESET | press | | go to Grove'],
      ['Grove', LEAVE, 'anyone | Whistle | right difficulty | flip | |'],
    ],
  }),

  'one console, which lacks what one mode needs': write({
    game: ['Consoles | no-difficulty'],
    modes: [
      ['Title', '- Kind: menu', 'anyone | Begin | RESET | press | | go to Grove'],
      ['Grove', LEAVE, 'anyone | Whistle | right difficulty | flip to B | |'],
    ],
  }),

  'a chord of two switches that are missing': write({
    game: ['Consoles | six-switch, bare box'],
    consoles: ['bare box | absent | absent | front | front | front'],
    modes: [
      ['Title', '- Kind: menu', 'left | Begin | button | press | | go to Grove'],
      [
        'Grove',
        'anyone | Whistle | RESET + SELECT | press | |',
        'left | Leave | button | press | | go to Title',
      ],
    ],
    fallbacks: ['SELECT | Whistle | Grove: left stick up press'],
  }),
};
