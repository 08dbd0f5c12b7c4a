import type { Bank } from './banks.js';
import { branch, type Cell, implied, label, memory, remark, value } from './code.js';
import {
  bankName,
  type Context,
  lastCell,
  nowCell,
  positionalMask,
  register,
  vblankWord,
  waitCell,
} from './context.js';
import { holdingCell, inBytes, lastPositionCell, positionCell, turnedContacts } from './hold-backs.js';
import { atRest, counterCell, directLine, pastAll, skipUnlessEngaged } from './machines.js';
import { loadBank } from './read-lines.js';

/**
 * Entering the mode: engagements and positions carry over, what is engaged must be let go first. Starting: every
 * control counts as not engaged, every switch as already in its position.
 */
export function emitEntry(context: Context, how: 'enter' | 'start', used: ReadonlySet<string>): void {
  const { code, plan } = context;
  if (how === 'start') emitSetUp(context);
  const zeros: Cell[] = [];
  for (const bank of plan.map.banks) emitBank(context, bank, how, used, zeros);
  for (const number of plan.channels.keys()) {
    const cell = lastCell(context, `D${Math.floor(number / 8)}`);
    if (number % 8 === 0 && used.has(cell.symbol)) zeros.push(cell);
  }
  inBytes(plan.holdBacks).forEach((_, number) => {
    zeros.push(holdingCell(context, number));
  });
  const resting = new Map<string, Cell[]>();
  plan.machines.forEach((machine, index) => {
    const counter = counterCell(context, index);
    const rest = atRest(context, machine);
    if (
      how === 'enter' &&
      machine.kind === 'run' &&
      !machine.bank.startsWith('D') &&
      !plan.waiting.has(machine.bank)
    ) {
      emitCounterEntry(context, index, rest);
    } else if (rest === 0) zeros.push(counter);
    else resting.set(String(rest), [...(resting.get(String(rest)) ?? []), counter]);
  });
  if (zeros.length > 0) value(code, 'lda', 0, 'nothing is begun');
  for (const cell of zeros) memory(code, 'sta', cell);
  for (const [rest, cells] of resting) {
    value(code, 'lda', rest);
    for (const cell of cells) memory(code, 'sta', cell);
  }
  for (const { contact, source } of turnedContacts(context)) {
    if (source.kind !== 'paddle') continue;
    memory(code, 'lda', positionCell(context, contact));
    memory(code, 'sta', lastPositionCell(context, contact));
  }
  implied(code, 'rts');
}

function emitSetUp(context: Context): void {
  const { code, scheme } = context;
  value(code, 'lda', 0);
  memory(code, 'sta', register(context, 'SWACNT'), 'port A: all input');
  if (scheme.game.latch.value === 'off') return;
  value(code, 'lda', vblankWord(context, 'ARM'), 'the button latch on');
  memory(code, 'sta', register(context, 'VBLANK'));
}

function emitBank(
  context: Context,
  bank: Bank,
  how: 'enter' | 'start',
  used: ReadonlySet<string>,
  zeros: Cell[],
): void {
  const { code, plan } = context;
  if (directLine(context, bank.id) !== null) return;
  const last = lastCell(context, bank.id);
  const wait = plan.waiting.get(bank.id);
  const hasLast = used.has(last.symbol);
  const positional = positionalMask(bank);
  const needsLine = hasLast && (positional !== 0 || (how === 'enter' && wait === undefined));
  if (!hasLast && wait === undefined) return;
  if (how === 'start') {
    if (wait !== undefined) zeros.push(waitCell(context, bank.id));
    if (hasLast && positional === 0) zeros.push(last);
    if (!hasLast || positional === 0) return;
    remark(code, `already in position: ${bankName(bank.id)}`);
    loadLines(context, bank);
    value(code, 'and', positional);
    memory(code, 'sta', last);
    return;
  }
  remark(code, `what carries over: ${bankName(bank.id)}`);
  loadLines(context, bank);
  if (wait === undefined) {
    memory(code, 'sta', last);
    return;
  }
  if (needsLine) memory(code, 'sta', nowCell(context, bank.id));
  value(code, 'and', wait);
  memory(code, 'sta', waitCell(context, bank.id), 'must be let go first');
  if (!hasLast) return;
  if (!needsLine) {
    zeros.push(last);
    return;
  }
  memory(code, 'lda', nowCell(context, bank.id));
  value(code, 'and', positional);
  memory(code, 'sta', last);
}

/** As the last read left them where they are kept, else as they are now. */
function loadLines(context: Context, bank: Bank): void {
  if (context.isKept(bank.id)) memory(context.code, 'lda', nowCell(context, bank.id));
  else loadBank(context, bank);
}

function emitCounterEntry(context: Context, index: number, rest: string | number): void {
  const { code, plan } = context;
  const machine = plan.machines[index];
  if (machine === undefined) return;
  const up = code.fresh();
  const done = code.fresh();
  const bank = plan.map.banks.find(({ id }) => id === machine.bank);
  if (bank !== undefined && directLine(context, bank.id) === null) {
    loadLines(context, bank);
    value(code, 'and', machine.mask);
    branch(code, 'beq', up);
  } else skipUnlessEngaged(context, machine, up);
  value(code, 'lda', pastAll(context, machine), 'engaged: must be let go first');
  branch(code, pastAll(context, machine) === 0 ? 'beq' : 'bne', done, 'always');
  label(code, up);
  value(code, 'lda', rest);
  label(code, done);
  memory(code, 'sta', counterCell(context, index));
}
