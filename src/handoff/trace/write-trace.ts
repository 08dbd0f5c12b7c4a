import type { Binding } from '../../gestures/bindings.js';
import { type Play, type PlayState, startPlay, stepPlay, valuesIn } from '../../gestures/play.js';
import type { BindingRow } from '../../language/model.js';
import type { Handoff } from '../model.js';
import { outputKey } from '../outputs.js';
import { INPUT_REGISTERS, type InputRegister, type RegisterValues, registersOf } from '../registers.js';
import { hex } from '../routine/code.js';
import { inputOf, type Levels } from '../vectors/situation.js';
import { engagedWords } from '../vectors/vectors.js';

/** Equal reads in a row, as a session keeps them. */
export interface TraceRead {
  /** By contact of the play. */
  readonly levels: Levels;
  /** `game` rows that happened at it. */
  readonly game: readonly BindingRow[];
  /** How many, at least 1. */
  readonly times: number;
}

/**
 * A session from power-on as a log that `readLog` reads: JSON lines, equal reads in a row as one line. The first line
 * also says what it was made on.
 */
export function writeTrace(play: Play, handoff: Handoff, reads: readonly TraceRead[]): string {
  const lines: { text: string; times: number }[] = [];
  let state = startPlay(play);
  for (const { levels, game, times } of reads) {
    for (let count = 0; count < times; count++) {
      const step = stepPlay(play, state, { ...inputOf(play, levels), game });
      const text = JSON.stringify({
        ...(lines.length === 0 ? originOf(play) : {}),
        ...readEntry(play, state, levels),
        fires: firesOf(handoff, state, step.fired, step.game),
      });
      const last = lines.at(-1);
      if (last?.text === text) last.times++;
      else lines.push({ text, times: 1 });
      state = step.state;
    }
  }
  return lines.map(({ text, times }) => `${withTimes(text, times)}\n`).join('');
}

const withTimes = (text: string, times: number): string =>
  times === 1 ? text : `${text.slice(0, -1)},"times":${times}}`;

const originOf = ({ profile, seats, standard }: Play) => ({
  console: profile.name,
  seats: seats.name,
  standard: standard.name,
});

function readEntry(play: Play, state: PlayState, levels: Levels) {
  const { values, rows, paddles } = registersOf(play.contacts, levels);
  const settings = [...valuesIn(play, state)].map(([setting, value]) => ({ setting: setting.name, value }));
  return {
    mode: state.mode.name,
    ...(settings.length === 0 ? {} : { settings }),
    ...hexValues(values),
    ...(rows.size === 0 ? {} : { rows: [...rows].map(([row, own]) => ({ row, values: hexValues(own) })) }),
    ...(paddles.size === 0
      ? {}
      : { paddles: [...paddles].map(([control, position]) => ({ control, position })) }),
    engaged: engagedWords(play, levels, state.levels),
  };
}

const hexValues = (values: RegisterValues): Readonly<Record<InputRegister, string>> =>
  Object.fromEntries(INPUT_REGISTERS.map(symbol => [symbol, hex(values[symbol])])) as Record<
    InputRegister,
    string
  >;

/** Symbols of what fired; names of what the game did by itself, which has none. */
function firesOf(
  { outputs }: Handoff,
  { mode }: PlayState,
  fired: readonly Binding[],
  game: readonly BindingRow[],
): readonly string[] {
  const own = outputs.get(mode);
  const symbols = fired.flatMap(binding => own?.get(outputKey(binding))?.symbol ?? []);
  return [...new Set([...symbols, ...game.map(({ action }) => action.name)])];
}
