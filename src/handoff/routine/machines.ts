import { type BankLine, inptRegister } from './banks.js';
import { branch, type Cell, type Guard, implied, jump, label, memory, remark, value } from './code.js';
import { type Context, countedCell, guardBranches, register, signalCell } from './context.js';
import { lineGuard, setOutput, skipUnlessBit } from './fires.js';
import { stopCell } from './hold-backs.js';
import type { Counted, Machine } from './plan.js';
import { maskWords } from './read-lines.js';

/** The counters: holds and taps, double taps, repeats. */
export function emitMachines(context: Context): void {
  context.plan.machines.forEach((machine, index) => {
    remark(context.code, `${wordsOf(context, machine)}: ${gesturesOf(machine)}`);
    const counter = counterCell(context, index);
    if (machine.kind === 'run' && hasOneTime(machine)) emitCountdown(context, machine, counter);
    else if (machine.kind === 'run') emitRun(context, machine, counter);
    else if (machine.kind === 'repeat') emitRepeat(context, machine, counter);
    else emitDoubleTap(context, machine, counter);
  });
}

const gesturesOf = ({ entries }: Machine) =>
  [...new Set(entries.map(({ binding }) => binding.gesture.kind))].join(', ');

export function counterCell(context: Context, index: number): Cell {
  const machine = context.plan.machines[index];
  const holds = machine === undefined ? '' : `${wordsOf(context, machine)}: ${HOLDS[machine.kind]}`;
  return context.cells.get(`READS${index}`, 'state', holds);
}

const HOLDS: Readonly<Record<Machine['kind'], string>> = {
  run: 'counts reads engaged',
  'double tap': 'reads in which a second press still counts',
  repeat: 'reads until it may come due again',
};

function wordsOf(context: Context, { bank, mask, entries }: Machine): string {
  const line = maskWords(context, bank, mask);
  if (line !== '') return line;
  return entries[0]?.binding.parts.map(({ id }) => id).join(' + ') ?? '';
}

/** Holds and taps of one time can count down to it, which is shorter. */
export function hasOneTime({ entries }: Machine): boolean {
  const times = entries.map(({ binding: { gesture } }) => {
    if (!('time' in gesture)) return '';
    return `${gesture.time.unit} ${gesture.time.amount.numerator}/${gesture.time.amount.denominator}`;
  });
  return new Set(times).size === 1;
}

/** Goes to `skip` unless the machine's control counts as engaged. */
export function skipUnlessEngaged(context: Context, { bank, mask }: Machine, skip: string): void {
  const direct = directLine(context, bank);
  const guard = lineGuard(context, bank, mask, 'engaged', true);
  if (direct === null) {
    skipUnlessBit(
      context,
      countedCell(context, bank),
      mask,
      skip,
      'on',
      maskWords(context, bank, mask),
      guard,
    );
    return;
  }
  memory(context.code, 'bit', register(context, inptRegister(direct.wire)), direct.contact.id);
  const engagedReads = direct.wire.kind === 'line' ? direct.wire.engagedReads : 0;
  branch(context.code, engagedReads === 0 ? 'bmi' : 'bpl', skip, 'D7 to N: not engaged', guard);
}

/** A line that only one counter looks at is tested where it is read. */
export function directLine({ plan }: Context, bank: string): BankLine | null {
  if (!bank.startsWith('INPT')) return null;
  return plan.map.banks.find(({ id }) => id === bank)?.lines[0] ?? null;
}

const ofKind = ({ entries }: Machine, kind: string) =>
  entries.filter(({ binding }) => binding.gesture.kind === kind);

/**
 * Counter: reads still wanted. At rest it holds the whole time, at 0 the time has passed (or the control must be
 * let go first).
 */
function emitCountdown(context: Context, machine: Machine, counter: Cell): void {
  const { code } = context;
  const [first] = machine.entries;
  if (first === undefined) return;
  const up = code.fresh();
  const done = code.fresh();
  const holds = ofKind(machine, 'hold');
  const taps = ofKind(machine, 'tap');
  skipUnlessEngaged(context, machine, up);
  memory(code, 'lda', counter);
  branch(code, 'beq', done, 'passed already');
  memory(code, 'dec', counter);
  if (holds.length > 0) {
    branch(code, 'bne', done, '', holdGuard(context, machine, first));
    for (const entry of holds) fireGuarded(context, entry);
  }
  jump(code, done);
  label(code, up);
  const time = context.timeOf(first.binding);
  if (taps.length > 0) {
    const reset = code.fresh();
    memory(code, 'lda', counter);
    branch(code, 'beq', reset, 'held too long for a tap');
    value(code, 'cmp', time);
    branch(code, 'beq', done, 'was not engaged');
    stopTap(context, machine, reset);
    for (const entry of taps) fireGuarded(context, entry);
    label(code, reset);
  }
  value(code, 'lda', time);
  memory(code, 'sta', counter);
  label(code, done);
}

/** A hold of more than one read does not end at the read at which its control becomes engaged. */
function holdGuard(context: Context, { bank, mask }: Machine, { binding }: Counted): Guard | null {
  const { ntsc, pal } = context.readsOf(binding);
  return Math.min(ntsc, pal) > 1 ? lineGuard(context, bank, mask, 'engaged before', false) : null;
}

/** A tap that ends because something holds it back is none. */
function stopTap(context: Context, { bank, mask }: Machine, skip: string): void {
  const { code, plan } = context;
  if (!bank.startsWith('D') || !hasStops(context, bank)) return;
  const number = Number(bank.slice(1));
  const bit = Math.log2(mask);
  if ((plan.channels[number * 8 + bit]?.heldBy.length ?? 0) === 0) return;
  memory(code, 'lda', stopCell(context, bank));
  value(code, 'and', mask, 'held back: no tap');
  branch(code, 'bne', skip);
}

/** True where a bank of channels must know what is held back besides what counts as engaged. */
export function hasStops({ plan }: Context, bank: string): boolean {
  const number = Number(bank.slice(1));
  const own = plan.channels.slice(number * 8, number * 8 + 8);
  if (own.every(({ heldBy }) => heldBy.length === 0)) return false;
  const taps = plan.machines.some(machine => machine.bank === bank && ofKind(machine, 'tap').length > 0);
  return taps || plan.fires.some(({ signal }) => signal.bank === bank && signal.kind === 'let go');
}

/** Counter: reads engaged in a row, up to the longest time asked for. */
function emitRun(context: Context, machine: Machine, counter: Cell): void {
  const { code } = context;
  const up = code.fresh();
  const done = code.fresh();
  const taps = ofKind(machine, 'tap');
  skipUnlessEngaged(context, machine, up);
  memory(code, 'ldx', counter);
  value(code, 'cpx', context.largestOf(machine.entries.map(({ binding }) => binding)));
  branch(code, 'bcs', done, 'past every time asked for');
  implied(code, 'inx');
  memory(code, 'stx', counter);
  for (const entry of ofKind(machine, 'hold')) {
    const next = code.fresh();
    value(code, 'cpx', context.timeOf(entry.binding));
    branch(code, 'bne', next, '', holdGuard(context, machine, entry));
    fireGuarded(context, entry);
    label(code, next);
  }
  jump(code, done);
  label(code, up);
  if (taps.length > 0) {
    memory(code, 'ldx', counter);
    branch(code, 'beq', done, 'was not engaged');
  }
  value(code, 'lda', 0);
  memory(code, 'sta', counter);
  if (taps.length > 0) stopTap(context, machine, done);
  for (const entry of taps) {
    const next = code.fresh();
    value(code, 'cpx', context.timeOf(entry.binding));
    branch(code, 'bcs', next, 'too long for a tap');
    fireGuarded(context, entry);
    label(code, next);
  }
  label(code, done);
}

/** Counter: reads in which a second press still counts. */
function emitDoubleTap(context: Context, machine: Machine, counter: Cell): void {
  const { code } = context;
  const [first] = machine.entries;
  if (first === undefined) return;
  const idle = code.fresh();
  const second = code.fresh();
  const done = code.fresh();
  const cell = signalCell(context, { bank: machine.bank, mask: machine.mask, kind: 'new' });
  const guard = lineGuard(context, machine.bank, machine.mask, 'just engaged', true);
  skipUnlessBit(
    context,
    cell,
    machine.mask,
    idle,
    'on',
    maskWords(context, machine.bank, machine.mask),
    guard,
  );
  memory(code, 'lda', counter);
  branch(code, 'bne', second);
  value(code, 'lda', context.timeOf(first.binding));
  memory(code, 'sta', counter, 'a first press');
  jump(code, done);
  label(code, second);
  value(code, 'lda', 0);
  memory(code, 'sta', counter, 'a second press');
  for (const entry of machine.entries) fireGuarded(context, entry);
  jump(code, done);
  label(code, idle);
  memory(code, 'lda', counter);
  branch(code, 'beq', done);
  memory(code, 'dec', counter);
  label(code, done);
}

/** Counter: reads that must still pass before it can come due. */
function emitRepeat(context: Context, machine: Machine, counter: Cell): void {
  const { code } = context;
  const [first] = machine.entries;
  if (first === undefined) return;
  const ready = code.fresh();
  const done = code.fresh();
  memory(code, 'lda', counter);
  branch(code, 'beq', ready);
  memory(code, 'dec', counter);
  jump(code, done);
  label(code, ready);
  skipUnlessEngaged(context, machine, done);
  value(code, 'lda', context.lessOne(first.binding));
  memory(code, 'sta', counter);
  for (const entry of machine.entries) fireGuarded(context, entry);
  label(code, done);
}

function fireGuarded(context: Context, { binding, guard }: Counted): void {
  const skip = context.code.fresh();
  guardBranches(context, guard, skip);
  setOutput(context, context.outputOf(binding));
  label(context.code, skip);
}

/** The state that a machine has when nothing of it is begun. */
export function atRest(context: Context, machine: Machine): string | number {
  const [first] = machine.entries;
  return machine.kind === 'run' && hasOneTime(machine) && first !== undefined
    ? context.timeOf(first.binding)
    : 0;
}

/** The state in which a run is past everything, so that the control must be let go first. */
export function pastAll(context: Context, machine: Machine): string | number {
  return hasOneTime(machine) ? 0 : context.largestOf(machine.entries.map(({ binding }) => binding));
}
