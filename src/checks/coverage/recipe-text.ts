import type { Binding } from '../../gestures/bindings.js';
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
  switch (gesture.kind) {
    case 'press':
    case 'held':
    case 'repeat':
      return `presses ${control}`;
    case 'release':
      return `presses ${control} and lets it go`;
    case 'hold':
      return `holds ${control} for ${gesture.time.text}`;
    case 'tap':
      return `taps ${control} for less than ${gesture.time.text}`;
    case 'double tap':
      return `presses ${control} twice within ${gesture.time.text}`;
    case 'at':
      return `leaves ${control} at ${gesture.position}`;
    case 'flip to':
      return `moves ${control} to ${gesture.position}`;
    case 'flip':
      return `moves ${control}`;
    case 'turn':
      return `turns ${control}`;
    default:
      return gesture satisfies never;
  }
}
