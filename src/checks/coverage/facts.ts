import type { Mode, Scheme, Setting, Variation } from '../../language/model.js';
import type { RecipeStep } from '../coverage-model.js';
import { type Cones, createCones } from './cone.js';
import { maskOfOne } from './diagrams.js';
import type { Doing } from './doings.js';
import type { Trap } from './escapes.js';
import type { Exploration, Explorer } from './explorer.js';
import type { Graph } from './graph.js';
import type { Offer } from './offers.js';
import type { Projection } from './projection.js';
import { type Guard, guardOf } from './space.js';
import type { Route } from './walk.js';

/** What the exploration of one offer found out; the rules and verdicts need nothing else. */
export interface Facts {
  readonly offer: Offer;
  /** A shortest way to each reachable mode. */
  readonly recipes: ReadonlyMap<Mode, readonly RecipeStep[]>;
  /** For each variation offered to the seats row: a shortest way, null where there is none. */
  readonly variations: ReadonlyMap<Variation, readonly RecipeStep[] | null>;
  /** What can be done in some reachable state of a mode. */
  readonly usable: ReadonlyMap<Mode, ReadonlySet<Doing>>;
  /** The values that each setting can have in some reachable state. */
  readonly values: ReadonlyMap<Setting, ReadonlySet<string>>;
  /** Modes from some state of which no other mode can be reached, with such a state in words. */
  readonly stuck: ReadonlyMap<Mode, string>;
  /** Modes from some state of which neither the start mode nor a menu can be reached. */
  readonly stale: ReadonlyMap<Mode, string>;
}

interface Inquiry {
  readonly scheme: Scheme;
  readonly offer: Offer;
  readonly graph: Graph;
  readonly cones: Cones;
  readonly explorer: Explorer;
}

export function findFacts(scheme: Scheme, offer: Offer, graph: Graph, explorer: Explorer): Facts {
  const inquiry: Inquiry = { scheme, offer, graph, explorer, cones: createCones(graph) };
  const recipes = recipesOf(inquiry);
  return {
    offer,
    recipes,
    variations: variationsOf(inquiry),
    ...rowsAndValues(inquiry, recipes),
    ...trapsOf(inquiry),
  };
}

interface Look {
  readonly projection: Projection;
  readonly found: Exploration;
}

/** The graph with just those variables that matter to a question about the given ones. */
function look(inquiry: Inquiry, asked: Iterable<number>): Look {
  const { explorer, graph, cones } = inquiry;
  const projection = explorer.project(graph, cones.coneOf(asked));
  return { projection, found: explorer.explore(projection) };
}

function recipesOf(inquiry: Inquiry): ReadonlyMap<Mode, readonly RecipeStep[]> {
  const { projection, found } = look(inquiry, []);
  const recipes = new Map<Mode, readonly RecipeStep[]>();
  const masks = projection.levels.map(() => null);
  for (const [number, { mode }] of inquiry.graph.modes.entries()) {
    if (found.reached()[number] === 0) continue;
    const route = found.walk().routeTo({ modes: [number], masks });
    if (route !== null) recipes.set(mode, tell(route, projection));
  }
  return recipes;
}

const tell = (route: Route, projection: Projection): readonly RecipeStep[] =>
  route.flatMap(({ mode, edge }) => projection.modes[mode]?.[edge]?.edge.step ?? []);

function variationsOf(inquiry: Inquiry): Facts['variations'] {
  const { scheme, offer, graph } = inquiry;
  const offered = scheme.variations.filter(({ seats }) => seats.includes(offer.seats));
  const guards = new Map(offered.map(each => [each, guardOf(demandsOf(each), graph.space)]));
  const asked = [...guards.values()].flatMap(guard => [...(guard ?? new Map<number, unknown>()).keys()]);
  const { projection, found } = look(inquiry, asked);
  const modes = [...graph.modes.keys()].filter(number => graph.modes[number]?.mode.kind === 'play');
  const states = modes.reduce((all, mode) => found.diagrams.union(all, found.reached()[mode] ?? 0), 0);
  const recipes = new Map<Variation, readonly RecipeStep[] | null>();
  for (const [variation, guard] of guards) {
    const masks = projection.levels.map(level => guard?.get(level) ?? null);
    const isReached = guard !== null && found.diagrams.find(states, masks) !== null;
    const route = isReached ? found.walk().routeTo({ modes, masks }) : null;
    recipes.set(variation, route === null ? null : tell(route, projection));
  }
  return recipes;
}

const demandsOf = ({ values }: Variation) =>
  [...values].map(([setting, value]) => ({ setting, is: true, value }));

/** Whether a reachable state of a mode that is reachable lies in the guard. */
function isMet(guard: Guard, mode: number, { projection, found }: Look): boolean {
  const set = found.reached()[mode] ?? 0;
  if (set === found.diagrams.full || guard.size === 0) return true;
  const masks = projection.levels.map(level => guard.get(level) ?? null);
  return found.diagrams.find(set, masks) !== null;
}

function rowsAndValues(inquiry: Inquiry, recipes: Facts['recipes']): Pick<Facts, 'usable' | 'values'> {
  const { graph } = inquiry;
  const asked = new Set<number>();
  const reachable = [...graph.modes.entries()].filter(([, { mode }]) => recipes.has(mode));
  for (const [, { uses }] of reachable)
    for (const { guard } of uses) for (const variable of guard.keys()) asked.add(variable);
  const rows = look(inquiry, asked);
  const usable = new Map(
    reachable.map(([number, { mode, uses }]) => {
      const met = uses.filter(({ guard }) => isMet(guard, number, rows));
      const offered = inquiry.offer.modes.get(mode);
      // Most often all is usable: then the set is the one that others have too.
      const isAll = offered !== undefined && met.length === offered.doings.length;
      return [mode, isAll ? offered.allDoings : new Set(met.map(({ doing }) => doing))];
    }),
  );
  const values = new Map<Setting, ReadonlySet<string>>();
  const numbers = valueNumbers(inquiry, rows);
  for (const [setting, reading] of graph.space.readings) {
    const has =
      reading.kind === 'constant'
        ? [reading.value]
        : reading.values.filter((_, value) => numbers(reading.variable)[value] === true);
    values.set(setting, new Set(has));
  }
  return { usable, values };
}

/** For a variable, which of its value numbers some reachable state has. */
function valueNumbers(inquiry: Inquiry, rows: Look): (variable: number) => readonly boolean[] {
  const known = new Map<number, readonly boolean[]>();
  return variable => {
    const before = known.get(variable);
    if (before !== undefined) return before;
    const { projection, found } = rows.projection.levels.includes(variable)
      ? rows
      : look(inquiry, [variable]);
    const level = projection.levels.indexOf(variable);
    const all = found.reached().reduce(found.diagrams.union, 0);
    const size = inquiry.graph.space.variables[variable]?.size ?? 0;
    const has = Array.from(
      { length: size },
      (_, value) =>
        found.diagrams.find(
          all,
          projection.levels.map((__, at) => (at === level ? maskOfOne(size, value) : null)),
        ) !== null,
    );
    known.set(variable, has);
    return has;
  };
}

function trapsOf(inquiry: Inquiry): Pick<Facts, 'stuck' | 'stale'> {
  const { graph, scheme } = inquiry;
  const { projection, found } = look(inquiry, []);
  const isFresh = graph.modes.map(({ mode }) => mode === scheme.startMode || mode.kind === 'menu');
  const { stuck, stale } = found.escapes(isFresh);
  const offered = graph.modes.filter(({ isOffered }) => isOffered).length;
  const inWords = (traps: typeof stuck) =>
    new Map(
      graph.modes.flatMap(({ mode }, number) => {
        const trap = traps[number] ?? null;
        return trap === null ? [] : [[mode, trapInWords(trap, projection, graph)] as const];
      }),
    );
  return { stuck: offered > 1 ? inWords(stuck) : new Map(), stale: inWords(stale) };
}

/**
 * ` with “Chart” at 3 and “Fog” at low`; empty where no setting has to do with it. The position of a switch never
 * has, since it can be moved anywhere.
 */
function trapInWords(trap: Trap, { levels }: Projection, { space }: Graph): string {
  const parts = levels.flatMap((level, index) => {
    const variable = space.variables[level];
    const value = trap[index] ?? -1;
    if (variable?.kind !== 'setting' || value === -1) return [];
    return `“${variable.setting.name}” at ${variable.setting.values[value]}`;
  });
  if (parts.length === 0) return '';
  return ` with ${new Intl.ListFormat('en').format(parts)}`;
}
