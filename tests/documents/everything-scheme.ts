/** A scheme that uses every kind of controller, gesture, link and switch of the language. */
export const EVERYTHING = `# Salt Orchard

Pick the crystal fruit *before* the wind turns. <b>No markup</b> here.

## Game

| Item | Value |
| --- | --- |
| Short name | SO |
| Version | 2.1 |
| Consoles | six-switch, four-switch, no-difficulty, Bench rig |
| TV standards | NTSC, PAL |
| Starts in | Gate |

## Consoles

| Console | RESET | SELECT | TV type | Left difficulty | Right difficulty |
| --- | --- | --- | --- | --- | --- |
| Bench rig | front | absent | fixed COLOR | front | rear |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Sticks | 2 | joystick | joystick |
| Knobs | 4 | paddles | paddles |
| Keys | 1 | keypad | wheel |
| Pedals | 1 | foot board | empty |

## Controllers

| Controller | Control | Line |
| --- | --- | --- |
| foot board | heel | up |
| foot board | toe | down |
| foot board | bar | button |

## Settings

| Setting | Values | Starts as | Set by |
| --- | --- | --- | --- |
| Wind | calm, gusty | calm | left difficulty: B calm, A gusty |
| Frost | mild, hard | mild | right difficulty: B mild, A hard |
| Shade | colour, grey | colour | TV type: COLOR colour, B-W grey |
| Tree | 1 to 6 | 1 | game |
| Basket | empty, full | empty | game |

## Actions

| Action | Say it as | Short | Need |
| --- | --- | --- | --- |
| Choose a tree | Step to the next tree | TREE | must |
| Go back a tree | Step to the tree before | BACK | nice |
| Begin | Open the gate and begin | BEGIN | must |
| Walk | Walk about the orchard | WALK | must |
| Reach | Stretch out your arm | REACH | must |
| Charge a throw | Gather strength for a throw | CHARGE | must |
| Throw | Throw what you hold | THROW | must |
| Shake | Shake the tree | SHAKE | must |
| Whistle | Call the dog | WHISTLE | nice |
| Dash | Run for a moment | DASH | nice |
| Hammer | Knock on the trunk | KNOCK | nice |
| Weigh | Tip the scales | WEIGH | must |
| Stamp | Put your stamp on the crate | STAMP | must |
| Pull | Pull the rope | PULL | must |
| Turn the press | Turn the press round and round | PRESS | must |
| Notice the wind | Hear that the wind has turned | WIND | nice |
| Close the gate | Give up and close the gate | CLOSE | must |
| Sunset | The sun sets and the day is over | SUNSET | nice |
| Squeeze | Squeeze the juice out | SQUEEZE | must |

## Mode: Gate

The gate is shut. A lantern shows the number of the tree.

- Kind: menu

| Who | Action | Control | Gesture | When | Then |
| --- | --- | --- | --- | --- | --- |
| anyone | Choose a tree | SELECT | repeat every 40 frames | | Tree: next |
| anyone | Go back a tree | stick left or key star | press | | Tree: previous |
| anyone | Begin | RESET | press | | go to Orchard; Basket: empty |
| each | Begin | button or key 5 or paddle button or bar | press | Tree is not 6 | go to Orchard |

## Mode: Orchard

| Who | Action | Control | Gesture | When | Then | Instead of | Along with |
| --- | --- | --- | --- | --- | --- | --- | --- |
| each | Walk | stick | held | | | | |
| each | Charge a throw | button | press | | | | Throw |
| each | Throw | button | release | Basket is full | Basket: empty | | |
| right | Whistle | button | double tap within 0.4 s | | | | Charge a throw; Throw |
| each | Weigh | paddle | turn | | | | |
| each | Dash | paddle button | tap under 0.3 s | | | | |
| each | Shake | paddle button | hold 0.3 s | | Basket: full | | |
| each | Stamp | key 1 + key 2 | press | | | Hammer | |
| each | Hammer | key 1 | release | | | | |
| each | Pull | key 2 | hold 1 s | | | | |
| each | Squeeze | key 9 | repeat every 0.2 s | | | | |
| anyone | Turn the press | right wheel | turn | | | | |
| each | Reach | heel or toe | held | | | | |
| each | Throw | bar | press | Basket is full and Wind is not gusty | Basket: empty | | |
| anyone | Notice the wind | left difficulty | flip | | | | |
| anyone | Close the gate | RESET | hold 4 s | | go to Gate | | |
| game | Sunset | | | Basket is full | go to Gate | | |

## Variations

| Variation | Seats | Tree | Wind | Say it as |
| --- | --- | --- | --- | --- |
| 1 | | 1 | calm | A still day |
| 2 | Sticks; Knobs | 2 | gusty | A stormy day for two and more |

## Fallbacks

| Without | For | Instead |
| --- | --- | --- |
| left difficulty | Wind | Gate: left stick up press |
| right difficulty | Frost | stays mild |
| SELECT | Choose a tree | Gate: button press |

## Manual: The orchard

| Fruit | Weight |
| --- | --- |
| plum | 2 |

- Salt keeps. \`Fresh\` fruit does not.
`;

const FILLER = 'Every single evening the careful keeper carries the heaviest of all the copper kettles';

/** A name of the greatest length that the language lets pass: 80 characters, no two alike. */
const longName = (number: number): string =>
  `${FILLER.slice(0, 76)} ${String(number).padStart(3, '0')}`.slice(0, 80);

/** One word of 80 characters: it can't be broken between words. */
const longWord = (number: number): string =>
  `${'Unterwassermaschinenraum'.repeat(4).slice(0, 77)}${String(number).padStart(3, '0')}`;

/** A sentence of 300 characters. */
const LONG_SENTENCE = `${`${FILLER}, and `.repeat(4).slice(0, 299)}.`;

const rows = <T>(count: number, make: (index: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, index) => make(index + 1));

/**
 * The greatest allowed length of every name and sentences of 300 characters, for a keypad or joysticks.
 *
 * @param nameOf how names are made: of words or as one word
 */
export function longest(controller: 'joystick' | 'keypad', kind: 'words' | 'word' = 'words'): string {
  const nameOf = kind === 'words' ? longName : longWord;
  const controls =
    controller === 'keypad'
      ? ['1', '2', '3', '4', '5', '6', '7', '8', '9', 'star', '0', 'hash'].map(key => `key ${key}`)
      : ['stick up', 'stick down', 'stick left', 'stick right', 'button'];
  const menu = nameOf(901);
  const play = nameOf(902);
  const start = nameOf(800);
  return `# ${nameOf(1)}

${LONG_SENTENCE}

## Game

| Item | Value |
| --- | --- |
| Short name | LONGNAME |
| Version | ${nameOf(7)} |
| Starts in | ${menu} |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| ${nameOf(11)} | 2 | ${controller} | ${controller} |
| ${nameOf(12)} | 1 | ${controller} | empty |

## Settings

| Setting | Values | Starts as | Set by |
| --- | --- | --- | --- |
| ${nameOf(21)} | ${nameOf(31)}, ${nameOf(32)} | ${nameOf(31)} | left difficulty: B ${nameOf(31)}, A ${nameOf(32)} |
| ${nameOf(22)} | ${rows(3, index => nameOf(40 + index)).join(', ')} | ${nameOf(41)} | game |

## Actions

| Action | Say it as | Short |
| --- | --- | --- |
| ${start} | ${LONG_SENTENCE} | START |
${controls.map((_, index) => `| ${nameOf(100 + index)} | ${LONG_SENTENCE} | ACT ${index} |`).join('\n')}
| ${nameOf(801)} | ${LONG_SENTENCE} | TURN |

## Mode: ${menu}

${LONG_SENTENCE}

- Kind: menu

| Who | Action | Control | Gesture | Then |
| --- | --- | --- | --- | --- |
| anyone | ${start} | RESET | press | go to ${play} |
| anyone | ${nameOf(801)} | SELECT | repeat every 0.5 s | ${nameOf(22)}: next |

## Mode: ${play}

| Who | Action | Control | Gesture | When | Then |
| --- | --- | --- | --- | --- | --- |
${controls.map((control, index) => `| each | ${nameOf(100 + index)} | ${control} | press | ${nameOf(22)} is not ${nameOf(41)} | |`).join('\n')}
| anyone | ${start} | RESET | hold 2 s | | go to ${menu} |

## Switches

| Switch | Position or use | Say it as |
| --- | --- | --- |
| left difficulty | A | ${LONG_SENTENCE} |
| RESET | use | ${LONG_SENTENCE} |

## Variations

| Variation | ${nameOf(22)} | Say it as |
| --- | --- | --- |
| ${nameOf(51)} | ${nameOf(42)} | ${LONG_SENTENCE} |

## Fallbacks

| Without | For | Instead |
| --- | --- | --- |
| left difficulty | ${nameOf(21)} | stays ${nameOf(31)} |

## Manual: ${nameOf(61)}

${LONG_SENTENCE}
`;
}

/** Many modes, each with many rows: the quick reference can't hold them all. */
export function crowded(modes: number): string {
  const names = rows(modes, index => `Room ${index}`);
  const actions = rows(10, index => `Deed ${index}`);
  return `# Crowded House

A house of ${modes} rooms.

## Game

| Item | Value |
| --- | --- |
| Short name | CH |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Alone | 1 | keypad | empty |

## Actions

| Action | Say it as | Short |
| --- | --- | --- |
${actions.map(action => `| ${action} | Do what has to be done here | ${action.toUpperCase()} |`).join('\n')}
| Go on | Go on to the next room | NEXT |

${names
  .map(
    (name, index) => `## Mode: ${name}

| Who | Action | Control | Gesture | Then |
| --- | --- | --- | --- | --- |
${actions.map((action, key) => `| each | ${action} | key ${key} | tap under 0.4 s | |`).join('\n')}
| anyone | Go on | RESET | press | go to ${names[(index + 1) % names.length]} |
`,
  )
  .join('\n')}`;
}
