import { describe, expect, it } from 'vitest';
import { speechFor, viewManual } from '../../src/documents/manual/view.js';
import { smallText } from '../support/small-scheme.js';
import { crowded, EVERYTHING } from './everything-scheme.js';
import { inputOf, withGame } from './inputs.js';

const viewOf = (text: string) => {
  const input = inputOf(text);
  return viewManual(input, speechFor(input));
};
const view = viewOf(EVERYTHING);
const rowsOf = (mode: string) =>
  view.modes
    .find(({ name }) => name === mode)
    ?.groups.flatMap(({ who, rows }) => rows.map(row => ({ who, ...row }))) ?? [];
const rowSaying = (mode: string, words: string, index = 0) =>
  rowsOf(mode).filter(row => row.words === words)[index];

describe('every gesture in words', () => {
  it.each([
    ['Gate', 'Step to the next tree', ['Press SELECT; keep it down to repeat']],
    ['Gate', 'Step to the tree before', ['Press key *', 'Push the stick left']],
    ['Orchard', 'Walk about the orchard', ['Hold the stick in any direction']],
    ['Orchard', 'Gather strength for a throw', ['Press the button']],
    ['Orchard', 'Throw what you hold', ['Let go of the button']],
    ['Orchard', 'Call the dog', ['Press the button twice within 0.4 seconds']],
    ['Orchard', 'Tip the scales', ['Turn the knob']],
    ['Orchard', 'Run for a moment', ['Tap the button (let go within 0.3 seconds)']],
    ['Orchard', 'Shake the tree', ['Hold the button for 0.3 seconds']],
    ['Orchard', 'Put your stamp on the crate', ['Press together: key 1 and key 2']],
    ['Orchard', 'Turn the press round and round', ['Turn the wheel (right controller)']],
    ['Orchard', 'Stretch out your arm', ['Hold “heel” or “toe”']],
    ['Orchard', 'Hear that the wind has turned', ['Move the left difficulty switch either way']],
    ['Orchard', 'Give up and close the gate', ['Hold RESET for 4 seconds']],
    ['Orchard', 'The sun sets and the day is over', []],
  ])('%s: %s', (mode, words, how) => {
    expect(rowSaying(mode, words)?.how).toEqual(how);
  });

  it('says a time in frames as it lasts on each television', () => {
    const text = EVERYTHING.replace('hold 4 s', 'hold 40 frames');
    const mode = viewOf(text).modes[1];
    const close = mode?.groups.flatMap(({ rows }) => rows).find(({ words }) => words.startsWith('Give up'));
    // 40 frames at 59.92 Hz and at 49.86 Hz (ITU-R BT.1700): 0.668 s and 0.802 s.
    expect(close?.how).toEqual(['Hold RESET for about 0.7 to 0.8 seconds']);
  });
});

describe('who does it', () => {
  it.each([
    ['Gate', 'Step to the next tree', 'At the console'],
    ['Gate', 'Step to the tree before', 'Anyone'],
    ['Orchard', 'Walk about the orchard', 'Each player'],
    ['Orchard', 'Call the dog', 'Right player'],
    ['Orchard', 'The sun sets and the day is over', 'By itself'],
  ])('%s: %s: %s', (mode, words, who) => {
    expect(rowSaying(mode, words)?.who).toBe(who);
  });

  it('is “you” where one person plays', () => {
    expect(viewOf(crowded(2)).modes[0]?.groups.map(({ who }) => who)).toEqual(['You', 'At the console']);
  });
});

describe('what happens besides', () => {
  it.each([
    ['Gate', 'Step to the next tree', 'Moves Tree on to the next.'],
    ['Gate', 'Step to the tree before', 'Moves Tree back to the one before.'],
    ['Gate', 'Open the gate and begin', 'Leads to Orchard.'],
    ['Gate', 'Open the gate and begin', 'Sets Basket to empty.'],
    ['Orchard', 'Put your stamp on the crate', 'While you do this, these wait: “Hammer”.'],
    [
      'Orchard',
      'Gather strength for a throw',
      'These go together: press to charge a throw, press twice to whistle, and let go to throw.',
    ],
    ['Orchard', 'The sun sets and the day is over', 'Only with Basket set to full.'],
    ['Orchard', 'Walk about the orchard', 'Only in: Sticks.'],
  ])('%s: %s: %s', (mode, words, note) => {
    expect(rowSaying(mode, words)?.notes).toContain(note);
  });

  it('joins conditions', () => {
    expect(rowSaying('Orchard', 'Throw what you hold', 1)?.notes).toContain(
      'Only with Basket set to full and Wind not set to gusty.',
    );
  });
});

describe('what is needed', () => {
  it('has each seats row with its players and ports', () => {
    expect(
      view.needs.rows.map(({ seats, players, who, left, right }) => [seats, players, who, left, right]),
    ).toEqual([
      ['Sticks', '2 players', ['Left player, Right player'], 'Joystick', 'Joystick'],
      [
        'Knobs',
        '4 players',
        [
          'Left player A: paddle A',
          'Left player B: paddle B',
          'Right player A: paddle A',
          'Right player B: paddle B',
        ],
        'Pair of paddles',
        'Pair of paddles',
      ],
      ['Keys', '1 player', [], 'Keypad', 'Wheel'],
      ['Pedals', '1 player', [], 'Foot board', 'Nothing'],
    ]);
  });
});

describe('the console', () => {
  it('numbers the switches in use in the order of the panel', () => {
    expect(view.console.calls.map(({ number, name }) => [number, name])).toEqual([
      [1, 'TV type'],
      [2, 'left difficulty'],
      [3, 'right difficulty'],
      [4, 'SELECT'],
      [5, 'RESET'],
    ]);
  });

  it('draws its own consoles and those that have every switch; where one is missing there is a box', () => {
    expect(view.console.panels.map(({ caption }) => caption)).toEqual([
      'Six-switch console',
      'Four-switch console',
      'Console “Bench rig” (crossed out: not there)',
    ]);
    expect(view.console.panels[2]?.text).toContain('4: SELECT is not there.');
    expect(view.console.boxes).toEqual([
      {
        title: 'If your console has no difficulty switches',
        lines: [
          'Wind: at first calm. In Gate, do this for the next value: Push the stick up (left controller).',
          'Frost: always mild.',
          'Not possible there: “Notice the wind”.',
        ],
      },
      {
        title: 'If your console lacks the TV type switch and SELECT',
        lines: ['For “Choose a tree” in Gate, do this instead: Press the button.', 'Shade: always colour.'],
      },
    ]);
  });

  it('tells which switches are at the back of some consoles', () => {
    expect(view.console.rearNotes).toEqual([
      'At the back of some consoles: Left difficulty switch and Right difficulty switch. Best set before you begin to play.',
    ]);
  });

  const consoleOf = (consoles: string, own: string) =>
    viewOf(
      smallText([{ who: 'anyone', action: 'Go', control: 'RESET', gesture: 'press' }], {
        game: { Consoles: consoles },
        settings: ['Lamp | out, lit | out | left difficulty: B out, A lit'],
        extra: `## Consoles\n\n| Console | RESET | SELECT | TV type | Left difficulty | Right difficulty |\n| --- | --- | --- | --- | --- | --- |\n${own}\n`,
      }),
    ).console;

  it('says where a switch is on the only console there is', () => {
    const { rearNotes, panels } = consoleOf('pocket', '| pocket | front | front | front | rear | front |');
    expect(rearNotes).toEqual(['At the back: Left difficulty switch. Best set before you begin to play.']);
    expect(panels.map(({ caption }) => caption)).toEqual(['Console “pocket”']);
  });

  it('draws consoles with the same panel once', () => {
    const own = '| desk | front | front | front | rear | rear |';
    expect(consoleOf('four-switch, desk', own).panels.map(({ caption }) => caption)).toEqual([
      'Four-switch console and Console “desk”',
    ]);
  });

  it('leaves a console without difficulty switches to its box, unless no other is drawn', () => {
    const own = '| desk | front | front | fixed COLOR | fixed B | fixed B |';
    const drawn = (consoles: string) => consoleOf(consoles, own).panels.map(({ console }) => console);
    expect(drawn('six-switch, no-difficulty')).toEqual(['six-switch']);
    expect(drawn('no-difficulty')).toEqual(['no-difficulty']);
    expect(drawn('six-switch, no-difficulty, desk')).toEqual(['six-switch', 'desk']);
  });
});

describe('the controllers', () => {
  const calls = (caption: string) => view.controllers.find(each => each.caption === caption)?.calls ?? [];

  it('are those of all seats rows', () => {
    expect(view.controllers.map(({ caption }) => caption)).toEqual([
      'Joystick',
      'Pair of paddles',
      'Keypad',
      'Wheel',
      'Foot board',
    ]);
  });

  it('have a call-out for each used control, one for directions that do the same', () => {
    expect(calls('Joystick').map(({ label }) => label)).toEqual([
      'Stick up or down',
      'Stick left',
      'Stick right',
      'Button',
    ]);
    expect(calls('Keypad').map(({ label }) => label)).toEqual(['Key 1', 'Key 2', 'Key 5', 'Key 9', 'Key *']);
    expect(calls('Pair of paddles').map(({ label }) => label)).toEqual([
      'Knob A',
      'Button A',
      'Knob B',
      'Button B',
    ]);
  });

  it('say the gesture where a control does several things, and the player where only one can', () => {
    const uses = calls('Joystick').find(({ label }) => label === 'Button')?.uses ?? [];
    expect(uses.map(({ mode, words, note }) => `${mode}: ${words} (${note})`)).toEqual([
      'Gate: Open the gate and begin ()',
      'Orchard: Gather strength for a throw (press)',
      'Orchard: Throw what you hold (let go)',
      'Orchard: Call the dog (press twice, Right player)',
    ]);
  });
});

describe('starting', () => {
  it('says how often a step is done, and on which console where they differ', () => {
    const second = view.start?.games.find(({ name }) => name === '2');
    expect(second?.seats).toBe('Sticks and Knobs');
    expect(second?.words).toBe('A stormy day for two and more');
    expect(second?.values).toEqual(['Wind: gusty', 'Tree: 2']);
    expect(second?.ways[0]).toEqual({
      where: 'Six-switch console and Four-switch console',
      steps: ['Set the left difficulty switch to A', 'Press SELECT', 'Press RESET'],
    });
    const third = viewOf(EVERYTHING.replace('| 2 | Sticks; Knobs | 2 |', '| 2 | Sticks; Knobs | 4 |'));
    expect(third.start?.games[1]?.ways[0]?.steps).toContain('Press SELECT, 3\u00a0times');
  });

  it('needs nothing but power for the first mode', () => {
    expect(view.start?.modes[0]).toEqual({
      name: 'Gate',
      words: '',
      values: [],
      seats: '',
      ways: [{ where: '', steps: ['Switch on; you are there.'] }],
    });
  });
});

describe('settings', () => {
  it('say their values, where they start and how they change', () => {
    expect(
      view.settings.settings.map(({ name, values, startsAs, how }) => [name, values, startsAs, how[0]]),
    ).toEqual([
      ['Wind', 'calm, gusty', 'calm', 'Left difficulty switch: B calm, A gusty'],
      ['Frost', 'mild, hard', 'mild', 'Right difficulty switch: B mild, A hard'],
      ['Shade', 'colour, grey', 'colour', 'TV type switch: COLOR colour, B-W grey'],
      ['Tree', '1 to 6', '1', 'Gate: Press SELECT; keep it down to repeat'],
      ['Basket', 'empty, full', 'empty', 'Gate: Press RESET'],
    ]);
  });
});

describe('the games', () => {
  it('are told of once, where the way to each is told', () => {
    expect(view.start?.games.map(({ name }) => name)).toEqual(['1', '2']);
    expect(view.settings.games).toEqual([]);
  });

  it('stand with the settings where no way is told', () => {
    const input = inputOf(EVERYTHING);
    const { start, settings } = viewManual({ ...input, coverage: null }, speechFor(input));
    expect(start).toBeNull();
    expect(settings.games).toEqual([
      { name: '1', words: 'A still day', seats: '', values: ['Wind: calm', 'Tree: 1'] },
      {
        name: '2',
        words: 'A stormy day for two and more',
        seats: 'Sticks and Knobs',
        values: ['Wind: gusty', 'Tree: 2'],
      },
    ]);
  });
});

describe('cautions', () => {
  it('are always there, and one more for long holds', () => {
    expect(view.cautions).toHaveLength(5);
    expect(viewOf(EVERYTHING.replace('hold 4 s', 'hold 1 s')).cautions).toHaveLength(4);
    expect(view.cautions[0]).toContain('Switch the console off before');
  });
});

describe('other languages', () => {
  it('say the same in German and French', () => {
    const how = (language: string) => {
      const said = viewOf(withGame(EVERYTHING, { Language: language }));
      return said.modes[1]?.groups.flatMap(({ rows }) => rows).find(({ words }) => words === 'Shake the tree')
        ?.how;
    };
    expect(how('de')).toEqual(['Knopf für 0,3 Sekunden halten']);
    expect(how('fr')).toEqual(['Maintenez le bouton pendant 0,3 seconde']);
  });

  it.each([
    ['en', 'If your console lacks the TV type switch and SELECT', 'Shade: always colour.'],
    ['de', 'Bei Konsolen ohne TV-Schalter und SELECT', 'Shade: immer colour.'],
    ['fr', 'S’il manque à votre console le sélecteur TV et SELECT', 'Shade\u00a0: toujours colour.'],
  ])('make whole sentences of names that may be of any number and gender (%s)', (language, title, line) => {
    const said = viewOf(withGame(EVERYTHING, { Language: language }));
    expect(said.console.boxes[1]?.title).toBe(title);
    expect(said.console.boxes[1]?.lines).toContain(line);
    const lines = [
      ...said.console.calls.flatMap(call => call.lines),
      ...said.console.boxes.flatMap(box => box.lines),
      ...said.modes.flatMap(({ groups }) =>
        groups.flatMap(({ rows }) => rows.flatMap(({ how, notes }) => [...how, ...notes])),
      ),
    ].flatMap(text => text.split('. '));
    expect(lines.filter(text => /:.*:/.test(text) && !/gleichzeitig|together/i.test(text))).toEqual([]);
  });
});

describe('the quick reference', () => {
  it('has a line for each row that somebody does', () => {
    const [gate, orchard] = view.quick.modes;
    expect(gate?.lines.map(({ control, action }) => `${control}: ${action}`)).toEqual([
      'SELECT: Choose a tree',
      'Stick left or Key *: Go back a tree',
      'RESET: Begin',
      'Button, Key 5, or bar: Begin',
    ]);
    expect(orchard?.lines).toHaveLength(rowsOf('Orchard').length - 1);
  });
});
