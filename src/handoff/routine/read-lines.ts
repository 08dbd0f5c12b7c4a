import { type Bank, inptRegister } from './banks.js';
import { branch, type Code, implied, label, memory, remark, value } from './code.js';
import {
  bankName,
  byBank,
  type Context,
  countedCell,
  lastCell,
  nowCell,
  register,
  scratch,
  signalCell,
  vblankWord,
  waitCell,
} from './context.js';
import type { Signal, SignalKind } from './parts.js';

const ALL = 0xff;

/** Leaves a bank in the accumulator, 1 where a line is engaged. Keys are left where the scan has put them. */
export function loadBank(context: Context, bank: Bank): void {
  const { code } = context;
  switch (bank.id) {
    case 'A':
      memory(code, 'lda', register(context, 'SWCHA'));
      value(code, 'eor', ALL, '0 is engaged: turned into 1');
      return;
    case 'B':
      memory(code, 'lda', register(context, 'SWCHB'));
      if (momentaryPanelMask(bank) !== 0)
        value(code, 'eor', momentaryPanelMask(bank), 'RESET and SELECT: 0 is pressed');
      return;
    case 'I':
      loadInpt(context, bank);
      return;
    default:
      memory(code, 'lda', nowCell(context, bank.id));
  }
}

function momentaryPanelMask({ lines }: Bank): number {
  return lines.filter(({ wire }) => wire.kind === 'line').reduce((mask, line) => mask | line.mask, 0);
}

/** D7 of one or two registers in D7 and D6; of more, one shifted in after the other. */
function loadInpt(context: Context, { lines }: Bank): void {
  const { code } = context;
  const [first, second] = lines;
  if (first === undefined) return;
  const isInverted = (line: typeof first) => line.wire.kind === 'line' && line.wire.engagedReads === 0;
  const inverted = lines.filter(isInverted).reduce((mask, line) => mask | line.mask, 0);
  if (lines.length > 2) {
    const byte = nowCell(context, 'I');
    for (const { wire, contact } of lines) {
      memory(code, 'lda', register(context, inptRegister(wire)), contact.id);
      implied(code, 'asl');
      memory(code, 'rol', byte);
    }
    memory(code, 'lda', byte);
  } else if (second === undefined) {
    memory(code, 'lda', register(context, inptRegister(first.wire)), first.contact.id);
  } else {
    memory(code, 'lda', register(context, inptRegister(first.wire)), `${first.contact.id} to D7`);
    implied(code, 'asl');
    memory(code, 'lda', register(context, inptRegister(second.wire)), `${second.contact.id} to D6`);
    implied(code, 'ror');
  }
  if (inverted !== 0) value(code, 'eor', inverted, '0 is engaged: turned into 1');
}

/** Reads a register, once. */
export function readBank(context: Context, bank: Bank): void {
  if (bank.id.startsWith('K')) return;
  remark(context.code, `read ${bankName(bank.id)}`);
  loadBank(context, bank);
  memory(context.code, 'sta', nowCell(context, bank.id));
}

/** The latch: both are cleared by one bit, then armed again. */
export function clearLatch(context: Context, buttons: Bank, uses: boolean): void {
  const { code, scheme } = context;
  const latch = scheme.game.latch.value;
  if (latch === 'off' || (latch === 'cleared on use' && !uses)) return;
  remark(code, latch === 'cleared on use' ? 'a button was seen: clear the latch' : 'clear the latch');
  const skip = code.fresh();
  if (latch === 'cleared on use') {
    memory(code, 'lda', nowCell(context, 'I'));
    value(code, 'and', latchedMask(buttons));
    branch(code, 'beq', skip);
  }
  value(code, 'lda', vblankWord(context, 'CLEAR'), 'D6 = 0: both latches let go');
  memory(code, 'sta', register(context, 'VBLANK'));
  value(code, 'lda', vblankWord(context, 'ARM'), 'D6 = 1: armed for the next read');
  memory(code, 'sta', register(context, 'VBLANK'));
  if (latch === 'cleared on use') label(code, skip);
}

export function latchedMask({ lines }: Bank): number {
  return lines
    .filter(({ wire }) => /INPT[45]/.test(inptRegister(wire)))
    .reduce((mask, line) => mask | line.mask, 0);
}

/** The release-first rule: what was engaged when the mode was entered counts only after it was let go. */
export function applyWaiting(context: Context, bank: string): void {
  const { code, plan } = context;
  if (!plan.waiting.has(bank)) return;
  remark(code, `${bankName(bank)}: let go first, then it counts`);
  memory(code, 'lda', nowCell(context, bank));
  memory(code, 'and', waitCell(context, bank));
  memory(code, 'sta', waitCell(context, bank));
  memory(code, 'eor', nowCell(context, bank), 'what waits is engaged: taken out');
  memory(code, 'sta', countedCell(context, bank));
}

/** What a bank is asked besides its level. */
export function edgesOf(signals: readonly Signal[], bank: string): ReadonlySet<SignalKind> {
  const kinds = signals.filter(signal => signal.bank === bank).map(({ kind }) => kind);
  return new Set(kinds.filter(kind => kind !== 'on' && kind !== 'off'));
}

/** Bit by bit: what became engaged, was let go, was moved since the read before. */
export function emitEdges(context: Context, bank: string, kinds: ReadonlySet<SignalKind>): void {
  const { code } = context;
  if (kinds.size === 0) return;
  const now = countedCell(context, bank);
  const last = lastCell(context, bank);
  const cell = (kind: SignalKind) => signalCell(context, { bank, kind, mask: 0 });
  remark(code, `${bankName(bank)}: what changed since the read before`);
  memory(code, 'lda', now);
  memory(code, 'eor', last);
  if (kinds.has('changed')) memory(code, 'sta', cell('changed'));
  if (kinds.has('new') && kinds.has('let go')) {
    const changed = kinds.has('changed') ? cell('changed') : scratch(context, `DIFF_${bank}`, 'what differs');
    if (!kinds.has('changed')) memory(code, 'sta', changed);
    memory(code, 'and', now);
    memory(code, 'sta', cell('new'));
    memory(code, 'lda', changed);
    memory(code, 'and', last);
    memory(code, 'sta', cell('let go'));
  } else if (kinds.has('new') || kinds.has('let go')) {
    memory(code, 'and', kinds.has('new') ? now : last);
    memory(code, 'sta', cell(kinds.has('new') ? 'new' : 'let go'));
  }
}

export function keepLast(context: Context, bank: string): void {
  memory(context.code, 'lda', countedCell(context, bank));
  memory(context.code, 'sta', lastCell(context, bank));
}

/**
 * Leaves the accumulator zero exactly where every spot is engaged (level 1).
 *
 * @param cellOf the byte of a bank to look at
 */
export function zeroWhenAll(
  context: Context,
  spots: readonly { readonly bank: string; readonly mask: number; readonly counted: boolean }[],
): void {
  const { code } = context;
  const sets = [...byBank(spots.map(({ bank, mask }) => ({ bank, mask })))];
  const counted = spots.some(spot => spot.counted);
  sets.forEach(({ bank, mask }, index) => {
    const last = index === sets.length - 1;
    const sum = index === 0 ? null : scratch(context, 'SUM', 'parts of a chord');
    memory(code, 'lda', counted ? countedCell(context, bank) : nowCell(context, bank));
    value(code, 'and', mask, maskWords(context, bank, mask));
    value(code, 'eor', mask);
    if (sum !== null) memory(code, 'ora', sum);
    if (!last) memory(code, 'sta', scratch(context, 'SUM', 'parts of a chord'));
  });
}

/** Leaves the accumulator not zero exactly where some spot is engaged. */
export function anyOf(
  context: Context,
  spots: readonly { readonly bank: string; readonly mask: number }[],
): void {
  const { code } = context;
  byBank(spots).forEach(({ bank, mask }, index, sets) => {
    memory(code, 'lda', nowCell(context, bank));
    value(code, 'and', mask, maskWords(context, bank, mask));
    if (index > 0) memory(code, 'ora', scratch(context, 'SUM', 'parts of a chord'));
    if (index < sets.length - 1) memory(code, 'sta', scratch(context, 'SUM', 'parts of a chord'));
  });
}

/** The lines under a mask, by name. */
export function maskWords({ plan }: Context, bank: string, mask: number): string {
  const found = plan.map.banks.find(({ id }) => id === bank);
  const names = found?.lines.filter(line => (line.mask & mask) !== 0).map(({ contact }) => contact.id) ?? [];
  return names.join(', ');
}

/** Shifts a bit into a byte: the accumulator's not being zero. */
export function shiftIn(code: Code, cell: Parameters<typeof memory>[2], comment = ''): void {
  value(code, 'cmp', 1, 'carry: not zero');
  memory(code, 'rol', cell, comment);
}
