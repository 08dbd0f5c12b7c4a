/**
 * The routine as data: each instruction knows its bytes and cycles, so that cost and worst case are computed
 * from the same list that is printed. Cycles and bytes are those of the MCS6500 manual (M).
 */
export type Item = Instruction | Label | Remark;

export interface Label {
  readonly kind: 'label';
  readonly name: string;
}

export interface Remark {
  readonly kind: 'remark';
  readonly text: string;
}

export interface Instruction {
  readonly kind: 'instruction';
  readonly mnemonic: Mnemonic;
  readonly operand: string;
  readonly bytes: number;
  /** Cycles without a taken branch. */
  readonly cycles: number;
  /** Label a branch or JMP goes to. */
  readonly target: string | null;
  readonly guard: Guard | null;
  readonly comment: string;
}

/**
 * What a branch depends on, so that two of them can be told to exclude each other: on a setting's number, or on
 * lines. A branch on lines is taken unless they are all as `unless` says; where it is not `exact` it may be
 * taken even so.
 */
export type Guard =
  | {
      readonly kind: 'setting';
      readonly setting: string;
      readonly value: number;
      readonly takenWhen: 'equal' | 'different';
    }
  | {
      readonly kind: 'lines';
      readonly lines: readonly string[];
      readonly unless: LineState;
      readonly exact: boolean;
    };

/** `just engaged`: all are engaged, at least one of them since this read; `engaged before`: all, and none since this read. */
export type LineState = 'engaged' | 'let go' | 'just engaged' | 'engaged before';

type Branch = 'beq' | 'bne' | 'bcc' | 'bcs' | 'bmi' | 'bpl' | 'bvc' | 'bvs';
type Implied = 'asl' | 'lsr' | 'rol' | 'ror' | 'clc' | 'sec' | 'inx' | 'dex' | 'tax' | 'txa' | 'rts';
type Data =
  | 'lda'
  | 'ldx'
  | 'sta'
  | 'stx'
  | 'and'
  | 'ora'
  | 'eor'
  | 'cmp'
  | 'cpx'
  | 'bit'
  | 'adc'
  | 'sbc'
  | 'inc'
  | 'dec'
  | 'rol'
  | 'ror'
  | 'asl'
  | 'lsr';
export type Mnemonic = Branch | Implied | Data | 'jmp' | '.byte';

const RTS_CYCLES = 6;
const IMPLIED_CYCLES = 2;
/** Instructions that read, change and write back a byte take two cycles more. */
const READ_MODIFY_WRITE: ReadonlySet<Mnemonic> = new Set(['inc', 'dec', 'rol', 'ror', 'asl', 'lsr']);

/** A byte the routine works on: its symbol, and where it lies. */
export interface Cell {
  readonly symbol: string;
  readonly reach: 'zero page' | 'absolute';
}

/** A list of items under construction. */
export interface Code {
  readonly items: Item[];
  /** A label that no other code of this routine has. */
  readonly fresh: () => string;
}

/** @param prefix begins each label the code makes */
export function createCode(prefix: string): Code {
  let count = 0;
  return { items: [], fresh: () => `${prefix}${(count++).toString(36)}` };
}

const push = (
  code: Code,
  item: Partial<Instruction> & Pick<Instruction, 'mnemonic' | 'bytes' | 'cycles'>,
) => {
  code.items.push({ kind: 'instruction', operand: '', target: null, guard: null, comment: '', ...item });
};

/** An instruction on a byte of memory. */
export function memory(code: Code, mnemonic: Data, cell: Cell, comment = ''): void {
  const near = cell.reach === 'zero page';
  const extra = READ_MODIFY_WRITE.has(mnemonic) ? 2 : 0;
  push(code, {
    mnemonic,
    operand: cell.symbol,
    bytes: near ? 2 : 3,
    cycles: (near ? 3 : 4) + extra,
    comment,
  });
}

/** An instruction on a value: a number, or a symbol with its own sign (`<NAME`). */
export function value(code: Code, mnemonic: Data, operand: number | string, comment = ''): void {
  const text = typeof operand === 'number' ? hex(operand) : operand;
  push(code, { mnemonic, operand: `#${text}`, bytes: 2, cycles: 2, comment });
}

export function implied(code: Code, mnemonic: Implied, comment = ''): void {
  const cycles = mnemonic === 'rts' ? RTS_CYCLES : IMPLIED_CYCLES;
  push(code, { mnemonic, bytes: 1, cycles, comment });
}

/** A shift of the accumulator, with no operand written: accepted everywhere as `asl`. */
export function branch(
  code: Code,
  mnemonic: Branch,
  target: string,
  comment = '',
  guard: Guard | null = null,
): void {
  push(code, { mnemonic, operand: target, target, bytes: 2, cycles: 2, guard, comment });
}

export function jump(code: Code, target: string): void {
  push(code, { mnemonic: 'jmp', operand: target, target, bytes: 3, cycles: 3 });
}

/** `LDA table,X`; the table must not cross a page. */
export function indexed(code: Code, mnemonic: 'lda', table: string, comment = ''): void {
  push(code, { mnemonic, operand: `${table},x`, bytes: 3, cycles: 4, comment });
}

export function label(code: Code, name: string): void {
  code.items.push({ kind: 'label', name });
}

export function remark(code: Code, text: string): void {
  code.items.push({ kind: 'remark', text });
}

export function hex(number: number): string {
  return `$${number.toString(16).toUpperCase().padStart(2, '0')}`;
}

export function isBranch({ mnemonic }: Instruction): boolean {
  return mnemonic.length === 3 && mnemonic.startsWith('b') && mnemonic !== 'bit';
}

export function bytesOf(items: readonly Item[]): number {
  return items.reduce((sum, item) => sum + (item.kind === 'instruction' ? item.bytes : 0), 0);
}
