import type { Binding } from '../../gestures/bindings.js';
import type { Gesture } from '../../language/model.js';
import type { RecipeStep } from '../coverage-model.js';

/**
 * A recipe in plain English, one string a step: `Quay: anyone presses RESET (Set sail)`,
 * `Quay: move TV type to B-W`, `Harbour: the game does “Tide turns”`.
 */
export function recipeText(steps: readonly RecipeStep[]): readonly string[] {
  return steps.map(stepText);
}

function stepText(step: RecipeStep): string {
  const mode = step.mode.name;
  switch (step.kind) {
    case 'binding':
      return `${mode}: ${whoText(step.binding)} ${doesText(step.binding)} (${step.binding.actionName})`;
    case 'game':
      return `${mode}: the game does it by itself (${step.row.action.name})`;
    case 'switch':
      return `${mode}: move ${step.name} to ${step.position}`;
    default:
      return step satisfies never;
  }
}

const whoText = ({ player }: Binding): string => (player === 'anyone' ? 'anyone' : `the ${player} player`);

function doesText({ gesture, parts }: Binding): string {
  const control = parts.map(({ id }) => id).join(' + ');
  return VERBS[gesture.kind](control, gesture);
}

const timeOf = (gesture: Gesture): string => ('time' in gesture ? gesture.time.text : '');
const positionOf = (gesture: Gesture): string => ('position' in gesture ? gesture.position : '');

const VERBS: Readonly<Record<Gesture['kind'], (control: string, gesture: Gesture) => string>> = {
  press: control => `presses ${control}`,
  release: control => `presses ${control} and lets it go`,
  held: control => `presses ${control}`,
  hold: (control, gesture) => `holds ${control} for ${timeOf(gesture)}`,
  tap: (control, gesture) => `taps ${control} for less than ${timeOf(gesture)}`,
  'double tap': (control, gesture) => `presses ${control} twice within ${timeOf(gesture)}`,
  repeat: control => `presses ${control}`,
  at: (control, gesture) => `leaves ${control} at ${positionOf(gesture)}`,
  'flip to': (control, gesture) => `moves ${control} to ${positionOf(gesture)}`,
  flip: control => `moves ${control}`,
  turn: control => `turns ${control}`,
};
