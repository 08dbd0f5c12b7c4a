import { recipeText } from '../../checks/coverage/recipe-text.js';
import { whereText } from '../../checks/coverage/where-text.js';
import type { Coverage, CoverageCell, VariationCell } from '../../checks/coverage-model.js';
import { compile } from '../../compile.js';
import { visibleText } from '../../findings/formats/terminal-text.js';
import type { Scheme } from '../../language/model.js';
import { nearest, normal } from '../../language/spelling.js';
import { CliError } from '../errors.js';
import type { ExitCode } from '../exit-code.js';
import { type Narrowing, narrow } from '../narrow.js';
import { readSchemeFiles } from '../read-scheme-files.js';
import type { Terminal } from '../terminal.js';

/** `leverleaf recipe`: how a player gets to a mode or variation; places with the same way are named together. */
export async function recipe(
  path: string,
  wanted: string,
  options: Narrowing,
  terminal: Terminal,
): Promise<ExitCode> {
  const files = await readSchemeFiles(path, terminal.workingFolder);
  const { scheme, coverage } = narrow(compile(files), options);
  if (scheme === null || coverage === null) {
    terminal.say(`The scheme has errors to mend first: leverleaf check ${path}`);
    return 1;
  }
  const cells = cellsOf(scheme, coverage, wanted);
  await terminal.out(
    `${groupCells(cells)
      .map(group => writeGroup(group, scheme, terminal))
      .join('\n\n')}\n`,
  );
  return 0;
}

type Cell = CoverageCell | VariationCell;

function cellsOf(scheme: Scheme, { cells, variations }: Coverage, wanted: string): readonly Cell[] {
  const isWanted = ({ name }: { readonly name: string }) => normal(name) === normal(wanted);
  const found: readonly Cell[] = [
    ...cells.filter(({ mode, verdict }) => isWanted(mode) && verdict !== 'not offered'),
    ...variations.filter(({ variation }) => isWanted(variation)),
  ];
  if (found.length > 0) return found;
  const names = [...scheme.modes, ...scheme.variations].map(({ name }) => name);
  if (names.some(name => isWanted({ name }))) {
    throw new CliError(`“${wanted}” is not offered to those seats.`);
  }
  const meant = nearest(wanted, names);
  const hint =
    meant === null ? `it has ${names.map(name => `“${name}”`).join(', ')}.` : `did you mean “${meant}”?`;
  throw new CliError(`The scheme has no mode or variation “${wanted}”: ${hint}`);
}

interface Group {
  readonly cells: Cell[];
  /** Null where there is no way. */
  readonly steps: readonly string[] | null;
}

/** Cells with the same way, in the order of their first. */
function groupCells(cells: readonly Cell[]): readonly Group[] {
  const groups = new Map<string, Group>();
  for (const cell of cells) {
    const steps = cell.recipe === null ? null : recipeText(cell.recipe);
    const key = JSON.stringify(steps);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { cells: [cell], steps });
    else group.cells.push(cell);
  }
  return [...groups.values()];
}

function writeGroup({ cells, steps }: Group, scheme: Scheme, { colours }: Terminal): string {
  const places = visibleText(whereText(cells, scheme));
  const way =
    steps === null
      ? ['  can’t be reached']
      : steps.length === 0
        ? ['  from power-on, without a step']
        : steps.map((step, index) => `  ${index + 1}. ${visibleText(step)}`);
  return [colours.bold(places.charAt(0).toUpperCase() + places.slice(1)), ...way].join('\n');
}
