import type { Mode, Scheme } from '../../language/model.js';
import type { Names } from '../names.js';
import { byteCount, type OutputsOfMode, outputKey } from '../outputs.js';
import type { Times } from '../times.js';
import type { Unit } from '../units.js';
import { type Bank, isKey, uniqueContacts } from './banks.js';
import { createCells, type RamCell } from './cells.js';
import { bytesOf, type Code, createCode, type Item, implied, memory, remark, value } from './code.js';
import { type Context, nowCell, signalCell } from './context.js';
import { emitEntry } from './enter.js';
import { emitFires } from './fires.js';
import {
  emitChannels,
  emitHappenings,
  emitHoldBacks,
  emitPositions,
  emitStops,
  inBytes,
  stopCell,
  turnedContacts,
} from './hold-backs.js';
import { emitColumns, emitDrive, emitScanEnd, stepsOf } from './keypad.js';
import { emitMachines, hasStops } from './machines.js';
import type { Signal, SignalKind } from './parts.js';
import { branchCount, worstCycles } from './paths.js';
import type { Plan } from './plan.js';
import { applyWaiting, clearLatch, edgesOf, emitEdges, keepLast, readBank } from './read-lines.js';
import { relax, tidy } from './tidy.js';

/** The generated code of one unit and what it costs. */
export interface UnitRoutine {
  readonly unit: Unit;
  readonly plan: Plan;
  /** `HARBOUR_DUET`: behind `LH__READ_` and the like. */
  readonly tag: string;
  /** Begins the symbols of the bytes that only this unit has. */
  readonly ownPrefix: string;
  readonly read: Piece;
  readonly enter: Piece;
  /** For the start mode only. */
  readonly start: Piece | null;
  /** Steps of the keypad scan, to be called one after the other, with a wait after each, before the read. */
  readonly scan: readonly Piece[];
  readonly cells: readonly RamCell[];
  /** By scratch symbol: the first and last item of the read that uses it. */
  readonly lives: ReadonlyMap<string, { readonly first: number; readonly last: number }>;
}

/** A subroutine. */
export interface Piece {
  readonly label: string;
  readonly items: readonly Item[];
  readonly bytes: number;
}

export interface UnitInput {
  readonly scheme: Scheme;
  readonly names: Names;
  readonly times: Times;
  readonly outputs: ReadonlyMap<Mode, OutputsOfMode>;
  readonly plan: Plan;
}

export const JSR_CYCLES = 6;

export function generateUnit(input: UnitInput): UnitRoutine {
  const { plan, names, scheme } = input;
  const tag = names.unit(plan.unit);
  const ownPrefix = `${names.prefix}${tag}__`;
  const cells = createCells(names.prefix, ownPrefix);
  const make = (word: string, fill: (context: Context) => void): Piece => {
    const context = createContext(input, cells, createCode('@'));
    fill(context);
    const isScratch = (symbol: string) =>
      cells.all().some(cell => cell.symbol === symbol && cell.kind === 'scratch');
    const items = relax(tidy(context.code.items, isScratch), context.code.fresh);
    return { label: `${names.prefix}${word}_${tag}`, items, bytes: bytesOf(items) };
  };
  const steps = stepsOf(keysOfPlan(plan));
  const scan = steps.map((step, index) =>
    make(`SCAN${index + 1}`, context => {
      const before = steps[index - 1];
      if (before !== undefined) emitColumns(context, before.row);
      emitDrive(context, step);
      implied(context.code, 'rts');
    }),
  );
  const read = make('READ', emitRead);
  const used = usedSymbols(read.items);
  const enter = make('ENTER', context => emitEntry(context, 'enter', used));
  const start =
    plan.unit.mode === scheme.startMode ? make('START', context => emitEntry(context, 'start', used)) : null;
  const all = usedSymbols(
    [read, enter, ...(start === null ? [] : [start]), ...scan].flatMap(({ items }) => items),
  );
  return {
    unit: plan.unit,
    plan,
    tag,
    ownPrefix,
    read,
    enter,
    start,
    scan,
    cells: cells.all().filter(({ symbol, kind }) => kind === 'fired' || all.has(symbol)),
    lives: livesOf(read.items),
  };
}

/** Cycles of a piece at its worst, JSR and RTS included; `start` as for `worstCycles`. */
export function pieceCycles({ items }: Piece, start: number | null): number {
  return JSR_CYCLES + worstCycles(items, start);
}

export function pieceBranches({ items }: Piece): number {
  return branchCount(items);
}

function createContext(input: UnitInput, cells: Context['cells'], code: Code): Context {
  const { scheme, names, times, outputs, plan } = input;
  const own = outputs.get(plan.unit.mode);
  return {
    firedBytes: byteCount(own),
    scheme,
    names,
    plan,
    code,
    cells,
    outputOf: binding => {
      const output = own?.get(outputKey(binding));
      if (output === undefined) throw new RangeError(`${binding.actionName} has no bit`);
      return output;
    },
    timeOf: binding => times.of(binding).symbol,
    readsOf: binding => times.of(binding).reads,
    largestOf: bindings => times.largest(bindings).symbol,
    lessOne: binding => `${times.of(binding).symbol}-1`,
    isKept: bank => bank.startsWith('K') || (bank === 'I' && scheme.game.latch.value !== 'off'),
  };
}

function keysOfPlan({ map }: Plan) {
  return map.banks.flatMap(({ lines }) => lines.map(({ contact }) => contact)).filter(isKey);
}

function emitRead(context: Context): void {
  const { code, plan } = context;
  const { banks } = plan.map;
  const lastStep = stepsOf(keysOfPlan(plan)).at(-1);
  if (lastStep !== undefined) {
    emitColumns(context, lastStep.row);
    emitScanEnd(context);
  }
  const signals = signalsOf(plan);
  const lines = banks.filter(({ id }) => !id.startsWith('INPT'));
  for (const bank of lines) emitBank(context, bank, signals);
  emitHappenings(context);
  emitPositions(context);
  emitHoldBacks(context);
  emitChannels(context);
  const channelBanks = inBytes(plan.channels).map((_, number) => `D${number}`);
  for (const bank of channelBanks) emitEdges(context, bank, edgesOf(signals, bank));
  emitAllStops(context, signals);
  const late = lines.map(({ id }) => id).filter(bank => needsLast(context, bank, signals));
  for (const bank of late) if (keptWhen(context, bank) === 'after turns') keepLast(context, bank);
  for (const bank of channelBanks) if (needsLast(context, bank, signals)) keepLast(context, bank);
  // Every byte of the mode is written at each read, whatever this unit can fire.
  emitFires(context, context.firedBytes);
  emitMachines(context);
  if (late.includes('B') && keptWhen(context, 'B') === 'last') keepPanel(context);
  implied(code, 'rts');
}

/** Reads a bank and sees what of it counts and what has changed. */
function emitBank(context: Context, bank: Bank, signals: readonly Signal[]): void {
  const { plan } = context;
  readBank(context, bank);
  if (bank.id === 'I') clearLatch(context, bank, usesButtons(plan));
  applyWaiting(context, bank.id);
  emitEdges(context, bank.id, edgesOf(signals, bank.id));
  if (needsLast(context, bank.id, signals) && keptWhen(context, bank.id) === 'at once')
    keepLast(context, bank.id);
}

/**
 * When a bank becomes the one of the read before: a wheel's old code is looked at once more, and a `When` asks
 * for switches at the read before until the end.
 */
function keptWhen(context: Context, bank: string): 'at once' | 'after turns' | 'last' {
  if (isAsked(context.plan, bank)) return 'last';
  return hasWheel(context, bank) ? 'after turns' : 'at once';
}

const isAsked = ({ askedSwitches }: Plan, bank: string) => bank === 'B' && askedSwitches !== 0;

function hasWheel(context: Context, bank: string): boolean {
  return turnedContacts(context).some(({ source }) => source.kind === 'wheel' && source.spot.bank === bank);
}

function keepPanel(context: Context): void {
  remark(context.code, 'the panel is kept for the next read');
  keepLast(context, 'B');
}

/** All that is asked of bits. */
function signalsOf({ fires, happenings, holdBacks, machines }: Plan): readonly Signal[] {
  const presses = machines
    .filter(({ kind }) => kind === 'double tap')
    .map(({ bank, mask }) => ({ bank, mask, kind: 'new' as SignalKind }));
  return [
    ...fires.map(({ signal }) => signal),
    ...happenings.flatMap(({ source }) => (source.kind === 'signal' ? [source.signal] : [])),
    ...holdBacks.flatMap(({ begins }) => (begins.kind === 'signal' ? [begins.signal] : [])),
    ...presses,
  ];
}

function needsLast(context: Context, bank: string, signals: readonly Signal[]): boolean {
  return edgesOf(signals, bank).size > 0 || hasWheel(context, bank) || isAsked(context.plan, bank);
}

function usesButtons({ unit }: Plan): boolean {
  const contacts = uniqueContacts(unit.bindings.flatMap(({ parts }) => parts));
  return contacts.some(
    contact =>
      contact.kind === 'control' &&
      contact.control.wiring.kind === 'contact' &&
      contact.control.wiring.line === 'button',
  );
}

/** What is held back and yet would fire by being let go, turned or moved is taken out of its byte. */
function emitAllStops(context: Context, signals: readonly Signal[]): void {
  const { plan } = context;
  inBytes(plan.channels).forEach((list, number) => {
    const bank = `D${number}`;
    if (!hasStops(context, bank)) return;
    remark(context.code, 'what is held back does not fire by being let go');
    emitStops(context, bank, list);
    if (edgesOf(signals, bank).has('let go')) takeOut(context, bank, 'let go');
  });
  inBytes(plan.happenings).forEach((list, number) => {
    if (list.every(({ heldBy }) => heldBy.length === 0)) return;
    remark(context.code, 'what is held back does not fire');
    emitStops(context, `T${number}`, list);
    takeOut(context, `T${number}`, 'on');
  });
}

function takeOut(context: Context, bank: string, kind: SignalKind): void {
  const { code } = context;
  const cell = kind === 'on' ? nowCell(context, bank) : signalCell(context, { bank, kind, mask: 0 });
  memory(code, 'lda', stopCell(context, bank));
  value(code, 'eor', 0xff);
  memory(code, 'and', cell);
  memory(code, 'sta', cell);
}

function usedSymbols(items: readonly Item[]): ReadonlySet<string> {
  return new Set(items.flatMap(item => (item.kind === 'instruction' ? [item.operand] : [])));
}

function livesOf(items: readonly Item[]) {
  const lives = new Map<string, { first: number; last: number }>();
  items.forEach((item, index) => {
    if (item.kind !== 'instruction') return;
    const life = lives.get(item.operand) ?? { first: index, last: index };
    lives.set(item.operand, { ...life, last: index });
  });
  return lives;
}
