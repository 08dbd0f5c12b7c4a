import { isPositional } from '../../gestures/automaton.js';
import { type Binding, bindingsOf, isInForce } from '../../gestures/bindings.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import { SWITCH_NAMES } from '../../hardware/switches.js';
import type { Action, Fallback, Mode, Scheme, SeatsRow } from '../../language/model.js';
import { createMemory } from '../../memory.js';
import { type Doing, doingsOf } from './doings.js';
import { fitsFixedSwitch, isPossible, isTooQuick } from './possible.js';
import { alikeConsoles, type Situation } from './situations.js';

/** What can be done in some situations that do not differ in it. */
export interface Offer {
  readonly situations: readonly Situation[];
  /** Stands for all its consoles: they have and lack the same switches. */
  readonly console: ConsoleProfile;
  readonly seats: SeatsRow;
  readonly modes: ReadonlyMap<Mode, OfferedMode>;
}

/** The same object for all consoles and standards on which the mode offers the same. */
export interface OfferedMode {
  /** All bindings, whether they can be done or not. */
  readonly bindings: readonly Binding[];
  /** Those that can be done in some state. */
  readonly possible: readonly Binding[];
  /** What those and the `game` rows do. */
  readonly doings: readonly Doing[];
  /** The same. */
  readonly allDoings: ReadonlySet<Doing>;
  /** The actions that some player has, each with its first binding. */
  readonly actions: ReadonlyMap<Action, Binding>;
}

/** Whether a binding fires at all in a situation: what the conflicts check found out. */
export type IsUsable = (binding: Binding, situation: Situation) => boolean;

/** Every situation of the scheme, those that can't differ put together; modes only where they list the seats. */
export function offersOf(scheme: Scheme, isUsable: IsUsable | null): readonly Offer[] {
  const createMode = createModeMaker(scheme, isUsable);
  return alikeConsoles(scheme).flatMap(consoles =>
    scheme.seats.flatMap(seats => offersAt(scheme, consoles, seats, createMode)),
  );
}

function offersAt(
  scheme: Scheme,
  consoles: readonly ConsoleProfile[],
  seats: SeatsRow,
  createMode: (mode: Mode, situation: Situation) => OfferedMode,
): readonly Offer[] {
  const [profile] = consoles;
  if (profile === undefined) return [];
  const offered = scheme.modes.filter(mode => mode.seats.includes(seats));
  const offers: (Offer & { readonly situations: Situation[] })[] = [];
  for (const standard of scheme.standards) {
    const modes = new Map(
      offered.map(mode => [mode, createMode(mode, { console: profile, seats, standard })]),
    );
    const situations = consoles.map(each => ({ console: each, seats, standard }));
    const alike = offers.find(offer => offered.every(mode => offer.modes.get(mode) === modes.get(mode)));
    if (alike === undefined) offers.push({ situations, console: profile, seats, modes });
    else alike.situations.push(...situations);
  }
  return offers;
}

/** A mode's bindings in one seats row, on consoles that lack the same momentary switches and fall back alike. */
interface Draft {
  readonly bindings: readonly Binding[];
  /** Those that can be done where no switch is fixed and no time is too short. */
  readonly possible: readonly Binding[];
  /** Whether a fixed switch, or a TV standard, can make a difference. */
  readonly hasPositions: boolean;
  readonly hasTaps: boolean;
  /** By the numbers of the bindings that are left out. */
  readonly finished: Map<string, OfferedMode>;
  /** By what else of a situation can make a difference. */
  readonly asked: Map<string, OfferedMode>;
}

function createDraft(bindings: readonly Binding[]): Draft {
  return {
    bindings,
    possible: bindings.filter(isPossible),
    hasPositions: bindings.some(({ gesture }) => isPositional(gesture.kind)),
    hasTaps: bindings.some(({ gesture }) => gesture.kind === 'tap' || gesture.kind === 'double tap'),
    finished: new Map(),
    asked: new Map(),
  };
}

function createModeMaker(
  scheme: Scheme,
  isUsable: IsUsable | null,
): (mode: Mode, situation: Situation) => OfferedMode {
  const signatures = new Map<ConsoleProfile, Signature>();
  const fallbacks = new Map(
    scheme.modes.map(mode => [mode, scheme.fallbacks.filter(row => isFor(row, mode))]),
  );
  /** What a binding has to be asked in a situation; null where nothing. */
  const isThere = (draft: Draft, situation: Situation, { fixed }: Signature) => {
    const { console, standard } = situation;
    const asksPosition = fixed !== '' && draft.hasPositions;
    if (!asksPosition && !draft.hasTaps && isUsable === null) return null;
    return (binding: Binding): boolean =>
      (!asksPosition || fitsFixedSwitch(binding, console)) &&
      (!draft.hasTaps || !isTooQuick(binding.gesture, standard, scheme.game.readEvery.value)) &&
      (isUsable === null || isUsable(binding, situation));
  };
  return (mode, situation) => {
    const { console, seats } = situation;
    const signature = signatures.get(console) ?? signatureOf(console);
    signatures.set(console, signature);
    const inForce = fallbacks.get(mode)?.filter(row => isInForce(row, console)) ?? [];
    const draft = remembered([mode.rows, mode, seats, signature.absent, ...inForce], () =>
      createDraft(bindingsOf(scheme, mode, seats, console)),
    );
    const ask = () => finish(draft, mode, isThere(draft, situation, signature));
    if (isUsable !== null) return ask();
    const key = `${signature.fixed} ${situation.standard.name} ${scheme.game.readEvery.value}`;
    const finished = draft.asked.get(key) ?? ask();
    draft.asked.set(key, finished);
    return finished;
  };
}

const remembered = createMemory<Draft>();

const isFor = ({ instead }: Fallback, mode: Mode): boolean =>
  instead.kind === 'binding' && instead.mode === mode;

interface Signature {
  readonly absent: string;
  /** Switches and their positions; empty where none is fixed. */
  readonly fixed: string;
}

function signatureOf({ switches }: ConsoleProfile): Signature {
  return {
    absent: SWITCH_NAMES.filter(name => switches[name].kind === 'absent').join('+'),
    fixed: SWITCH_NAMES.flatMap(name => {
      const state = switches[name];
      return state.kind === 'fixed' ? `${name} ${state.position}` : [];
    }).join('+'),
  };
}

/** The mode as it is where only some of the draft's possible bindings are there. */
function finish(draft: Draft, mode: Mode, isThere: ((binding: Binding) => boolean) | null): OfferedMode {
  const left: number[] = [];
  if (isThere !== null)
    for (const [number, binding] of draft.possible.entries()) if (!isThere(binding)) left.push(number);
  const key = left.join();
  const known = draft.finished.get(key);
  if (known !== undefined) return known;
  const out = new Set(left);
  const possible = draft.possible.filter((_, number) => !out.has(number));
  const actions = new Map<Action, Binding>();
  for (const binding of possible)
    if (binding.action !== null && !actions.has(binding.action)) actions.set(binding.action, binding);
  const doings = doingsOf(mode, possible);
  const { bindings } = draft;
  const finished = { bindings, possible, doings, allDoings: new Set(doings), actions };
  draft.finished.set(key, finished);
  return finished;
}
