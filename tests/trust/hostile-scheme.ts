import { HOSTILE_CELLS, type HostileText } from '../fuzz/hostile-text.js';

/** Text with characters that the language lets nobody write is left out: it is a finding, and no set is made. */
const isAllowed = ({ text }: HostileText): boolean => !/\p{Cc}/u.test(text.replaceAll('\t', ''));

const SENTENCES = HOSTILE_CELLS.filter(isAllowed).filter(({ text }) => text !== '' && text !== '—');

/** Names that the language allows, and that mean something to a program: of JavaScript, assemblers, disks, sheets. */
const NAMES = [
  'constructor',
  'hasOwnProperty',
  'toString',
  '-1',
  "'or",
  '.include',
  '..',
  'LDA',
  'A',
  'NUL',
  'con.h',
  "-2'3",
  '1e309',
  'שלום',
  '水车',
  'ﷺ',
];

const SHORTS = ['<b>', '=1+1', '+1', '-1', '@a', '";\'', '&lt;', '](x', '*/', '.inc', '{x}', '%s'];

/** An action for each hostile sentence; its name is plain where there are more sentences than names. */
const ACTIONS = SENTENCES.map(({ text }, index) => ({
  name: index < NAMES.length && NAMES[index] !== '..' ? (NAMES[index] ?? '') : `Act ${index}`,
  sentence: text,
  short: SHORTS[index % SHORTS.length] ?? '',
}));

const CONTROLS = ['stick up', 'stick down', 'stick left', 'stick right', 'button'];

/**
 * A scheme that plays, with hostile text wherever the language takes any text.
 *
 * @param words of the title and other words of which there is one only
 */
export function hostileScheme(words: string): string {
  const sentence = (index: number) => SENTENCES[index % SENTENCES.length]?.text ?? '';
  const modes = [
    'constructor',
    ...Array.from({ length: Math.ceil(ACTIONS.length / CONTROLS.length) }, (_, index) => `Room ${index}`),
  ];
  return [
    `# ${words}\n\n${prose()}`,
    table(
      'Game',
      ['Item', 'Value'],
      [
        ['Short name', 'HOSTILE'],
        ['Version', words],
        ['Consoles', 'constructor, no-difficulty'],
      ],
    ),
    table(
      'Consoles',
      ['Console', 'RESET', 'SELECT', 'TV type', 'Left difficulty', 'Right difficulty'],
      [['constructor', 'front', 'front', 'front', 'front', 'front']],
    ),
    table(
      'Seats',
      ['Seats', 'Players', 'Left port', 'Right port'],
      [
        ['toString', '1', 'joystick', 'empty'],
        ["'x", '1', 'keypad', 'empty'],
      ],
    ),
    table(
      'Settings',
      ['Setting', 'Values', 'Starts as', 'Set by'],
      [
        ['valueOf', '-1, constructor', '-1', 'game'],
        ['-x', '.byte, NUL', 'NUL', 'left difficulty: B NUL, A .byte'],
      ],
    ),
    table(
      'Actions',
      ['Action', 'Say it as', 'Short', 'Need'],
      ACTIONS.map(({ name, sentence: say, short }) => [name, say, short, 'nice']),
    ),
    ...modes.map((mode, index) => modeText(mode, modes[index + 1] ?? 'constructor', index)),
    table(
      'Switches',
      ['Switch', 'Position or use', 'Say it as'],
      [
        ['left difficulty', 'A', sentence(0)],
        ['left difficulty', 'B', sentence(1)],
        ['RESET', 'use', sentence(2)],
        ['SELECT', 'use', sentence(3)],
        ['TV type', 'COLOR', sentence(13)],
      ],
    ),
    table(
      'Variations',
      ['Variation', 'Seats', 'valueOf', 'Say it as'],
      [
        ['-1', 'toString', '-1', sentence(20)],
        ["=' ".slice(1), '', 'constructor', sentence(21)],
      ].filter(([name]) => name?.trim() !== "'"),
    ),
    table('Fallbacks', ['Without', 'For', 'Instead'], [['left difficulty', '-x', 'stays NUL']]),
    table('Timing', ['Name', 'Time'], [['__proto__'.replaceAll('_', ''), '1 s']]),
    ...SENTENCES.filter(({ text }) => text.length < 80).map(
      ({ text }) => `## Manual: ${text}\n\nWords ${text}\n\n- ${text}\n\n> ${text}`,
    ),
    `## Manual: Prose\n\n${prose()}`,
  ].join('\n\n');
}

/** Prose has lines of its own: what ends cells, tables and paragraphs too. */
function prose(): string {
  return SENTENCES.map(({ text }) => `Words ${text} words`).join('\n\n');
}

function modeText(mode: string, next: string, index: number): string {
  const actions = ACTIONS.slice(index * CONTROLS.length, (index + 1) * CONTROLS.length);
  const rows = actions.flatMap(({ name }, at) => [
    [
      'left',
      name,
      `${CONTROLS[at]} or key ${at + 1}`,
      'press',
      at === 0 ? 'valueOf is -1' : '',
      at === 4 ? `go to ${next}` : at === 1 ? 'valueOf: next' : '',
    ],
  ]);
  const back = ['anyone', ACTIONS[0]?.name ?? '', 'RESET', 'press', '', 'go to Room 0'];
  const on = ['anyone', ACTIONS[1]?.name ?? '', 'SELECT', 'press', '', `go to ${next}`];
  const text = SENTENCES[index]?.text ?? '';
  return `## Mode: ${mode}\n\nSaid: ${text}\n\n- Kind: ${index === 0 ? 'menu' : 'play'}\n\n${rowsText(['Who', 'Action', 'Control', 'Gesture', 'When', 'Then'], [...rows, back, on])}`;
}

function table(heading: string, heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return `## ${heading}\n\n${rowsText(heads, rows)}`;
}

function rowsText(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) =>
    `| ${cells.map(cell => cell.replaceAll('\n', ' ')).join(' | ')} |`;
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}

/** A small scheme that plays, and the name of each kind of thing in it; no name is part of another word of it. */
export function hostileFields(title: string): {
  readonly text: string;
  readonly names: Readonly<Record<string, string>>;
} {
  const names = {
    action: 'Qdeed',
    mode: 'Qroom',
    setting: 'Qlevel',
    value: 'Qhigh',
    'seats row': 'Qseat',
    console: 'Qbox',
    controller: 'Qpanel',
    control: 'Qlever',
    time: 'Qlong',
    variation: 'Qgame',
    'short name': 'Qs',
    position: 'flip to A',
    gesture: 'hold Qlong',
    language: 'en-GB',
  };
  const text = [
    `# ${title}`,
    table(
      'Game',
      ['Item', 'Value'],
      [
        ['Short name', 'Qs'],
        ['Consoles', 'Qbox'],
        ['Language', 'en-GB'],
        ['Starts in', 'Qroom'],
      ],
    ),
    table(
      'Consoles',
      ['Console', 'RESET', 'SELECT', 'TV type', 'Left difficulty', 'Right difficulty'],
      [['Qbox', 'front', 'front', 'front', 'front', 'front']],
    ),
    table('Controllers', ['Controller', 'Control', 'Line'], [['Qpanel', 'Qlever', 'up']]),
    table('Seats', ['Seats', 'Players', 'Left port', 'Right port'], [['Qseat', '1', 'Qpanel', 'empty']]),
    table(
      'Settings',
      ['Setting', 'Values', 'Starts as', 'Set by'],
      [['Qlevel', 'low, Qhigh', 'low', 'game']],
    ),
    table('Actions', ['Action', 'Say it as', 'Short', 'Need'], [['Qdeed', 'Do it', 'DO', 'must']]),
    `## Mode: Qroom\n\n- Seats: Qseat\n\n${rowsText(
      ['Who', 'Action', 'Control', 'Gesture', 'When', 'Then'],
      [
        ['left', 'Qdeed', 'Qlever', 'hold Qlong', 'Qlevel is low', 'Qlevel: Qhigh; go to Qroom'],
        ['anyone', 'Qdeed', 'left difficulty', 'flip to A', '', ''],
      ],
    )}`,
    table('Variations', ['Variation', 'Seats', 'Qlevel', 'Say it as'], [['Qgame', 'Qseat', 'Qhigh', 'High']]),
    table('Timing', ['Name', 'Time'], [['Qlong', '1 s']]),
  ].join('\n\n');
  return { text, names };
}
