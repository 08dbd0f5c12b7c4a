import { type Binding, bindingsOf } from '../../src/gestures/bindings.js';
import {
  createPlay,
  type Play,
  type PlayInput,
  type PlayState,
  startPlay,
  stepPlay,
  valuesIn,
} from '../../src/gestures/play.js';
import { STANDARDS } from '../../src/hardware/clocks.js';
import type { ConsoleProfile } from '../../src/hardware/consoles.js';
import type { Mode, Scheme, SeatsRow } from '../../src/language/model.js';
import { type SmallOptions, type SmallRow, smallScheme } from '../support/small-scheme.js';

/** A small scheme with its first mode and seats, and one of its consoles. */
interface SmallPlace {
  readonly scheme: Scheme;
  readonly mode: Mode;
  readonly seats: SeatsRow;
  readonly profile: ConsoleProfile;
}

/** @param console which of the scheme's consoles, from 0 */
export function smallPlace(rows: readonly SmallRow[], options?: SmallOptions, console = 0): SmallPlace {
  return placeIn(smallScheme(rows, options), console);
}

export function placeIn(scheme: Scheme, console = 0): SmallPlace {
  const [mode] = scheme.modes;
  const [seats] = scheme.seats;
  const profile = scheme.consoles[console];
  if (mode === undefined || seats === undefined || profile === undefined) throw new Error('no place');
  return { scheme, mode, seats, profile };
}

export const playOn = ({ scheme, seats, profile }: SmallPlace): Play =>
  createPlay({ scheme, seats, profile, standard: STANDARDS.NTSC });

export const smallPlay = (rows: readonly SmallRow[], options?: SmallOptions, console = 0): Play =>
  playOn(smallPlace(rows, options, console));

/** Each binding of a place as `PLAYER: ACTION: CONTROL + CONTROL`. */
export const bindingTexts = ({ scheme, mode, seats, profile }: SmallPlace): readonly string[] =>
  bindingsOf(scheme, mode, seats, profile).map(bindingText);

const bindingText = ({ player, actionName, parts }: Binding): string =>
  `${player}: ${actionName}: ${parts.map(({ id }) => id).join(' + ')}`;

export const engaged = (...ids: readonly string[]): PlayInput => ({ engaged: new Set(ids) });

/** What fires at each read, from power-on or from a state; actions of one read joined by commas. */
export function run(play: Play, inputs: readonly PlayInput[], from: PlayState = startPlay(play)) {
  let state = from;
  const fired = inputs.map(input => {
    const step = stepPlay(play, state, input);
    state = step.state;
    return step.fired.map(({ actionName }) => actionName).join(', ');
  });
  return { fired, state, values: valueNames(play, state) };
}

/** The value of every setting, by its name. */
export const valueNames = (play: Play, state: PlayState): Readonly<Record<string, string>> =>
  Object.fromEntries([...valuesIn(play, state)].map(([setting, value]) => [setting.name, value]));

/** A section `## Fallbacks`; each line is `Without | For | Instead`. */
export const fallbackSection = (...lines: readonly string[]): string =>
  [
    '## Fallbacks\n',
    '| Without | For | Instead |',
    '| --- | --- | --- |',
    ...lines.map(line => `| ${line} |`),
  ]
    .join('\n')
    .concat('\n\n');

/** Options for a game on `six-switch` and on `bare`, which has no RESET and fixes the left difficulty at A. */
export const onBare = ({ extra = '', ...options }: SmallOptions = {}): SmallOptions => ({
  ...options,
  game: { Consoles: 'six-switch, bare', ...options.game },
  extra: `## Consoles

| Console | RESET | Left difficulty | Right difficulty |
| --- | --- | --- | --- |
| bare | absent | fixed A | fixed B |

${extra}`,
});

/** Which of a game’s consoles is `bare`. */
export const BARE = 1;
