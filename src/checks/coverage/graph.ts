import type { ConsoleProfile } from '../../hardware/consoles.js';
import { type Position, SWITCHES, type TwoPositionSwitchName } from '../../hardware/switches.js';
import type { BindingRow, Mode, Scheme } from '../../language/model.js';
import { createMemory } from '../../memory.js';
import type { RecipeStep } from '../coverage-model.js';
import type { Doing } from './doings.js';
import { type Change, type Changes, createStep, createSwitchChange, type Step } from './moves.js';
import type { Offer } from './offers.js';
import { createSpace, type Guard, type Space } from './space.js';

/** The state graph of an offer, its states written as (mode, value of each variable of the space). */
export interface Graph {
  readonly space: Space;
  /** By mode number. */
  readonly modes: readonly GraphMode[];
  /** Its number. Whoever sits down begins in it: it lists every seats row (language/read.ts). */
  readonly startMode: number;
}

export interface GraphMode {
  readonly mode: Mode;
  /** False where the mode does not list the seats row: then it has no edges and no uses. */
  readonly isOffered: boolean;
  /** Each different step once, in the order of the rows. */
  readonly edges: readonly Edge[];
  readonly uses: readonly Use[];
}

/** One way to step from a mode. */
export interface Edge {
  readonly change: Change;
  /** Mode number. */
  readonly to: number;
  /** How a recipe tells it: the first row of the mode that makes this step. */
  readonly step: RecipeStep;
}

/** Something that can be done, and where. */
export interface Use {
  readonly doing: Doing;
  readonly guard: Guard;
}

/** What the graphs of all seats rows on one console share. */
interface Workshop {
  readonly space: Space;
  readonly changes: Changes;
  /** By switch: one move to each of its positions. */
  readonly switches: readonly {
    readonly name: TwoPositionSwitchName;
    readonly position: Position;
    readonly change: Change;
  }[];
  /** By row, then by the switch that is worked ('' where none is). */
  readonly steps: WeakMap<BindingRow, Map<string, Step | null>>;
}

/** Makes graphs; what does not depend on the seats row is worked out once for each console. */
export function createGraphMaker(scheme: Scheme): (offer: Offer) => Graph {
  const numbers = new Map(scheme.modes.map((mode, index) => [mode, index]));
  return offer => {
    const workshop = workshops([scheme.settings, offer.console, scheme.fallbacks], () =>
      createWorkshop(scheme, offer.console),
    );
    const modes = scheme.modes.map(mode =>
      graphModes([offer.modes.get(mode), mode, scheme.modes, workshop, offer.seats], () =>
        createGraphMode(mode, offer, numbers, workshop),
      ),
    );
    return { space: workshop.space, modes, startMode: numbers.get(scheme.startMode) ?? 0 };
  };
}

const workshops = createMemory<Workshop>();
const graphModes = createMemory<GraphMode>();

function createWorkshop(scheme: Scheme, profile: ConsoleProfile): Workshop {
  const space = createSpace(scheme, profile);
  const changes: Changes = new Map();
  const switches = [...space.switches.keys()].flatMap(name =>
    SWITCHES[name].positions.map(({ name: position }) => ({
      name,
      position,
      change: createSwitchChange(name, position, space, changes),
    })),
  );
  return { space, changes, switches, steps: new WeakMap() };
}

function createGraphMode(
  mode: Mode,
  offer: Offer,
  numbers: ReadonlyMap<Mode, number>,
  workshop: Workshop,
): GraphMode {
  const offered = offer.modes.get(mode);
  if (offered === undefined) return { mode, isOffered: false, edges: [], uses: [] };
  const uses: Use[] = [];
  const edges = new Map<number, Edge>();
  const add = (change: Change, target: Mode, step: RecipeStep): void => {
    const to = numbers.get(target);
    if (to === undefined || !target.seats.includes(offer.seats)) return;
    if (target === mode && change.touches.size === 0) return;
    const key = change.id * numbers.size + to;
    if (!edges.has(key)) edges.set(key, { change, to, step });
  };
  for (const doing of offered.doings) {
    const step = stepOf(doing, workshop);
    if (step === null) continue;
    uses.push({ doing, guard: step.guard });
    add(step.change, step.to ?? mode, doing.step);
  }
  for (const { name, position, change } of workshop.switches)
    add(change, mode, { kind: 'switch', mode, name, position });
  return { mode, isOffered: true, edges: [...edges.values()], uses };
}

function stepOf(doing: Doing, { space, steps, changes }: Workshop): Step | null {
  const { row, fallback, worked } = doing;
  if (row === null || fallback !== null) return createStep(doing, space, changes);
  const ofRow = steps.get(row) ?? new Map<string, Step | null>();
  steps.set(row, ofRow);
  const known = ofRow.get(worked?.id ?? '');
  if (known !== undefined) return known;
  const step = createStep(doing, space, changes);
  ofRow.set(worked?.id ?? '', step);
  return step;
}
