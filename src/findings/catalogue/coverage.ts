import type { Rule } from '../rule.js';

/** `{where}` is made by the check: `on no-difficulty`, `on any console in Solo`. */
export const COVERAGE_RULES = {
  'unreachable-mode': {
    severity: 'error',
    message: '“{mode}” can’t be reached {where}.',
    effect: 'The player never sees this part of the game.',
    waysOut: [
      'Give a row of a mode that can be reached `go to {mode}`.',
      'If it is not meant for these seats, list in its `Seats` only those that it is meant for.',
    ],
    explanation:
      'From power-on, every step that the rows, the fallbacks, the `game` rows and the panel switches allow is followed, for each console, seats row and TV standard. No such chain of steps ends in this mode, though the mode says that it is played with these seats.',
    example: '## Mode: Shop\n\n(no row of any mode says `go to Shop`)',
  },
  'unreachable-variation': {
    severity: 'error',
    message: 'Variation “{variation}” can’t be played {where}.',
    effect: 'The manual promises a game that the player can’t choose.',
    waysOut: [
      'Let a row, a switch or a fallback give each setting the value that the variation needs, before a `play` mode begins.',
      'If the loss is intended, say so in `## Fallbacks` with `stays VALUE`, or offer the variation to fewer seats rows.',
    ],
    explanation:
      'A variation is reached when a `play` mode is reached while every setting that the variation fixes has its value. No chain of steps from power-on gets there. A `stays` row of `## Fallbacks` that holds a setting at another value on the console declares the loss as intended.',
    example:
      '| Setting | Values | Starts as | Set by |\n| --- | --- | --- | --- |\n| Fog | off, on | off | game |\n\n## Variations\n\n| Variation | Fog |\n| --- | --- |\n| 2 | on |\n\n(no row says `Fog: next`)',
  },
  'no-way-out': {
    severity: 'error',
    message: 'The player can get stuck in “{mode}”{state} {where}: no other mode can be reached from there.',
    effect: 'Only switching the console off gets the player out.',
    waysOut: [
      'Give “{mode}” a row that can always be done and leads to another mode, for example `anyone`, `RESET`, `press`.',
      'If a round ends by itself there, say so with a `game` row and `go to`.',
    ],
    explanation:
      'There is a way into this mode after which no chain of steps leads to any other mode that is played with the same seats.',
    example: '## Mode: Credits\n\n- Kind: pause\n\n(no row of Credits has a `go to`)',
  },
  'no-fresh-start': {
    severity: 'warning',
    message: 'From “{mode}”{state} neither “{start}” nor a menu can be reached {where}.',
    effect: 'To choose another game the player has to switch the console off and on.',
    waysOut: [
      'Give “{mode}”, or a mode that follows it, a row with `go to {start}`: by custom RESET does that.',
      'If another mode is a menu, say so with `Kind: menu`.',
    ],
    explanation:
      'A player should be able to begin anew. From some reachable state of this mode no chain of steps leads back to the start mode or to a mode of kind `menu`.',
    example:
      '## Mode: Title\n\n- Kind: menu\n\n(Title leads to Race, Race to Podium, Podium to Race, and nothing back to Title)',
  },
  'lost-action': {
    severity: 'error',
    message: '“{action}” is lost for {who} in “{mode}” {where}.',
    effect: 'The player can’t do there what the manual says, though it can be done on another console.',
    waysOut: [
      'Add a row to `## Fallbacks` that says how “{action}” is done there.',
      'If the game plays well without it, make its `Need` `nice`.',
    ],
    explanation:
      'With the same seats and TV standard the action is possible in this mode on some console of the scheme, but in no reachable state on this one: its switch is missing, or its `When` can’t hold. It is an error for an action whose `Need` is `must`, a warning for a `nice` one. An action that the game does by itself there, or that everybody can do in another way, is not lost; a fallback can bring an action back, but never makes it count as lost elsewhere.',
    example:
      '| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| anyone | Trim sails | left difficulty | flip |\n\n(on `no-difficulty` there is no such switch)',
  },
  'lost-value': {
    severity: 'warning',
    message: '“{setting}” can’t become “{value}” {where}.',
    effect: 'A choice that the manual offers is missing there.',
    waysOut: [
      'Add a row to `## Fallbacks` with a control that steps “{setting}”.',
      'If the loss is intended, say so in `## Fallbacks` with `stays VALUE`.',
    ],
    explanation:
      'With the same seats and TV standard some console of the scheme can give the setting this value, this one can’t, and no `stays` row declares that as intended.',
    example:
      '## Fallbacks\n\n| Without | For | Instead |\n| --- | --- | --- |\n| left difficulty | Wind | Shop: button press |\n\n(and Shop can’t be reached in Solo)',
  },
  'no-fallback': {
    severity: 'error',
    message:
      '{subject} needs the {switch} switch, which is not there {where}, and `## Fallbacks` says nothing.',
    effect: 'Nobody has decided what the game does on such a console.',
    waysOut: [
      'Add a row to `## Fallbacks`: without {switch}, for {subject}, another control or `stays VALUE`.',
      'If the game is not meant for such consoles, leave them out of `Consoles`.',
    ],
    explanation:
      'The console fixes or lacks a switch that sets a setting, or that every binding of a `must` action in a mode needs. `## Fallbacks` has to say what happens instead, even if that is “nothing”: `stays VALUE`. A row `at P` for the position in which the switch is fixed needs no fallback, nor does an action that the game also does by itself.',
    example:
      '| Setting | Values | Starts as | Set by |\n| --- | --- | --- | --- |\n| Wind | mild, wild | mild | left difficulty: B mild, A wild |\n\n(on `no-difficulty`, without a row in `## Fallbacks`)',
  },
  'dead-binding': {
    severity: 'warning',
    message: 'This row of “{mode}” for “{action}” can never be used.',
    effect: 'The manual would describe a control that does nothing.',
    waysOut: [
      'Change its `When` to settings that occur in “{mode}”, or let a row set them.',
      'Check `Who` and `Control`: no seats row of “{mode}” may have that player with that control.',
      'Delete the row.',
    ],
    explanation:
      'The mode can be reached, but on no console, in no seats row and on no TV standard of the scheme is there a reachable state in which the row can be done.',
    example:
      '| Who | Action | Control | Gesture | When |\n| --- | --- | --- | --- | --- |\n| left | Dive | button | press | Depth is deep |\n\n(nothing ever makes Depth “deep”)',
  },
  'seat-gap': {
    severity: 'note',
    message: 'In “{mode}” “{action}” can be done with other seats, but by no player {where}.',
    effect: 'Players who sit down another way look for it in vain.',
    waysOut: [
      'Add a row for the controllers of these seats.',
      'If it makes no sense there, give the mode for these seats a name of its own.',
    ],
    explanation:
      'A mode is played with several seats rows; in one of them some player has this action, in another no player has it. Often a row names a player or a control that only one of them has.',
    example:
      '| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| right | Call the dog | button | press |\n\n(the mode is also played with Solo, where nobody sits right)',
  },
  'behind-the-console': {
    severity: 'warning',
    message: '“{action}” in “{mode}” is on the {switch} switch, which is at the rear {where}.',
    effect: 'The player has to stop and reach behind the console in the middle of play.',
    waysOut: [
      'Put it on a control that is in the player’s hands, or on SELECT.',
      'Let it be done in a `menu` or `pause` mode instead.',
    ],
    explanation:
      'A binding of a `play` mode uses a switch that this console has at the rear. Settings that are read from such a switch are no problem: they are chosen before play.',
    example:
      '## Mode: Race\n\n| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| anyone | Change gear | left difficulty | flip |',
  },
  'one-sided': {
    severity: 'note',
    message: 'In “{mode}” “{action}” is on a control of {having}, but on none of {lacking} {where}.',
    effect: 'The game is not the same for both sides.',
    waysOut: [
      'If it is meant for all, write `each` under `Who`.',
      'If the roles differ on purpose, accept the note with that reason.',
    ],
    explanation:
      'In a seats row with two or more players one of them has an action in a mode that another has not. Rows for `anyone` are not counted.',
    example:
      '| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| left | Whistle | button | press |\n\n(and nothing like it for `right`)',
  },
  'idle-control': {
    severity: 'note',
    message: 'No row uses {controls} of the {port} {controller} {where}.',
    effect: 'The player has a control in hand that never does anything.',
    waysOut: ['Bind it, or leave it: a free control is a good place for a fallback.'],
    explanation:
      'A seated player’s controller has controls that no binding of any mode of this seats row uses, on any console of the scheme. The keys of a keypad are not counted.',
    example:
      '| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| each | Steer | stick left/right | held |\n\n(and nothing on `stick up`, `stick down` and `button`)',
  },
  'too-many-states': {
    severity: 'error',
    message:
      'The settings depend on each other in too many ways to explore: more than {limit} numbers of memory.',
    effect: 'Nobody can tell on which consoles the game plays.',
    waysOut: [
      'Let fewer settings be read by `When` and by `## Variations` together, or give them fewer values.',
    ],
    explanation:
      'Coverage looks at every state of a game that a player can reach. What can be looked at apart is looked at apart; where many settings of many values are each set and read by all the others, that is not possible, and the exploration is given up at a fixed amount of memory. No coverage is told then; the other rules are not touched.',
    example:
      '| Who | Action | When | Then |\n| --- | --- | --- | --- |\n| game | Wave | S1 is 3 and S2 is not 5 and S7 is 60 | S4: 12; S9: next |\n\n(a hundred such rows, for sixteen settings of sixty-four values)',
  },
} as const satisfies Readonly<Record<string, Rule>>;
