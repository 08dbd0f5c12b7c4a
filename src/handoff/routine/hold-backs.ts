import type { Contact } from '../../gestures/contacts.js';
import { branch, type Cell, implied, indexed, label, memory, remark, value } from './code.js';
import { type Context, guardBranches, lastCell, nowCell, scratch, signalCell } from './context.js';
import type { Channel, Happening, HoldBackPlan } from './parts.js';
import { anyOf, maskWords, shiftIn, zeroWhenAll } from './read-lines.js';
import { CHANNELS_IN_BANK } from './serial.js';

const ALL = 0xff;

/** Lists of things that are shifted into bytes: each byte's from its last to its first, which ends in D0. */
export function inBytes<T>(list: readonly T[]): readonly (readonly T[])[] {
  const count = Math.ceil(list.length / CHANNELS_IN_BANK);
  return Array.from({ length: count }, (_, number) =>
    list.slice(number * CHANNELS_IN_BANK, (number + 1) * CHANNELS_IN_BANK),
  );
}

/** Turns and what must be able to be held back: a bit for each, 1 where it happens at this read. */
export function emitHappenings(context: Context): void {
  const { code, plan } = context;
  inBytes(plan.happenings).forEach((list, number) => {
    remark(code, 'what was turned or moved');
    const cell = nowCell(context, `T${number}`);
    for (const happening of list.toReversed()) {
      loadHappening(context, happening);
      shiftIn(code, cell);
    }
  });
}

function loadHappening(context: Context, { source }: Happening): void {
  const { code } = context;
  switch (source.kind) {
    case 'signal': {
      const { signal } = source;
      memory(code, 'lda', signalCell(context, signal));
      value(code, 'and', signal.mask, maskWords(context, signal.bank, signal.mask));
      if (signal.kind === 'off') value(code, 'eor', signal.mask);
      return;
    }
    case 'wheel':
      memory(code, 'lda', lastCell(context, source.spot.bank));
      memory(code, 'eor', nowCell(context, source.spot.bank));
      value(code, 'and', source.spot.mask, `${source.contact.id}: its code differs`);
      return;
    case 'paddle':
      memory(code, 'lda', positionCell(context, source.contact));
      memory(
        code,
        'eor',
        lastPositionCell(context, source.contact),
        `${source.contact.id}: its position differs`,
      );
      return;
    default:
      source satisfies never;
  }
}

/** A turning control's position, a byte that outlives modes. */
export function positionCell({ cells, names }: Context, contact: Contact): Cell {
  const isWheel = contact.kind === 'control' && contact.control.wiring.kind === 'gray';
  const who = isWheel
    ? 'the routine counts it up clockwise, from what the game writes before START'
    : 'the game writes it before START and before each read';
  const symbol = `${names.prefix}POSITION_${names.contact(contact)}`;
  return cells.get(symbol, 'position', `${contact.id}: position; ${who}`);
}

export function lastPositionCell({ cells, names }: Context, contact: Contact): Cell {
  return cells.get(`LAST_${names.contact(contact)}`, 'state', `${contact.id}: position at the read before`);
}

/** Positions: a wheel's step is looked up by its old and its new code; a paddle's is kept for the next read. */
export function emitPositions(context: Context): void {
  const { code, names } = context;
  for (const { contact, source } of turnedContacts(context)) {
    if (source.kind === 'paddle') {
      memory(code, 'lda', positionCell(context, contact));
      memory(code, 'sta', lastPositionCell(context, contact));
      continue;
    }
    const { bank, mask } = source.spot;
    remark(code, `${contact.id}: step by old and new code`);
    const shift = mask === 0x30 ? 4 : 0;
    const pair = scratch(context, 'PAIR', 'old code of a wheel, times 4');
    memory(code, 'lda', lastCell(context, bank));
    value(code, 'and', mask);
    for (let step = 0; step < Math.abs(shift - 2); step++) implied(code, shift > 2 ? 'lsr' : 'asl');
    memory(code, 'sta', pair);
    memory(code, 'lda', nowCell(context, bank));
    value(code, 'and', mask);
    for (let step = 0; step < shift; step++) implied(code, 'lsr');
    memory(code, 'ora', pair);
    implied(code, 'tax');
    indexed(code, 'lda', `${names.prefix}WHEEL_STEPS`, '0, 1 or -1');
    implied(code, 'clc');
    memory(code, 'adc', positionCell(context, contact));
    memory(code, 'sta', positionCell(context, contact));
  }
}

/** What turns, each once. */
export function turnedContacts({ plan }: Context) {
  const found = new Map<
    string,
    { contact: Contact; source: Exclude<Happening['source'], { kind: 'signal' }> }
  >();
  for (const { source } of plan.happenings)
    if (source.kind !== 'signal') found.set(source.contact.id, { contact: source.contact, source });
  return [...found.values()];
}

export function holdingCell({ cells }: Context, number: number): Cell {
  return cells.get(`HOLDING_${number}`, 'state', 'Instead of: 1 while it lasts');
}

/** The hold-backs in force at this read, this read's ending ones included. */
export function heldCell(context: Context, number: number): Cell {
  return scratch(context, `HELD_${number}`, 'Instead of: 1 where it holds something back at this read');
}

/** A hold-back begins with its holder and ends at the read at which its lines are let go, that read included. */
export function emitHoldBacks(context: Context): void {
  const { code, plan } = context;
  inBytes(plan.holdBacks).forEach((list, number) => {
    remark(code, 'Instead of: what begins to hold something back, 0 where it does');
    const begins = scratch(context, 'BEGINS', 'Instead of: 0 where the holder is engaged');
    const still = scratch(context, 'STILL', 'Instead of: 1 where its lines are still engaged');
    for (const holdBack of list.toReversed()) emitBeginning(context, holdBack, begins);
    for (const { until } of list.toReversed()) {
      if (until.length === 0) memory(code, 'asl', still);
      else {
        anyOf(context, until);
        shiftIn(code, still);
      }
    }
    memory(code, 'lda', begins);
    value(code, 'eor', ALL);
    memory(code, 'ora', holdingCell(context, number));
    if (list.length < CHANNELS_IN_BANK) value(code, 'and', (1 << list.length) - 1);
    memory(code, 'sta', heldCell(context, number));
    memory(code, 'and', still);
    memory(code, 'sta', holdingCell(context, number));
  });
}

function emitBeginning(context: Context, { begins, guard, holder }: HoldBackPlan, byte: Cell): void {
  const { code } = context;
  const skip = code.fresh();
  const done = code.fresh();
  guardBranches(context, guard, skip);
  if (begins.kind === 'engaged') {
    zeroWhenAll(
      context,
      begins.parts.map(spot => ({ ...spot, counted: false })),
    );
  } else {
    const { signal } = begins;
    memory(code, 'lda', signalCell(context, signal));
    value(code, 'and', signal.mask, maskWords(context, signal.bank, signal.mask));
    if (signal.kind !== 'off') value(code, 'eor', signal.mask);
  }
  value(code, 'cmp', 1, holder.actionName);
  if (guard.kind === 'tests') {
    branch(code, 'bcc', done);
    label(code, skip);
    implied(code, 'sec');
    label(code, done);
  }
  memory(code, 'rol', byte);
}

/** Chords and controls that something holds back: a bit for each, 1 where it counts as engaged. */
export function emitChannels(context: Context): void {
  const { code, plan } = context;
  inBytes(plan.channels).forEach((list, number) => {
    remark(code, 'chords, and what is held back: 0 where it counts as engaged');
    const cell = nowCell(context, `D${number}`);
    for (const channel of list.toReversed()) emitChannel(context, channel, cell);
    memory(code, 'lda', cell);
    value(code, 'eor', ALL, 'now 1 where it does');
    memory(code, 'sta', cell);
  });
}

function emitChannel(context: Context, { parts, counted, heldBy }: Channel, cell: Cell): void {
  const { code } = context;
  zeroWhenAll(
    context,
    parts.map(spot => ({ ...spot, counted })),
  );
  for (const [number, mask] of heldMasks(heldBy)) {
    memory(code, 'sta', scratch(context, 'SUM', 'parts of a chord'));
    memory(code, 'lda', heldCell(context, number));
    value(code, 'and', mask, 'held back');
    memory(code, 'ora', scratch(context, 'SUM', 'parts of a chord'));
  }
  shiftIn(code, cell);
}

/** Hold-backs by byte. */
function heldMasks(heldBy: readonly number[]): ReadonlyMap<number, number> {
  const masks = new Map<number, number>();
  for (const index of heldBy) {
    const number = Math.floor(index / CHANNELS_IN_BANK);
    masks.set(number, (masks.get(number) ?? 0) | (1 << (index % CHANNELS_IN_BANK)));
  }
  return masks;
}

/** A bit for each channel or happening of a bank: 1 where it is held back at this read, and so must not fire. */
export function stopCell(context: Context, bank: string): Cell {
  return scratch(context, `STOP_${bank}`, '1 where something must not fire: it is held back');
}

export function emitStops(
  context: Context,
  bank: string,
  list: readonly { readonly heldBy: readonly number[] }[],
) {
  const { code } = context;
  const cell = stopCell(context, bank);
  for (const { heldBy } of list.toReversed()) {
    const masks = [...heldMasks(heldBy)];
    if (masks.length === 0) {
      memory(code, 'asl', cell);
      continue;
    }
    masks.forEach(([number, mask], index) => {
      memory(code, 'lda', heldCell(context, number));
      value(code, 'and', mask);
      if (index > 0) memory(code, 'ora', scratch(context, 'SUM', 'parts of a chord'));
      if (index < masks.length - 1) memory(code, 'sta', scratch(context, 'SUM', 'parts of a chord'));
    });
    shiftIn(code, cell);
  }
}
