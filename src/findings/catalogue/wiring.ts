import type { Rule } from '../rule.js';

export const WIRING_RULES = {
  'no-such-control': {
    severity: 'error',
    message: '“{action}” in {mode} needs {control}, which its player has in no seats row of the mode.',
    effect: 'No player can ever do it: the controller has no such control, or nothing is plugged in.',
    waysOut: [
      'Bind it to a control that the controller has.',
      'Plug in a controller that has {control} in a seats row of {mode}.',
    ],
    explanation:
      'A row names a control; which contact that is depends on what is plugged in where the player sits. This row’s player sits in at least one seats row of the mode, but in none of them does the controller have what any alternative of the row names. A player who sits in no seats row of the mode is another matter: there the row falls away, as in a solo game.',
    example:
      '## Seats\n\n| Seats | Players | Left port | Right port |\n| --- | --- | --- | --- |\n| Solo | 1 | keypad | empty |\n\n## Mode: Garden\n\n| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| left | Water | button | press |',
  },
  'impossible-chord': {
    severity: 'error',
    message: '“{action}” in {mode} needs {first} and {second} at once: opposite directions of one stick.',
    effect: 'A stick leans one way only, so the player can never do it.',
    waysOut: [
      'Join directions that lie side by side, such as `stick up + stick left`.',
      'Use another control.',
    ],
    explanation:
      'Up and down of one stick are never engaged together, nor left and right: the stick is one lever. A chord that asks for both can’t be made. Opposite directions of two sticks are no fault.',
    example:
      '| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| left | Somersault | stick up + stick down | press |',
  },
  'ghost-chord': {
    severity: 'error',
    message:
      '“{action}” in {mode} holds down {keys}: three corners of a rectangle, so {ghost} reads as pressed too.',
    effect: 'The game sees a key that nobody presses, and can’t tell it from one that is.',
    waysOut: [
      'Use two keys, or three of one row or one column.',
      'Use keys that do not make three corners of a rectangle, such as key 1, key 5 and key 9.',
    ],
    explanation:
      'A keypad is a grid of contacts between rows and columns, without diodes. With three keys down on three corners of a rectangle, current finds its way round them to the fourth corner, and the fourth key reads as pressed as well. This is so for every such keypad and can’t be mended in the game’s code.',
    example:
      '| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| left | Open the vault | key 1 + key 2 + key 4 | press |',
  },
  'shared-line': {
    severity: 'error',
    message:
      '“{first}” and “{second}” of the {controller} are both used in {mode} and come out on the same line, {line}.',
    effect: 'The game can’t tell which of the two the player touched.',
    waysOut: ['Wire one of them to another line in `## Controllers`.', 'Use only one of them in {mode}.'],
    explanation:
      'A port has five contact lines and two pot lines. Two controls of an own controller may share a line as long as no mode uses both in one seats row: the machine reads the line, not the control.',
    example:
      '## Controllers\n\n| Controller | Control | Line |\n| --- | --- | --- |\n| bellows | squeeze | up |\n| bellows | pull | up |\n\n## Mode: Forge\n\n| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| left | Blow | squeeze | held |\n| left | Draw | pull | held |',
  },
  'latch-with-keypad': {
    severity: 'error',
    message:
      'The button latch is {latch}, but there is a keypad in {seats}, and its third column is read on a latched input.',
    effect: 'Once a key of the third column is pressed, every row of that column reads as pressed.',
    waysOut: ['Set `Button latch` to `off`.', 'Play without the keypad.'],
    explanation:
      'The latch holds INPT4 and INPT5 low from the first press until it is cleared. These inputs are the third column of a keypad (keys 3, 6, 9 and hash); with the latch on, a key seen in one row is still seen when the next row is driven.',
    example:
      '## Game\n\n| Item | Value |\n| --- | --- |\n| Button latch | cleared each read |\n\n## Seats\n\n| Seats | Players | Left port | Right port |\n| --- | --- | --- | --- |\n| Solo | 1 | keypad | empty |',
  },
  'latched-release': {
    severity: 'error',
    message:
      '“{action}” in {mode} needs to see {control} let go ({gesture}), but the latch holds it until it is used.',
    effect: 'The game never sees the button let go: the action fails, or never ends.',
    waysOut: [
      'Set `Button latch` to `off` or `cleared each read`.',
      'Use `press`, the one gesture that needs no release.',
    ],
    explanation:
      'With the latch `cleared on use` a button reads as pressed from the first press until the game clears the latch when it acts on it. How long the button was down is lost, and so is the moment it was let go: only `press` is safe. All other gestures count reads, or look for the end of the press.',
    example:
      '## Game\n\n| Item | Value |\n| --- | --- |\n| Button latch | cleared on use |\n\n## Mode: Range\n\n| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| left | Loose the arrow | button | release |',
  },
  'latch-clears-both': {
    severity: 'error',
    message: 'In {mode} {players} have a button each, and the latch is cleared on use: one bit clears both.',
    effect: 'When the game answers one player’s press it wipes out the other’s, who pressed in vain.',
    waysOut: [
      'Set `Button latch` to `cleared each read` or `off`.',
      'Give only one player a button in {mode}.',
    ],
    explanation:
      'One bit of VBLANK holds the latches of both button inputs. Clearing it when one player’s press has been used clears the other’s as well, whether it has been read or not.',
    example:
      '## Game\n\n| Item | Value |\n| --- | --- |\n| Button latch | cleared on use |\n\n## Mode: Duel\n\n| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| each | Parry | button | press |',
  },
  'hair-trigger-reset': {
    severity: 'note',
    message: 'In {mode} a touch of RESET is enough for “{action}” ({gesture}), which {consequence}.',
    effect: 'A stray hand on the console can end a game in progress.',
    waysOut: ['Use `hold 1 s` or longer.', 'Ask for RESET together with a control that every player has.'],
    explanation:
      'RESET is within reach of everyone in the room. In a `play` mode a bare `press`, `held` or `repeat` of it that leaves the mode or changes a setting is done by accident sooner or later. Many games of the time did just this; if it is meant, accept it.',
    example:
      '## Mode: Race\n\n| Who | Action | Control | Gesture | Then |\n| --- | --- | --- | --- | --- |\n| anyone | Give up | RESET | press | go to Title |',
  },
  'unusual-switch': {
    severity: 'note',
    message: '“{action}” in {mode} uses {control} against the custom of its printed label: {custom}.',
    effect: 'Players who know the console will look for it elsewhere, or set it off unawares.',
    waysOut: [
      'Move it to a control of the player’s own.',
      'Follow the custom, or accept the note and say it in the manual.',
    ],
    explanation:
      'The labels on the panel have a custom (common practice, no source): RESET starts or starts again, SELECT steps through the games or leads to the menu, TV type and the difficulty switches set something and do nothing by themselves. The rule notes a RESET row without `go to` in a `play` or `pause` mode, a SELECT row in a `play` mode that neither steps a setting nor goes to a `menu` or `pause` mode, and any row on a two-position switch.',
    example:
      '## Mode: Race\n\n| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| anyone | Sound the bell | SELECT | press |',
  },
} as const satisfies Readonly<Record<string, Rule>>;
