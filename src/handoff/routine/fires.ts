import type { Output } from '../outputs.js';
import { branch, type Cell, type Guard, type LineState, label, memory, remark, value } from './code.js';
import { type Context, guardBranches, signalCell } from './context.js';
import type { Guarded } from './guards.js';
import type { Signal } from './parts.js';
import type { Fire } from './plan.js';
import { maskWords } from './read-lines.js';
import { CHANNELS_IN_BANK } from './serial.js';

const ALL = 0xff;

export function firedCell({ cells }: Context, byte: number): Cell {
  return cells.get(`FIRED${byte}`, 'fired', `actions that fired at this read, byte ${byte}`);
}

export function outputMask({ bit }: Output): number {
  return 1 << bit;
}

/** Sets an output's bit. */
export function setOutput(context: Context, output: Output): void {
  const { code } = context;
  const cell = firedCell(context, output.byte);
  memory(code, 'lda', cell);
  value(code, 'ora', output.symbol);
  memory(code, 'sta', cell);
}

/** Bits that lie in a signal's byte where the fired byte has them: moved together. */
interface Together {
  readonly signal: Signal;
  readonly byte: number;
  readonly mask: number;
}

/** Fires without a `When` fill the fired bytes; those with one are added behind its tests. */
export function emitFires(context: Context, byteCount: number): void {
  const groups = new Map<string, { guard: Guarded; fires: Fire[] }>();
  for (const fire of context.plan.fires) {
    const key = fire.guard.kind === 'tests' ? fire.guard.key : '';
    const group = groups.get(key) ?? { guard: fire.guard, fires: [] };
    group.fires.push(fire);
    groups.set(key, group);
  }
  const free = groups.get('')?.fires ?? [];
  remark(context.code, 'what fires');
  emitFree(context, free, byteCount);
  for (const [key, { guard, fires }] of groups) {
    if (key === '') continue;
    const skip = context.code.fresh();
    remark(context.code, 'what fires only when');
    guardBranches(context, guard, skip);
    const { together, apart } = split(context, fires);
    for (const each of together) emitTogether(context, each, true);
    for (const fire of apart) emitApart(context, fire);
    label(context.code, skip);
  }
}

function emitFree(context: Context, fires: readonly Fire[], byteCount: number): void {
  const { code } = context;
  const { together, apart } = split(context, fires);
  const begun = new Set<number>();
  for (const each of together) {
    emitTogether(context, each, begun.has(each.byte));
    begun.add(each.byte);
  }
  const empty = Array.from({ length: byteCount }, (_, byte) => byte).filter(byte => !begun.has(byte));
  if (empty.length > 0) value(code, 'lda', 0);
  for (const byte of empty) memory(code, 'sta', firedCell(context, byte));
  for (const fire of apart) emitApart(context, fire);
}

function split(context: Context, fires: readonly Fire[]) {
  const together = new Map<string, Together>();
  const apart: Fire[] = [];
  for (const fire of fires) {
    const output = context.outputOf(fire.binding);
    const { signal } = fire;
    if (outputMask(output) !== signal.mask) {
      apart.push(fire);
      continue;
    }
    const key = `${output.byte}|${signal.bank}|${signal.kind}`;
    const mask = (together.get(key)?.mask ?? 0) | signal.mask;
    together.set(key, { signal, byte: output.byte, mask });
  }
  return { together: [...together.values()], apart };
}

function emitTogether(context: Context, { signal, byte, mask }: Together, isAdded: boolean): void {
  const { code } = context;
  memory(code, 'lda', signalCell(context, signal));
  if (signal.kind === 'off') value(code, 'eor', ALL);
  if (mask !== ALL) value(code, 'and', mask, maskWords(context, signal.bank, mask));
  if (isAdded) memory(code, 'ora', firedCell(context, byte));
  memory(code, 'sta', firedCell(context, byte));
}

function emitApart(context: Context, { binding, signal }: Fire): void {
  const skip = context.code.fresh();
  skipUnless(context, signal, skip);
  setOutput(context, context.outputOf(binding));
  label(context.code, skip);
}

const BRANCHES = {
  on: { top: 'bpl', next: 'bvc', other: 'beq' },
  off: { top: 'bmi', next: 'bvs', other: 'bne' },
} as const;

/** Goes to `skip` unless the signal is there. D7 and D6 are looked at with BIT, any other bit with AND. */
export function skipUnless(context: Context, signal: Signal, skip: string): void {
  const level = signal.kind === 'off' ? 'off' : 'on';
  const words = maskWords(context, signal.bank, signal.mask);
  skipUnlessBit(
    context,
    signalCell(context, signal),
    signal.mask,
    skip,
    level,
    words,
    guardOfSignal(context, signal),
  );
}

/** What becomes engaged is engaged, what is let go is not; a level as read says nothing of what counts. */
function guardOfSignal(context: Context, { bank, mask, kind }: Signal): Guard | null {
  if (kind === 'new') return lineGuard(context, bank, mask, 'just engaged', true);
  return kind === 'let go' && !bank.startsWith('D') ? lineGuard(context, bank, mask, 'let go', false) : null;
}

/** What a branch on a bit depends on; null where it is no line and made from none. */
export function lineGuard(
  { plan }: Context,
  bank: string,
  mask: number,
  unless: LineState,
  exact: boolean,
): Guard | null {
  if (bank.startsWith('T')) return null;
  if (!bank.startsWith('D')) return { kind: 'lines', lines: [`${bank}/${mask}`], unless, exact };
  const channel = plan.channels[Number(bank.slice(1)) * CHANNELS_IN_BANK + Math.log2(mask)];
  if (channel === undefined || !channel.counted) return null;
  const lines = channel.parts.map(part => `${part.bank}/${part.mask}`);
  return { kind: 'lines', lines, unless, exact: exact && channel.heldBy.length === 0 };
}

export function skipUnlessBit(
  { code }: Context,
  cell: Cell,
  mask: number,
  skip: string,
  level: 'on' | 'off',
  comment: string,
  guard: Guard | null,
): void {
  const branches = BRANCHES[level];
  if (mask === 0x80 || mask === 0x40) {
    memory(code, 'bit', cell, comment);
    branch(code, mask === 0x80 ? branches.top : branches.next, skip, '', guard);
    return;
  }
  memory(code, 'lda', cell);
  value(code, 'and', mask, comment);
  branch(code, branches.other, skip, '', guard);
}
