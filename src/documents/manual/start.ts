import type { Coverage, RecipeStep } from '../../checks/coverage-model.js';
import type { TvStandard } from '../../hardware/clocks.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { Scheme, SeatsRow } from '../../language/model.js';
import { namedContact } from '../wording/controls.js';
import { gestureSentence, type Speech } from '../wording/gestures.js';
import { panelWords } from '../wording/machine.js';
import { playerWords } from '../wording/who.js';
import { viewGame } from './settings.js';

/** Chapter 5: how to get from switching on to each mode and each game. */
export interface StartView {
  readonly intro: string;
  readonly modes: readonly Goal[];
  readonly games: readonly Goal[];
}

export interface Goal {
  readonly name: string;
  /** What a game is; empty for a mode. */
  readonly words: string;
  /** The settings that a game fixes; none for a mode. */
  readonly values: readonly string[];
  /** The seats rows it is for; empty where for all. */
  readonly seats: string;
  /** One where all seats rows and consoles share it. */
  readonly ways: readonly GoalWay[];
}

export interface GoalWay {
  /** The seats rows and consoles it holds for; empty where for all of the goal's. */
  readonly where: string;
  readonly steps: readonly string[];
}

/** A recipe in one place; `steps` is null where there is none. */
interface Recipe {
  readonly console: ConsoleProfile;
  readonly seats: SeatsRow;
  readonly standard: TvStandard;
  readonly steps: readonly string[] | null;
}

export function viewStart(scheme: Scheme, { cells, variations }: Coverage, speech: Speech): StartView {
  const offered = cells.filter(({ verdict }) => verdict !== 'not offered');
  return {
    intro: speech.phrases.say('start intro'),
    modes: scheme.modes.flatMap(mode =>
      goal(
        { name: mode.name, words: '', values: [] },
        offered.filter(cell => cell.mode === mode),
        scheme,
        speech,
      ),
    ),
    games: scheme.variations.flatMap(variation =>
      goal(
        viewGame(variation, speech),
        variations.filter(cell => cell.variation === variation),
        scheme,
        speech,
      ),
    ),
  };
}

type Cell = Pick<Coverage['variations'][number], 'console' | 'standard' | 'recipe' | 'seats'>;

/** Nothing where no console leads there: the report has the findings. */
function goal(
  told: Pick<Goal, 'name' | 'words' | 'values'>,
  cells: readonly Cell[],
  scheme: Scheme,
  speech: Speech,
): readonly Goal[] {
  const recipes = tellRecipes(cells, speech);
  if (recipes.every(({ steps }) => steps === null)) return [];
  const ways = new Map<string, Recipe[]>();
  for (const recipe of recipes) {
    const key = JSON.stringify(recipe.steps);
    ways.set(key, [...(ways.get(key) ?? []), recipe]);
  }
  const seats = [...new Set(recipes.map(recipe => recipe.seats))];
  const isForAll = seats.length === scheme.seats.length;
  return [
    {
      ...told,
      seats: isForAll ? '' : speech.phrases.and(seats.map(row => row.name)),
      ways: [...ways.values()].map(alike => ({
        where: ways.size === 1 ? '' : whereWords(alike, recipes, speech),
        steps: alike[0]?.steps ?? [speech.phrases.say('start not here')],
      })),
    },
  ];
}

/** Names the player who does a step where a seats row that shares the recipe has several: one telling does for all. */
function tellRecipes(cells: readonly Cell[], speech: Speech): readonly Recipe[] {
  const told = cells.map(cell => ({
    cell,
    apart: cell.recipe === null ? null : recipeWords(cell.recipe, true, speech),
  }));
  const keyOf = (steps: readonly string[] | null) => JSON.stringify(steps);
  const shared = new Set(
    told.flatMap(({ cell, apart }) => (cell.seats.players.length > 1 ? [keyOf(apart)] : [])),
  );
  return told.map(({ cell: { recipe, ...place }, apart }) => {
    const steps = recipe === null || shared.has(keyOf(apart)) ? apart : recipeWords(recipe, false, speech);
    return { ...place, steps };
  });
}

/** The places of some recipes among all: seats rows and machines, each told only where it tells them apart. */
function whereWords(alike: readonly Recipe[], all: readonly Recipe[], { phrases }: Speech): string {
  const rows = [...new Set(alike.map(({ seats }) => seats))];
  const machines = rows.map(row => machineWords(alike, all, row, phrases));
  const [machine = ''] = machines;
  const isAlike = machines.every(each => each === machine);
  const isEveryRow = rows.length === new Set(all.map(({ seats }) => seats)).size;
  if (isAlike && isEveryRow) return machine;
  const name = (row: SeatsRow, index: number) => {
    const value = machines[index] ?? '';
    return value === '' ? row.name : phrases.say('name and value', { name: row.name, value });
  };
  return isAlike && machine === '' ? phrases.and(rows.map(row => row.name)) : rows.map(name).join('; ');
}

/** The consoles and televisions of one seats row; empty where all. */
function machineWords(
  alike: readonly Recipe[],
  all: readonly Recipe[],
  row: SeatsRow,
  phrases: Speech['phrases'],
): string {
  const tell = (nameOf: (recipe: Recipe) => string): readonly string[] => {
    const names = (recipes: readonly Recipe[]) => [
      ...new Set(recipes.filter(({ seats }) => seats === row).map(nameOf)),
    ];
    const own = names(alike);
    return own.length === names(all).length ? [] : [phrases.and(own)];
  };
  return [
    ...tell(({ console }) => panelWords(console.name, phrases)),
    ...tell(({ standard }) => standard.name),
  ].join(', ');
}

/**
 * The steps as sentences; the same step several times in a row is told once with its number.
 *
 * @param many whether there are several players, so that it is told who does a step
 */
function recipeWords(recipe: readonly RecipeStep[], many: boolean, speech: Speech): readonly string[] {
  const { phrases } = speech;
  if (recipe.length === 0) return [phrases.say('start at once')];
  const told: { text: string; count: number }[] = [];
  for (const step of recipe) {
    const text = stepWords(step, many, speech);
    const last = told.at(-1);
    if (last?.text === text) last.count += 1;
    else told.push({ text, count: 1 });
  }
  return told.map(({ text, count }) => phrases.sentence(phrases.count('times', count, { step: text })));
}

function stepWords(step: RecipeStep, many: boolean, speech: Speech): string {
  const { phrases } = speech;
  switch (step.kind) {
    case 'game':
      return phrases.say('start waits', { Action: step.row.action.name });
    case 'switch': {
      const control = { kind: 'switch', name: step.name } as const;
      return gestureSentence([control], { kind: 'flip to', position: step.position }, speech);
    }
    case 'binding': {
      const { binding } = step;
      const isAnyone = binding.player === 'anyone';
      // A step is done once: `hold to repeat` would only confuse.
      const gesture = binding.gesture.kind === 'repeat' ? ({ kind: 'press' } as const) : binding.gesture;
      const controls = binding.parts.map(part => namedContact(part, isAnyone && many));
      const said = gestureSentence(controls, gesture, speech);
      if (binding.player === 'anyone' || !many) return said;
      return phrases.say('start by player', { step: said, player: playerWords(binding.player, phrases) });
    }
    default:
      return step satisfies never;
  }
}
