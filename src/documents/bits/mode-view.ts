import { listText } from '../../checks/text.js';
import { type Binding, bindingsOf } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { Action, BindingRow, Mode, Scheme, SeatsRow } from '../../language/model.js';
import { createMemory } from '../../memory.js';
import { instructionText, testOfBinding } from './tests-of-bindings.js';
import { type WireCells, wireCells } from './wire-cells.js';
import { conditionsText, effectsText, gestureReads, gestureText } from './words.js';

/** The bindings of a mode in one seats row (or several in which it is read alike), as the programmer reads them. */
export interface ModeTable {
  readonly mode: Mode;
  readonly seats: readonly SeatsRow[];
  readonly actions: readonly ActionLines[];
  /** What the game does by itself. */
  readonly byItself: readonly { readonly action: string; readonly notes: readonly string[] }[];
  readonly cautions: readonly string[];
  /** Why the tests branch as they do, each with the registers it is said of. */
  readonly polarity: readonly string[];
  /** Bytes and worst cycles of the tests of the table, each different test once. */
  readonly cost: { readonly tests: number; readonly cycles: number; readonly bytes: number };
  /** The same of the whole generated routine for this mode, where there is one. */
  readonly routine: { readonly cycles: number; readonly bytes: number } | null;
}

/** One row of the scheme (or a fallback binding) and each way to do it. */
export interface ActionLines {
  readonly action: string;
  /** When, Then, Instead of, Along with, and what it stands in for. */
  readonly notes: readonly string[];
  readonly lines: readonly BindingLine[];
}

export interface BindingLine {
  readonly player: string;
  /** Consoles on which it can't be done. */
  readonly notes: readonly string[];
  /** One for each control of a chord. */
  readonly wires: readonly WireCells[];
  readonly gesture: string;
  /** By standard; empty for a gesture without a time. */
  readonly reads: readonly string[];
  readonly test: TestCells;
}

export interface TestCells {
  readonly code: readonly string[];
  readonly bytes: number;
  readonly engagedCycles: number;
  readonly idleCycles: { readonly least: number; readonly most: number };
}

/** A binding and the consoles of the scheme on which it is there. */
export interface PlacedBinding {
  readonly binding: Binding;
  readonly consoles: readonly ConsoleProfile[];
}

/** Every part of the appendix asks. */
const remembered = createMemory<readonly PlacedBinding[]>();

/** The bindings of a mode in a seats row on all consoles of the scheme together, each once, in their order. */
export function bindingsOnAllConsoles(scheme: Scheme, mode: Mode, seats: SeatsRow): readonly PlacedBinding[] {
  const { fallbacks, consoles } = scheme;
  return remembered([mode.rows, mode, seats, fallbacks, consoles], () => findBindings(scheme, mode, seats));
}

function findBindings(scheme: Scheme, mode: Mode, seats: SeatsRow): readonly PlacedBinding[] {
  const found = new Map<string, { binding: Binding; consoles: ConsoleProfile[] }>();
  for (const profile of scheme.consoles) {
    for (const binding of bindingsOf(scheme, mode, seats, profile)) {
      const key = keyOf(binding);
      const before = found.get(key);
      if (before === undefined) found.set(key, { binding, consoles: [profile] });
      else before.consoles.push(profile);
    }
  }
  return [...found.values()].sort((a, b) => a.binding.order - b.binding.order);
}

function keyOf({ order, origin, actionName, alternative, player, parts }: Binding): string {
  const from = origin.kind === 'row' ? '' : `${origin.fallback.at.range.start.offset}`;
  return JSON.stringify([order, from, actionName, alternative, player, parts.map(({ id }) => id)]);
}

/** @param routine worst cycles a read and bytes of the generated routine, where there is one */
export function viewMode(
  scheme: Scheme,
  mode: Mode,
  seats: SeatsRow,
  routine?: { readonly cycles: number; readonly bytes: number },
): ModeTable {
  const placed = bindingsOnAllConsoles(scheme, mode, seats);
  const groups = new Map<string, PlacedBinding[]>();
  for (const each of placed) {
    const { order, actionName } = each.binding;
    const key = `${order} ${actionName}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return {
    mode,
    seats: [seats],
    actions: [...groups.values()].map(group => viewAction(group, scheme)),
    byItself: mode.rows.filter(row => row.who.value.kind === 'game').map(viewGameRow),
    cautions: cautionsOf(placed.map(({ binding }) => binding)),
    polarity: polarityOf(placed.map(({ binding }) => binding)),
    cost: costOf(placed.map(({ binding }) => binding)),
    routine: routine ?? null,
  };
}

function viewAction(group: readonly PlacedBinding[], scheme: Scheme): ActionLines {
  const [first] = group;
  if (first === undefined) throw new RangeError('An action without bindings');
  const { binding } = first;
  return {
    action: binding.actionName,
    notes: [
      ...linkNotes(binding.conditions, binding.effects, binding.insteadOf, binding.alongWith),
      ...fallbackNotes(binding),
    ],
    lines: group.map(each => viewLine(each, scheme)),
  };
}

function viewLine({ binding, consoles }: PlacedBinding, scheme: Scheme): BindingLine {
  const { instructions, bytes, engagedCycles, idleCycles } = testOfBinding(binding);
  return {
    player: binding.player,
    notes: [...consoleNotes(consoles, scheme), ...fixedNotes(binding, scheme)],
    wires: binding.parts.map(part => wireCells(part, binding.gesture)),
    gesture: gestureText(binding.gesture),
    reads: gestureReads(binding.gesture, scheme),
    test: { code: instructions.map(instructionText), bytes, engagedCycles, idleCycles },
  };
}

function viewGameRow(row: BindingRow) {
  return { action: row.action.name, notes: linkNotes(row.conditions, row.effects, [], []) };
}

function linkNotes(
  conditions: BindingRow['conditions'],
  effects: BindingRow['effects'],
  insteadOf: readonly Action[],
  alongWith: readonly Action[],
): readonly string[] {
  const named = (actions: readonly Action[]) => listText(actions.map(({ name }) => name));
  return [
    ...(conditions.length === 0 ? [] : [`When ${conditionsText(conditions)}`]),
    ...(effects.length === 0 ? [] : [`Then ${effectsText(effects)}`]),
    ...(insteadOf.length === 0 ? [] : [`Holds back ${named(insteadOf)}`]),
    ...(alongWith.length === 0 ? [] : [`Along with ${named(alongWith)}`]),
  ];
}

function fallbackNotes({ origin }: Binding): readonly string[] {
  return origin.kind === 'fallback' ? [`In place of ${origin.fallback.without}`] : [];
}

function consoleNotes(consoles: readonly ConsoleProfile[], scheme: Scheme): readonly string[] {
  if (consoles.length === scheme.consoles.length) return [];
  return [`Only on ${listText(consoles.map(({ name }) => name))}`];
}

/** Consoles on which the binding is there but its switch can't be moved to do it. */
function fixedNotes({ parts, gesture }: Binding, { consoles }: Scheme): readonly string[] {
  const stuck = consoles.filter(({ switches }) =>
    parts.some(part => {
      if (part.kind !== 'switch') return false;
      const state = switches[part.name];
      if (state.kind !== 'fixed') return false;
      return !(gesture.kind === 'at' && gesture.position === state.position);
    }),
  );
  return stuck.length === 0 ? [] : [`Not on ${listText(stuck.map(({ name }) => name))}: fixed there`];
}

function cautionsOf(bindings: readonly Binding[]): readonly string[] {
  const heldKeys = bindings.filter(({ gesture, parts }) => gesture.kind === 'held' && parts.some(isKey));
  if (heldKeys.length === 0) return [];
  const names = [...new Set(heldKeys.map(({ actionName }) => actionName))];
  return [
    `Ghost keys: ${listText(names)} ${names.length === 1 ? 'is' : 'are'} done with a key kept down. With two more keys down on corners of the same rectangle of rows and columns, the fourth corner reads as pressed too.`,
  ];
}

const isKey = (contact: Contact): boolean =>
  contact.kind === 'control' && contact.control.wiring.kind === 'matrix';

function polarityOf(bindings: readonly Binding[]): readonly string[] {
  const registers = new Map<string, Set<string>>();
  for (const binding of bindings) {
    for (const { why, register } of testOfBinding(binding).reasons) {
      registers.set(why, (registers.get(why) ?? new Set()).add(register));
    }
  }
  return [...registers].map(([why, names]) => `${why} (${[...names].join(', ')}).`);
}

function costOf(bindings: readonly Binding[]) {
  const tests = new Map(
    bindings.map(binding => {
      const test = testOfBinding(binding);
      return [JSON.stringify([rowOf(binding), ...test.instructions.map(instructionText)]), test] as const;
    }),
  );
  const all = [...tests.values()];
  return {
    tests: all.length,
    cycles: all.reduce((sum, test) => sum + Math.max(test.engagedCycles, test.idleCycles.most), 0),
    bytes: all.reduce((sum, test) => sum + test.bytes, 0),
  };
}

/** The row in which a single key is read: each row of a keypad has its own turn. */
function rowOf({ parts }: Binding): number | null {
  const [only] = parts;
  if (only === undefined || parts.length > 1 || only.kind === 'switch') return null;
  const { wiring } = only.control;
  return wiring.kind === 'matrix' ? wiring.row : null;
}
