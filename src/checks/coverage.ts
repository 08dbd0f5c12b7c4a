import type { Report } from '../findings/report.js';
import type { Scheme } from '../language/model.js';
import { createMemory } from '../memory.js';
import { cellsOf, createLedger, variationCellsOf } from './coverage/cells.js';
import { createExplorer } from './coverage/explorer.js';
import { type Facts, findFacts } from './coverage/facts.js';
import { createGraphMaker } from './coverage/graph.js';
import { type Hold, reportHolds } from './coverage/holds.js';
import { type IsUsable, offersOf } from './coverage/offers.js';
import { lossHolds } from './coverage/rules/losses.js';
import { fallbackHolds } from './coverage/rules/no-fallback.js';
import { reachHolds } from './coverage/rules/reach.js';
import { rowHolds } from './coverage/rules/rows.js';
import { seatHolds } from './coverage/rules/seats.js';
import { type Situation, situationsOf } from './coverage/situations.js';
import type { Survey } from './coverage/survey.js';
import type { Coverage } from './coverage-model.js';

/** Names of the consoles, seats rows and standards that are asked about; all where a list is left out. */
export interface CoverageFocus {
  readonly consoles?: readonly string[];
  readonly seats?: readonly string[];
  readonly standards?: readonly string[];
}

/**
 * Does the game still play there? Explores the state graph of every console, seats row and standard, reports
 * what is wrong, and gives each cell its verdict and recipe.
 *
 * A focus narrows cells and findings, not what they are compared with: an action is lost on a console if it is
 * there on any console of the scheme, asked about or not.
 *
 * @param isUsable false for a binding that never fires (from the conflicts check). Bindings whose gesture does not
 *   fit their control or can never fire are left out in any case.
 * @throws TooManyStatesError where the settings depend on each other in too many ways
 */
export function checkCoverage(
  scheme: Scheme,
  report: Report,
  focus: CoverageFocus = {},
  isUsable: IsUsable | null = null,
): Coverage {
  const { holds, cells, variations } = remembered(groundsOf(scheme, isUsable), () =>
    coverAll(scheme, isUsable),
  );
  const isAsked = createFilter(focus);
  reportHolds(holds, scheme, isAsked, report);
  return { cells: cells.filter(isAsked), variations: variations.filter(isAsked) };
}

/** What is found out of all situations: anew only where something that it depends on is not what it was. */
interface WholeCoverage extends Coverage {
  readonly holds: readonly Hold[];
}

const remembered = createMemory<WholeCoverage>(1);

const groundsOf = (scheme: Scheme, isUsable: IsUsable | null): readonly unknown[] => [
  ...scheme.modes.map(({ rows }) => rows),
  scheme.modes,
  scheme.settings,
  scheme.fallbacks,
  scheme.variations,
  scheme.seats,
  scheme.consoles,
  scheme.standards,
  scheme.startMode,
  scheme.game.readEvery.value,
  needsOf(scheme),
  isUsable,
];

const needsOf = ({ actions }: Scheme): string => actions.map(({ need }) => need).join();

function coverAll(scheme: Scheme, isUsable: IsUsable | null): WholeCoverage {
  const survey: Survey = { scheme, facts: exploreAll(scheme, isUsable), needs: needsOf(scheme) };
  const holds = RULE_CHECKS.flatMap(check => check(survey));
  const ledger = createLedger(survey.facts, holds);
  const situations = situationsOf(scheme);
  return {
    holds,
    cells: situations.flatMap(situation => cellsOf(situation, scheme, ledger)),
    variations: situations.flatMap(situation => variationCellsOf(situation, scheme, ledger)),
  };
}

/** In this order reasons stand in a cell. */
const RULE_CHECKS: readonly ((survey: Survey) => readonly Hold[])[] = [
  reachHolds,
  fallbackHolds,
  lossHolds,
  rowHolds,
  seatHolds,
];

function exploreAll(scheme: Scheme, isUsable: IsUsable | null): readonly Facts[] {
  const explorer = createExplorer();
  const createGraph = createGraphMaker(scheme);
  return offersOf(scheme, isUsable).map(offer => findFacts(scheme, offer, createGraph(offer), explorer));
}

function createFilter({ consoles, seats, standards }: CoverageFocus): (situation: Situation) => boolean {
  return situation =>
    (consoles?.includes(situation.console.name) ?? true) &&
    (seats?.includes(situation.seats.name) ?? true) &&
    (standards?.includes(situation.standard.name) ?? true);
}
