import type { Contact } from '../gestures/contacts.js';
import { wireOf } from '../hardware/wiring.js';
import type { Mode, Scheme } from '../language/model.js';
import { layOutClass } from './layout.js';
import type { Handoff, UnnamedHandoff } from './model.js';
import { createNames, type Names } from './names.js';
import { outputsOf } from './outputs.js';
import { layOutRam } from './ram.js';
import { keysOf, uniqueContacts } from './routine/banks.js';
import { type Plan, planUnit } from './routine/plan.js';
import { generateUnit } from './routine/routine.js';
import { symbolGroups } from './symbols.js';
import { createTimes } from './times.js';
import { consoleClasses, type Unit, unitsOf } from './units.js';

export function createHandoff(scheme: Scheme): Handoff {
  const names = createNames(scheme);
  const classes = consoleClasses(scheme);
  const units = unitsOf(scheme, classes);
  const plans = units.map(unit =>
    planUnit(scheme, unit, keysKept(scheme, units, unit), latchedKept(scheme, units, unit)),
  );
  const outputs = new Map(
    scheme.modes.map(mode => [mode, outputsOf(scheme, mode, plansOf(plans, mode), names.claim)]),
  );
  const times = createTimes(scheme, names, units);
  const routines = plans.map(plan => generateUnit({ scheme, names, times, outputs, plan }));
  const ram = layOutRam(firedSymbols(names, outputs), routines);
  const unnamed: UnnamedHandoff = { scheme, names, classes, times, outputs, routines, ram };
  const costs = classes.map(consoles => ({ consoles, units: layOutClass(unnamed, consoles) }));
  return { ...unnamed, costs, symbols: symbolGroups(unnamed) };
}

/** `LH__FIRED0` and on: as many as the mode with the most outputs needs. */
function firedSymbols({ prefix }: Names, outputs: Handoff['outputs']): readonly string[] {
  const bytes = [...outputs.values()].flatMap(own => [...own.values()].map(({ byte }) => byte + 1));
  return Array.from({ length: Math.max(0, ...bytes) }, (_, byte) => `${prefix}FIRED${byte}`);
}

/** Keys that any mode of the seats row uses: all its modes scan them, so that each knows what was engaged before. */
function keysKept(scheme: Scheme, units: readonly Unit[], { seats, consoles }: Unit): readonly Contact[] {
  const own = units.filter(unit => unit.seats === seats && unit.consoles === consoles);
  return scheme.seats.includes(seats) ? keysOf(own.flatMap(({ bindings }) => bindings)) : [];
}

/**
 * With a latch, every line on an INPT register that any mode of the seats row uses: what was read of them is kept
 * from mode to mode, in the same bits.
 */
function latchedKept(scheme: Scheme, units: readonly Unit[], { seats, consoles }: Unit): readonly Contact[] {
  if (scheme.game.latch.value === 'off') return [];
  const own = units.filter(unit => unit.seats === seats && unit.consoles === consoles);
  const contacts = own.flatMap(({ bindings }) => bindings.flatMap(({ parts }) => parts));
  return uniqueContacts(contacts).filter(contact => {
    const wire = wireOf(contact);
    return wire.kind === 'line' && wire.bit.register.startsWith('INPT');
  });
}

/** Where each binding that one bit decides would have its bit. */
function plansOf(plans: readonly Plan[], mode: Mode) {
  return plans
    .filter(({ unit }) => unit.mode === mode)
    .map(({ unit, fires }) => {
      const wishes = new Map(
        fires.map(({ binding, signal: { bank, kind, mask } }) => [
          binding,
          { group: `${bank} ${kind}`, bit: Math.log2(mask) },
        ]),
      );
      return { unit, wishOf: (binding: Unit['bindings'][number]) => wishes.get(binding) ?? null };
    });
}
