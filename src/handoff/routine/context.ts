import type { Binding } from '../../gestures/bindings.js';
import type { RegisterSymbol } from '../../hardware/registers.js';
import { REGISTERS } from '../../hardware/registers.js';
import type { Scheme, Setting } from '../../language/model.js';
import type { Names } from '../names.js';
import type { Output } from '../outputs.js';
import type { Reads } from '../times.js';
import { type Bank, hasPots, type Spot } from './banks.js';
import type { Cells } from './cells.js';
import { branch, type Cell, type Code, memory, value } from './code.js';
import type { Guarded, GuardTest } from './guards.js';
import type { Signal } from './parts.js';
import type { Plan } from './plan.js';

/** What each part of the generator works with. */
export interface Context {
  readonly scheme: Scheme;
  readonly names: Names;
  readonly plan: Plan;
  readonly code: Code;
  readonly cells: Cells;
  readonly outputOf: (binding: Binding) => Output;
  /** Of the mode, over all its seats rows and consoles. */
  readonly firedBytes: number;
  /** The symbol of a binding's time in reads; the name is that of the table of times. */
  readonly timeOf: (binding: Binding) => string;
  readonly readsOf: (binding: Binding) => Reads;
  /** A symbol for the largest of several bindings' times. */
  readonly largestOf: (bindings: readonly Binding[]) => string;
  /** A symbol for a time less one read. */
  readonly lessOne: (binding: Binding) => string;
  /** Bytes that hold lines between modes, as the seats row needs them. */
  readonly isKept: (bank: string) => boolean;
}

export function register(context: Context, symbol: RegisterSymbol): Cell {
  const reach = REGISTERS[symbol].address < 0x100 ? 'zero page' : 'absolute';
  return { symbol: context.names.register(symbol), reach };
}

/**
 * VBLANK with the button latch let go or armed. Its symbols dump the pots where some seats row has paddles; where
 * another has none, lines that are dumped would never read 1.
 */
export function vblankWord({ names, scheme, plan }: Context, how: 'CLEAR' | 'ARM'): string {
  const word = `${names.prefix}VBLANK_${how}`;
  return scheme.seats.some(hasPots) && !hasPots(plan.unit.seats) ? `${word}&$7F` : word;
}

const BANK_NAMES: Readonly<Record<string, string>> = { A: 'port A', B: 'the panel', I: 'the INPT lines' };

export function bankName(bank: string): string {
  const letter = bank.slice(0, 1);
  if (letter === 'K') return 'the keys';
  if (letter === 'D') return 'chords and what is held back';
  return BANK_NAMES[bank] ?? 'what was turned or moved';
}

/** Lines as read: 1 engaged. */
export function nowCell({ cells, isKept }: Context, bank: string): Cell {
  if (isKept(bank)) return cells.get(`KEPT_${bank}`, 'kept', `${bankName(bank)} as read, 1 engaged`);
  return cells.get(`NOW_${bank}`, 'scratch', `${bankName(bank)} as read, 1 engaged`);
}

/** Lines as they count by the release-first rule. */
export function countedCell(context: Context, bank: string): Cell {
  if (!context.plan.waiting.has(bank)) return nowCell(context, bank);
  return context.cells.get(`COUNT_${bank}`, 'scratch', `${bankName(bank)} without what must be let go first`);
}

export function waitCell({ cells }: Context, bank: string): Cell {
  return cells.get(`WAIT_${bank}`, 'state', `${bankName(bank)}: 1 must be let go before it counts`);
}

export function lastCell({ cells }: Context, bank: string): Cell {
  return cells.get(`LAST_${bank}`, 'state', `${bankName(bank)} at the read before`);
}

const SIGNAL_CELLS = {
  new: ['NEW', 'became engaged'],
  'let go': ['GONE', 'were let go'],
  changed: ['MOVED', 'differ from the read before'],
} as const;

/** The byte whose bits say what a signal asks; for `off` it holds the opposite. */
export function signalCell(context: Context, { bank, kind }: Signal): Cell {
  if (kind === 'on' || kind === 'off') return nowCell(context, bank);
  const [name, words] = SIGNAL_CELLS[kind];
  return context.cells.get(`${name}_${bank}`, 'scratch', `${bankName(bank)}: 1 where lines ${words}`);
}

export function scratch({ cells }: Context, name: string, holds: string): Cell {
  return cells.get(name, 'scratch', holds);
}

/** Leaves the routine's `skip` where a `When` does not hold. */
export function guardBranches(context: Context, guard: Guarded, skip: string): void {
  if (guard.kind === 'tests') for (const test of guard.tests) guardBranch(context, test, skip);
}

function guardBranch(context: Context, test: GuardTest, skip: string): void {
  const { code } = context;
  if (test.kind === 'switch') {
    memory(code, 'lda', lastCell(context, 'B'));
    value(code, 'and', test.mask, `${test.name} at the read before`);
    const takenWhen = test.reads === 1 ? 'equal' : 'different';
    branch(code, test.reads === 1 ? 'beq' : 'bne', skip, '', {
      kind: 'setting',
      setting: test.name,
      value: 0,
      takenWhen,
    });
    return;
  }
  const { setting, value: number, is } = test;
  const cell = settingCell(context, setting);
  memory(code, 'lda', cell, `${setting.name}: ${setting.values[number] ?? ''}?`);
  if (number !== 0) value(code, 'cmp', context.names.value(setting, number));
  const guard = {
    kind: 'setting',
    setting: setting.name,
    value: number,
    takenWhen: is ? 'different' : 'equal',
  } as const;
  branch(code, is ? 'bne' : 'beq', skip, '', guard);
}

export function settingCell({ cells, names }: Context, setting: Setting): Cell {
  const { name, values, setBy } = setting;
  const where = setBy.kind === 'switch' ? `, where the console lacks the ${setBy.name} switch` : '';
  return cells.get(
    names.setting(setting),
    'setting',
    `${name}, 0 to ${values.length - 1}: the game writes it${where}`,
  );
}

/** The bits of a bank that have a position or a code, and so are neither engaged nor not. */
export function positionalMask({ lines }: Bank): number {
  return lines
    .filter(({ wire }) => wire.kind === 'two-position' || wire.kind === 'gray')
    .reduce((mask, line) => mask | line.mask, 0);
}

/** Spots by bank, their masks joined. */
export function byBank(spots: readonly Spot[]): readonly Spot[] {
  const masks = new Map<string, number>();
  for (const { bank, mask } of spots) masks.set(bank, (masks.get(bank) ?? 0) | mask);
  return [...masks].map(([bank, mask]) => ({ bank, mask }));
}
