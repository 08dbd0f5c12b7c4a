import type { Binding } from '../../gestures/bindings.js';
import { type Contact, contactType } from '../../gestures/contacts.js';
import { positionLevel, positionOf } from '../../gestures/fit.js';
import { holdBacksOf } from '../../gestures/hold-backs.js';
import { wireOf } from '../../hardware/wiring.js';
import type { Scheme } from '../../language/model.js';
import type { Unit } from '../units.js';
import { type BankMap, createBanks, type Spot, uniqueContacts } from './banks.js';
import { createDraft, type Draft, isPositional } from './draft.js';
import { createGuards, type Guarded } from './guards.js';
import type { Channel, Happening, HoldBackPlan, Signal } from './parts.js';

/** A binding that fires by one bit. */
export interface Fire {
  readonly binding: Binding;
  readonly signal: Signal;
  readonly guard: Guarded;
}

/** A binding that fires by counting reads. */
export interface Counted {
  readonly binding: Binding;
  readonly guard: Guarded;
}

/** A counter and all that is decided by it, on one bit. */
export interface Machine {
  readonly kind: 'run' | 'double tap' | 'repeat';
  readonly bank: string;
  readonly mask: number;
  readonly entries: readonly Counted[];
  /** Reads until it ends, for double tap and repeat: the same for all entries. */
  readonly timeText: string;
}

export interface Plan {
  readonly unit: Unit;
  readonly map: BankMap;
  readonly channels: readonly Channel[];
  readonly happenings: readonly Happening[];
  readonly holdBacks: readonly HoldBackPlan[];
  readonly fires: readonly Fire[];
  readonly machines: readonly Machine[];
  /** By bank of lines: the lines that must be let go first after a mode is entered. */
  readonly waiting: ReadonlyMap<string, number>;
  /** Switches whose settings a `When` asks for; their positions are kept from read to read. */
  readonly askedSwitches: number;
}

/** @param contacts lines to read besides those of the bindings: what other modes need kept */
export function planUnit(
  scheme: Scheme,
  unit: Unit,
  keys: readonly Contact[],
  contacts: readonly Contact[],
): Plan {
  const bindings = unit.bindings.filter(isFeasible);
  const guards = createGuards(scheme, unit.consoles.profile);
  const used = [...bindings.flatMap(({ parts }) => parts), ...contacts, ...guards.switchesOf(bindings)];
  const map = createBanks(used, keys, scheme.game.latch.value === 'off' ? directLines(bindings) : []);
  const holdBacks = planHoldBacks(bindings, map, guards.of);
  const draft = createDraft(map, holdBacks.heldBy);
  const live = bindings.filter(binding => guards.of(binding.conditions).kind !== 'never');
  for (const binding of live) draft.visit(binding);
  for (const { holder } of holdBacks.plans) draft.visitHolder(holder);
  const waiting = waitingLines(live, draft, map);
  return {
    unit,
    map,
    channels: draft.channels,
    happenings: draft.happenings,
    holdBacks: holdBacks.plans.map(plan => ({ ...plan, begins: draft.beginsOf(plan.holder) })),
    fires: live.flatMap(binding => {
      const signal = draft.signalOf(binding);
      return signal === null ? [] : [{ binding, signal, guard: guards.of(binding.conditions) }];
    }),
    machines: planMachines(live, draft, guards.of),
    waiting,
    askedSwitches: guards.switchMask(bindings),
  };
}

/** A binding whose gesture can be made on its control at all; the checks report the others. */
function isFeasible({ gesture, parts }: Binding): boolean {
  const [part] = parts;
  if (part === undefined) return false;
  if (gesture.kind === 'turn') return parts.length === 1 && contactType(part) === 'turning';
  if (gesture.kind === 'flip') return parts.length === 1 && contactType(part) === 'two-position';
  if (gesture.kind === 'at' || gesture.kind === 'flip to')
    return parts.length === 1 && positionLevel(part, positionOf(gesture)) !== null;
  return parts.every(each => contactType(each) === 'momentary');
}

/** Lines on INPT registers that only one counter looks at: they need no byte of their own. */
function directLines(bindings: readonly Binding[]): readonly Contact[] {
  const held = new Set(holdBacksOf(bindings).flatMap(({ holder, held: target }) => [holder, target]));
  const contacts = uniqueContacts(bindings.flatMap(({ parts }) => parts));
  return contacts.filter(contact => {
    const wire = wireOf(contact);
    if (wire.kind !== 'line' || !wire.bit.register.startsWith('INPT')) return false;
    return bindings.every(({ parts, gesture }, index) => {
      if (parts.every(({ id }) => id !== contact.id)) return true;
      const isRun = gesture.kind === 'hold' || gesture.kind === 'tap';
      return isRun && parts.length === 1 && !held.has(index);
    });
  });
}

type GuardOf = (conditions: Binding['conditions']) => Guarded;

function planHoldBacks(bindings: readonly Binding[], map: BankMap, guardOf: GuardOf) {
  const plans: Omit<HoldBackPlan, 'begins'>[] = [];
  const heldBy = new Map<Binding, number[]>();
  const known = new Map<string, number>();
  for (const { holder, held, until } of holdBacksOf(bindings)) {
    const holding = bindings[holder];
    const target = bindings[held];
    if (holding === undefined || target === undefined) continue;
    const guard = guardOf(holding.conditions);
    if (guard.kind === 'never') continue;
    const key = `${holder}|${[...until].sort().join('|')}`;
    let number = known.get(key);
    if (number === undefined) {
      number = plans.length;
      known.set(key, number);
      plans.push({ holder: holding, guard, until: untilSpots(target, until, map) });
    }
    heldBy.set(target, [...new Set([...(heldBy.get(target) ?? []), number])]);
  }
  return { plans, heldBy: (binding: Binding) => heldBy.get(binding) ?? [] };
}

/** Only what can be let go keeps a hold-back going. */
function untilSpots(held: Binding, until: readonly string[], map: BankMap): readonly Spot[] {
  return held.parts
    .filter(part => until.includes(part.id) && contactType(part) === 'momentary')
    .map(map.spotOf);
}

/**
 * The lines whose release must be waited for with a bit of their own. A press, a counter and a double tap on one
 * line do without: what was engaged before is no edge, and a counter can begin at its end.
 */
function waitingLines(live: readonly Binding[], draft: Draft, map: BankMap): ReadonlyMap<string, number> {
  const waiting = new Map<string, number>();
  for (const binding of live) {
    if (isPositional(binding) || binding.gesture.kind === 'held') continue;
    const { kind } = binding.gesture;
    if (draft.isDirect(binding) && kind !== 'release' && kind !== 'repeat') continue;
    for (const { bank, mask } of binding.parts.map(map.spotOf))
      waiting.set(bank, (waiting.get(bank) ?? 0) | mask);
  }
  // A bank that waits for one line waits for all that count by the rule: one way of counting in a bank.
  for (const binding of live) {
    if (isPositional(binding) || binding.gesture.kind === 'held') continue;
    for (const { bank, mask } of binding.parts.map(map.spotOf)) {
      const known = waiting.get(bank);
      if (known !== undefined) waiting.set(bank, known | mask);
    }
  }
  return waiting;
}

function planMachines(live: readonly Binding[], draft: Draft, guardOf: GuardOf): readonly Machine[] {
  const machines = new Map<string, Machine>();
  for (const binding of live) {
    const { gesture } = binding;
    if (!('time' in gesture)) continue;
    const isRun = gesture.kind === 'hold' || gesture.kind === 'tap';
    const kind = isRun ? 'run' : gesture.kind === 'repeat' ? 'repeat' : 'double tap';
    const { numerator, denominator } = gesture.time.amount;
    const timeText = isRun ? '' : `${gesture.time.unit} ${numerator}/${denominator}`;
    const spot = draft.levelOf(binding);
    const key = `${kind}|${timeText}|${spot.bank}|${spot.mask}`;
    const entry = { binding, guard: guardOf(binding.conditions) };
    const known = machines.get(key);
    const entries = [...(known?.entries ?? []), entry];
    machines.set(key, { kind, ...spot, entries, timeText });
  }
  return [...machines.values()];
}
