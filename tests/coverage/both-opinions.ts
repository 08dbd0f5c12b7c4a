import { checkCoverage } from '../../src/checks/coverage.js';
import type { Coverage, RecipeStep } from '../../src/checks/coverage-model.js';
import type { Finding } from '../../src/findings/finding.js';
import { createReport } from '../../src/findings/report.js';
import type { Scheme } from '../../src/language/model.js';
import { readScheme } from '../../src/language/read.js';
import { type Findings, isPlayed, searchPlainly } from './plain-rules.js';
import { after, canDo, moved, powerOn } from './plain-search.js';
import type { Place, State, Way } from './plain-ways.js';
import { waysOf } from './plain-ways.js';

/** What the check says of a scheme, and what the plain search says, written alike. */
export interface Opinion extends Omit<Findings, 'states'> {
  /** `console|seats|standard|mode` → the actions lost there, then the values, each once. */
  readonly losses: ReadonlyMap<string, readonly string[]>;
}

export interface BothOpinions {
  readonly scheme: Scheme;
  readonly coverage: Coverage;
  readonly ours: Opinion;
  readonly theirs: Opinion & Findings;
}

export function judgeBoth(text: string): BothOpinions {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'test.md', text }], report);
  if (scheme === null) throw new Error('the scheme has no mode');
  const before = findings.length;
  const coverage = checkCoverage(scheme, report);
  const theirs = searchPlainly(scheme);
  const losses = new Map([...theirs.cells.keys()].map(cell => [cell, lossesAt(cell, theirs)]));
  return {
    scheme,
    coverage,
    ours: opinionOf(scheme, coverage, findings.slice(before)),
    theirs: { ...theirs, losses },
  };
}

function opinionOf(scheme: Scheme, coverage: Coverage, findings: readonly Finding[]): Opinion {
  const rowAt = new Map(
    scheme.modes.flatMap(mode => mode.rows.map(row => [row.at.range.start.offset, row.index] as const)),
  );
  const holds = findings
    .filter(({ rule }) => rule !== 'idle-control')
    .flatMap(finding => holdsOf(finding, rowAt));
  const keyOf = ({ console, seats, standard }: (typeof coverage.variations)[number] | Cell) =>
    `${console.name}|${seats.name}|${standard.name}`;
  const lengthOf = (recipe: readonly unknown[] | null) => recipe?.length ?? -1;
  return {
    holds: new Set(holds),
    cells: new Map(
      coverage.cells.map(cell => [
        `${keyOf(cell)}|${cell.mode.name}`,
        `${cell.verdict} ${lengthOf(cell.recipe)}`,
      ]),
    ),
    variations: new Map(
      coverage.variations.map(cell => [`${keyOf(cell)}|${cell.variation.name}`, lengthOf(cell.recipe)]),
    ),
    losses: new Map(
      coverage.cells.map(cell => [
        `${keyOf(cell)}|${cell.mode.name}`,
        [
          ...cell.lostActions,
          ...cell.lostValues.map(({ setting, value }) => `${setting.name}: ${value}`),
        ].sort(),
      ]),
    ),
  };
}

type Cell = Coverage['cells'][number];

/** A finding as the plain search writes it: one text for each place it holds in. */
function holdsOf(finding: Finding, rowAt: ReadonlyMap<number, number>): readonly string[] {
  const { rule, mode = '', actions, settings, players, values, variation, where } = finding;
  if (rule === 'dead-binding') {
    const row = rowAt.get(finding.at.range.start.offset);
    return row === undefined ? [] : [`${rule}|${mode}|${actions?.[0]}|row ${row}`];
  }
  const hasPlayer = rule === 'lost-action' || rule === 'behind-the-console';
  const subject = variation ?? actions?.[0] ?? settings?.[0] ?? '';
  const player = hasPlayer ? (players?.[0] ?? '') : '';
  const value = rule === 'lost-value' ? (values?.[0] ?? '') : '';
  return (where ?? []).map(place => [rule, mode, subject, player, value, ...place].join('|'));
}

function lossesAt(cell: string, { holds, cells }: Findings): readonly string[] {
  if (cells.get(cell)?.startsWith('not offered')) return [];
  const at = cell.lastIndexOf('|');
  const [place, mode] = [cell.slice(0, at), cell.slice(at + 1)];
  const lost = [...holds].flatMap(hold => {
    const [rule, where, subject, , value, ...rest] = hold.split('|');
    if (rest.join('|') !== place) return [];
    if (rule === 'lost-action' && where === mode) return [subject ?? ''];
    return rule === 'lost-value' ? [`${subject}: ${value}`] : [];
  });
  return [...new Set(lost)].sort();
}

/** Recipes that are no way to where they should lead, done step by step as the plain search does them. */
export function wrongRecipes(scheme: Scheme, { cells, variations }: Coverage): readonly string[] {
  const wrong: string[] = [];
  const name = ({ console, seats, standard }: Cell | Coverage['variations'][number], what: string) =>
    `${what} on ${console.name} in ${seats.name} with ${standard.name}`;
  for (const cell of cells)
    if (cell.recipe !== null && follow(scheme, cell, cell.recipe)?.mode !== cell.mode)
      wrong.push(name(cell, cell.mode.name));
  for (const cell of variations) {
    if (cell.recipe === null) continue;
    const state = follow(scheme, cell, cell.recipe);
    if (state === null || !isPlayed(scheme, { profile: cell.console }, cell.variation)({ state }))
      wrong.push(name(cell, cell.variation.name));
  }
  return wrong;
}

/** Null where a step of it can't be done. */
function follow(
  scheme: Scheme,
  { console: profile, seats, standard }: Cell | Coverage['variations'][number],
  recipe: readonly RecipeStep[],
): State | null {
  const place: Place = { profile, seats, standard, every: scheme.game.readEvery.value };
  let state: State | null = powerOn(scheme, profile);
  for (const step of recipe) {
    if (state?.mode !== step.mode) return null;
    if (step.kind === 'switch') {
      if ((state.switches.get(step.name) ?? step.position) === step.position) return null;
      state = moved(state, step.name);
      continue;
    }
    const way = waysOf(scheme, step.mode, place).find(each => isSame(each, step));
    if (way === undefined || !canDo(way, scheme, profile, state)) return null;
    state = after(way, seats, state);
  }
  return state;
}

function isSame(way: Way, step: Exclude<RecipeStep, { kind: 'switch' }>): boolean {
  if (step.kind === 'game') return way.kind === 'game' && way.from === step.row;
  const { origin, player, parts, conditions, actionName } = step.binding;
  return (
    way.from === (origin.kind === 'row' ? origin.row : origin.fallback) &&
    way.who === player &&
    way.action === actionName &&
    String(way.parts) === String(parts.map(({ id }) => id)) &&
    (way.kind === 'row' ||
      String(way.when.map(({ at }) => at.range.start.offset)) ===
        String(conditions.map(({ at }) => at.range.start.offset)))
  );
}
