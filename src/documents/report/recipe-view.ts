import { recipeText } from '../../checks/coverage/recipe-text.js';
import { whereText } from '../../checks/coverage/where-text.js';
import type { Coverage, RecipeStep } from '../../checks/coverage-model.js';
import type { TvStandard } from '../../hardware/clocks.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { Scheme, SeatsRow } from '../../language/model.js';

/** How to get to a mode or a variation from power-on. */
export interface RecipeView {
  readonly target: string;
  /** The different ways, each with where it is the shortest. */
  readonly ways: readonly RecipeWay[];
}

export interface RecipeWay {
  readonly where: string;
  /** Empty where the game is there at power-on; null where there is no way. */
  readonly steps: readonly string[] | null;
}

interface Reached {
  readonly console: ConsoleProfile;
  readonly seats: SeatsRow;
  readonly standard: TvStandard;
  readonly recipe: readonly RecipeStep[] | null;
}

export function viewModeRecipes(coverage: Coverage, scheme: Scheme): readonly RecipeView[] {
  return scheme.modes.map(mode => ({
    target: mode.name,
    ways: waysOf(
      coverage.cells.filter(cell => cell.mode === mode && cell.verdict !== 'not offered'),
      scheme,
    ),
  }));
}

export function viewVariationRecipes(coverage: Coverage, scheme: Scheme): readonly RecipeView[] {
  return scheme.variations.map(variation => ({
    target: variation.words === '' ? variation.name : `${variation.name}: ${variation.words}`,
    ways: waysOf(
      coverage.variations.filter(cell => cell.variation === variation),
      scheme,
    ),
  }));
}

function waysOf(cells: readonly Reached[], scheme: Scheme): readonly RecipeWay[] {
  const ways = new Map<string, { readonly steps: readonly string[] | null; readonly cells: Reached[] }>();
  for (const cell of cells) {
    const steps = cell.recipe === null ? null : foldSteps(recipeText(cell.recipe));
    const key = JSON.stringify(steps);
    const way = ways.get(key) ?? { steps, cells: [] };
    way.cells.push(cell);
    ways.set(key, way);
  }
  return [...ways.values()].map(({ steps, cells: same }) => ({ steps, where: whereText(same, scheme) }));
}

/** The same step several times over is told once: `…, 4 times`. */
function foldSteps(steps: readonly string[]): readonly string[] {
  const folded: { text: string; times: number }[] = [];
  for (const text of steps) {
    const last = folded.at(-1);
    if (last?.text === text) last.times += 1;
    else folded.push({ text, times: 1 });
  }
  return folded.map(({ text, times }) => (times === 1 ? text : `${text}, ${times} times`));
}
