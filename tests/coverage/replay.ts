import type { RecipeStep } from '../../src/checks/coverage-model.js';
import type { Binding } from '../../src/gestures/bindings.js';
import {
  createPlay,
  type Play,
  type PlayChoice,
  type PlayInput,
  type PlayState,
  startPlay,
  stepPlay,
} from '../../src/gestures/play.js';
import { SWITCHES, type TwoPositionSwitchName } from '../../src/hardware/switches.js';
import { readsOf } from '../../src/language/time.js';

/** Plays a recipe read by read, as a careful player would; what is read at the end of it. */
export function replay(choice: PlayChoice, recipe: readonly RecipeStep[]): { play: Play; state: PlayState } {
  const play = createPlay(choice);
  let state = read(play, startPlay(play), {});
  for (const step of recipe) {
    if (state.mode !== step.mode)
      throw new Error(`a step of ${step.mode.name} was to be done in ${state.mode.name}`);
    for (const input of inputsOf(step, state, play)) state = read(play, state, input);
  }
  return { play, state };
}

interface Input extends Omit<PlayInput, 'engaged'> {
  readonly engaged?: readonly string[];
}

const read = (play: Play, state: PlayState, { engaged = [], ...rest }: Input): PlayState =>
  stepPlay(play, state, { ...rest, engaged: new Set(engaged) }).state;

/** What is done at each read of a step; the last but one at the latest fires it, the last lets everything go. */
function inputsOf(step: RecipeStep, state: PlayState, play: Play): readonly Input[] {
  if (step.kind === 'game') return [{ game: [step.row] }];
  if (step.kind === 'switch') return [{ positions: { [step.name]: step.position } }];
  return [...gestureInputs(step.binding, state, play), {}];
}

function gestureInputs({ gesture, parts }: Binding, state: PlayState, play: Play): readonly Input[] {
  const ids = parts.map(({ id }) => id);
  // Hands do not close two contacts in the same read: one part after the other.
  const closing = ids.map((_, index) => ({ engaged: ids.slice(0, index + 1) }));
  const inReads =
    'time' in gesture ? readsOf(gesture.time, play.standard, play.scheme.game.readEvery.value) : 1;
  const kept = (reads: number) => Array.from({ length: reads }, () => ({ engaged: ids }));
  switch (gesture.kind) {
    case 'press':
    case 'held':
      return closing;
    case 'release':
    case 'tap':
      return [...closing, {}];
    case 'hold':
      return [...closing, ...kept(inReads - 1)];
    case 'double tap':
      return [...closing, {}, ...closing];
    case 'repeat':
      return [...Array.from({ length: inReads }, () => ({})), ...closing];
    case 'at':
      return [{}];
    case 'flip':
    case 'flip to':
      return [{ positions: { [ids[0] ?? '']: otherPosition(ids[0] ?? '', state, play) } }];
    case 'turn':
      return [{ turned: { [ids[0] ?? '']: (levelOf(ids[0] ?? '', state, play) + 1) % 380 } }];
    default:
      return gesture satisfies never;
  }
}

const levelOf = (id: string, { levels }: PlayState, { contacts }: Play): number =>
  levels[contacts.findIndex(contact => contact.id === id)] ?? 0;

function otherPosition(id: string, state: PlayState, play: Play) {
  const { positions } = SWITCHES[id as TwoPositionSwitchName];
  return positions[1 - levelOf(id, state, play)]?.name;
}
