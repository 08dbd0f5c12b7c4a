import type { Rule } from '../rule.js';

const table = (...rows: readonly string[]): string =>
  [
    '| Who | Action | Control | Gesture | When | Then |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n');

export const CONFLICTS_RULES = {
  'wrong-gesture': {
    severity: 'error',
    message: '“{action}” in {mode} asks for {gesture} of {control}, which {kind}.',
    effect: 'The gesture can’t be made on this control, so the action would never happen.',
    waysOut: ['Give {control} a gesture it can make: {fitting}.', 'Use a control that can make {gesture}.'],
    explanation:
      '`press`, `release`, `held`, `hold`, `tap`, `double tap` and `repeat` are made on what is pressed: buttons, stick directions, keys, RESET, SELECT, and chords of them. `at` and `flip` are made on a switch with two positions, `turn` on a paddle or a wheel.',
    example: table('| anyone | Change the light | TV type | press | | |'),
  },
  'impossible-gesture': {
    severity: 'error',
    message: '“{action}” in {mode} asks for {gesture}, which takes {time} as one read: too short to make.',
    effect: 'No player can ever do it: nothing is pressed and let go, or pressed twice, within one read.',
    waysOut: ['Give it a longer time.', 'Use `press` instead.'],
    explanation:
      'A tap must be let go before its time is up, and between two presses there is at least one read at which the control is let go. With a time of a single read neither can happen. Times become reads by the frame rate of the TV standard and by `Reads inputs`.',
    example: table('| each | Wink | button | tap under 10 ms | | |'),
  },
  'never-fires': {
    severity: 'error',
    message: '“{x}” ({xDoing}) in {mode} can never happen: {reason}.',
    effect: 'The player is told of something that can’t be done.',
    waysOut: [
      'Take the action out of `Instead of`, or let the two use different controls.',
      'Take the row (or this alternative) out.',
    ],
    explanation:
      'While a control with `Instead of` is engaged, the actions it names are held back until the line they share has been let go. A row whose own control always engages such another one first never gets its turn. A `When` that asks for two values of one setting can’t hold either, nor can that of a `flip to A` that asks for what the switch gives in A: it is judged before the switch is there.',
    example: `${'| Who | Action | Control | Gesture | Instead of |\n| --- | --- | --- | --- | --- |'}\n| each | Jump | button | press | Long jump |\n| each | Long jump | button + stick up | press | |`,
  },
  'same-moment': {
    severity: 'error',
    message: '“{x}” ({xDoing}) and “{y}” ({yDoing}) in {mode} happen at the same moment.',
    effect: 'The player who does one of the two does the other as well.',
    waysOut: [
      'Give one of the two another gesture or another control.',
      'If both are meant, write one under `Along with` in the row of the other.',
    ],
    explanation:
      'A quickest way to do one of the two, with no other control touched, does the other at its last read. The game can’t tell which of the two was meant, because nothing in the input tells them apart.',
    example: table('| each | Jump | button | press | | |', '| each | Wave | button | press | | |'),
  },
  'on-the-way': {
    severity: 'error',
    message: '“{y}” ({yDoing}) in {mode} can’t be done without doing “{x}” ({xDoing}) first{leaves}.',
    effect: 'The player who wants the one gets the other before it, every time.',
    waysOut: [
      'Give “{x}” a gesture that waits until it is clear what is meant, such as `tap under T`.',
      'Give one of the two another control.',
      'If both are meant, write one under `Along with` in the row of the other.',
    ],
    explanation:
      'With no control touched but those of the one action, there is no sequence of presses that does it and has not done the other before.',
    example: table('| each | Jump | button | press | | |', '| each | Rest | button | hold 1 s | | |'),
  },
  'in-passing': {
    severity: 'warning',
    message: 'The quickest way to do “{y}” ({yDoing}) in {mode} also does “{x}” ({xDoing}){leaves}.',
    effect: 'Most players will do both, and only the careful ones the one they want.',
    waysOut: [
      'Give “{x}” a gesture that the quick way does not make.',
      'Give one of the two another control.',
      'If both are meant, write one under `Along with` in the row of the other.',
    ],
    explanation:
      'There is a way to do the one action without the other, but it takes longer than the quickest way, which does the other at an earlier read.',
    example: table(
      '| each | Jump | button | tap under 0.1 s | | |',
      '| each | Spin | button | double tap within 0.3 s | | |',
    ),
  },
  'order-matters': {
    severity: 'warning',
    message:
      'Doing “{y}” ({yDoing}) in {mode} also does “{x}” ({xDoing}) or not, by the order in which the controls close{leaves}.',
    effect: 'Two players who do the same thing get different results, and neither sees why.',
    waysOut: [
      'Make “{x}” a `tap` or a `release`, and let the row of “{y}” have `Instead of: {x}`.',
      'Give one of the two another control.',
      'If both are meant, write one under `Along with` in the row of the other.',
    ],
    explanation:
      'There are two shortest ways to do the one action: in one of them the other has happened before, in the other it has not. Hands do not close two contacts in the same sixtieth of a second, and which of them comes first is chance.',
    example:
      '| Who | Action | Control | Gesture | Instead of |\n| --- | --- | --- | --- | --- |\n| each | Duck | stick down | press | |\n| each | Roll | stick down + button | press | Duck |',
  },
  aftermath: {
    severity: 'warning',
    message: 'Letting go after “{y}” ({yDoing}) in {mode} also does “{x}” ({xDoing}).',
    effect: 'The player has done what was wanted, lets go, and something else happens.',
    waysOut: [
      'Give “{x}” a `tap under T` that is over before “{y}” happens.',
      'Give one of the two another control.',
      'If both are meant, write one under `Along with` in the row of the other.',
    ],
    explanation:
      'After every shortest way to do the one action, letting go of everything at the next read does the other.',
    example: table('| each | Aim | button | hold 1 s | | |', '| each | Throw | button | release | | |'),
  },
  'can-coincide': {
    severity: 'note',
    message: '“{x}” ({xDoing}) and “{y}” ({yDoing}) in {mode} can happen at the same moment.',
    effect: 'It takes an unusual way of pressing, but then the player does two things at once.',
    waysOut: [
      'Give one of the two another control.',
      'If it does no harm, write one under `Along with` in the row of the other.',
    ],
    explanation:
      'No quickest way to do either leads to it, but there is some sequence of presses at whose last read both happen.',
    example: table(
      '| each | Dig | button | hold 1 s | | |',
      '| each | Climb | button + stick up | hold 0.5 s | | |',
    ),
  },
  'knock-on': {
    severity: 'warning',
    message:
      'In {mode}, “{x}” ({xDoing}) makes “{y}” ({yDoing}) possible, which can follow before the control has been let go.',
    effect: 'One press does two things: the first changes what the second part of it means.',
    waysOut: [
      'Let “{y}” be a `press`, so that the control must be let go and pressed again.',
      'Give one of the two another control.',
      'If both are meant, write one under `Along with` in the row of the other.',
    ],
    explanation:
      'The `Then` of the one row sets or steps a setting that the `When` of the other asks about. They share a line, and while it is still engaged from the first (or when it is let go) the second can happen.',
    example: table(
      '| each | Light the lamp | button | press | Lamp is out | Lamp: lit |',
      '| each | Swing the lamp | button | release | Lamp is lit | |',
    ),
  },
  'double-step': {
    severity: 'warning',
    message:
      '“{x}” in {mode} happens twice at the same moment ({xDoing}, {yDoing}), and steps {setting} twice.',
    effect: 'One press goes past the value that the player wanted, and some values may never be had.',
    waysOut: ['Take one of the two rows out.', 'Give one of the two another control.'],
    explanation:
      'Two rows of one action, or a row and a fallback, fire at the same read by the same press, and the `Then` of both steps the same setting. The effects of all rows that fire are applied, so it moves two values on. Recipes and the coverage matrix count one row a step.',
    example: table(
      '| each | Pick a level | button | press | | Level: next |',
      '| anyone | Pick a level | button | press | | Level: next |',
    ),
  },
  runaway: {
    severity: 'warning',
    message: '“{x}” ({xDoing}) in {mode} steps {setting} at every read.',
    effect:
      'The setting races through its values faster than anyone can see, and stops where chance will have it.',
    waysOut: ['Use `press`, or `repeat every 0.5 s` to step while it is held.'],
    explanation:
      '`held`, `at` and `turn` happen at every read, up to sixty times a second. With `next` or `previous` in `Then` the setting steps as often.',
    example: table('| anyone | Pick a level | SELECT | held | | Level: next |'),
  },
  'carry-over': {
    severity: 'warning',
    message:
      '“{x}” ({xDoing} in {from}) leads into {mode}, where “{y}” ({yDoing}) happens at once, because its control is still {state}.',
    effect: 'The player has only just arrived, and already does something there.',
    waysOut: [
      'Let “{x}” be a `release` or a `tap`, so that its control is let go when {mode} begins.',
      'Let “{y}” be a `press`: what was engaged when the mode began must be let go first.',
      'If it is meant, write one under `Along with` in the row of the other.',
    ],
    explanation:
      'Engagements and positions carry over into a new mode. Most gestures there must wait until the control has been let go once, but `held` and `at` happen at the first read if their control is engaged, or their switch in its position.',
    example:
      '## Mode: Gate\n\n| Who | Action | Control | Gesture | Then |\n| --- | --- | --- | --- | --- |\n| each | Enter | button | press | go to Garden |\n\n## Mode: Garden\n\n| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| each | Water | button | held |',
  },
  'diagonal-slip': {
    severity: 'note',
    message:
      '“{x}” ({xDoing}) and “{y}” ({yDoing}) in {mode} lie side by side on one stick: a slip does both.',
    effect: 'A stick that is pushed a little askew closes two contacts, and the player does two things.',
    waysOut: [
      'Put one of the two on the button or on the opposite direction.',
      'Let both be `held` where that is what is meant.',
      'If it does no harm, write one under `Along with` in the row of the other.',
    ],
    explanation:
      'Between two directions of a stick there is a diagonal at which both contacts are closed. For steering that is wanted; an action that happens once is easily done by mistake.',
    example: table('| each | Jump | stick up | press | | |', '| each | Walk | stick left/right | held | | |'),
  },
  'dead-zone': {
    severity: 'note',
    message:
      'In {mode}, engaging {control} for {reads} reads ({standard}) does nothing: too long for “{x}”, too short for “{y}”.',
    effect: 'The player presses, and nothing happens.',
    waysOut: ['Give the tap and the hold the same time, by a name in `## Timing`.'],
    explanation:
      'A `tap under T` and a `hold T` with the same T share out every engagement between them: one of the two always happens. Where the tap’s time is shorter than the hold’s there is a gap.',
    example: table(
      '| each | Jump | button | tap under 0.3 s | | |',
      '| each | Rest | button | hold 1 s | | |',
    ),
  },
} as const satisfies Readonly<Record<string, Rule>>;
