import { type Instruction, type Item, isBranch } from './code.js';

/**
 * Takes out labels nothing goes to, loads of what the accumulator holds already, and then stores to scratch
 * bytes that nothing reads.
 */
export function tidy(items: readonly Item[], isScratch: (symbol: string) => boolean): readonly Item[] {
  return dropDeadStores(dropRepeatedLoads(dropIdleLabels(items)), isScratch);
}

function dropIdleLabels(items: readonly Item[]): readonly Item[] {
  const targets = new Set(items.flatMap(item => (item.kind === 'instruction' ? (item.target ?? []) : [])));
  return items.filter(item => item.kind !== 'label' || targets.has(item.name));
}

function dropRepeatedLoads(items: readonly Item[]): readonly Item[] {
  let held: string | null = null;
  return items.filter(item => {
    if (item.kind === 'remark') return true;
    if (item.kind === 'label') {
      held = null;
      return true;
    }
    if (item.mnemonic === 'lda' && item.operand === held) return false;
    held = item.mnemonic === 'sta' ? item.operand : null;
    return true;
  });
}

function dropDeadStores(items: readonly Item[], isScratch: (symbol: string) => boolean): readonly Item[] {
  const read = new Set(
    items.flatMap(item => (item.kind === 'instruction' && item.mnemonic !== 'sta' ? [item.operand] : [])),
  );
  return items.filter(
    item =>
      item.kind !== 'instruction' ||
      item.mnemonic !== 'sta' ||
      !isScratch(item.operand) ||
      read.has(item.operand),
  );
}

const OPPOSITE: Readonly<Record<string, Instruction['mnemonic']>> = {
  beq: 'bne',
  bne: 'beq',
  bcc: 'bcs',
  bcs: 'bcc',
  bmi: 'bpl',
  bpl: 'bmi',
  bvc: 'bvs',
  bvs: 'bvc',
};
/** A branch reaches 127 bytes ahead of the instruction behind it (M). */
const REACH = 127;

/** A branch that does not reach becomes the opposite branch over a JMP. */
export function relax(items: readonly Item[], fresh: () => string): readonly Item[] {
  const addresses = new Map<string, number>();
  const ends: number[] = [];
  let address = 0;
  for (const item of items) {
    if (item.kind === 'label') addresses.set(item.name, address);
    if (item.kind === 'instruction') address += item.bytes;
    ends.push(address);
  }
  let isChanged = false;
  const relaxed = items.flatMap((item, index): readonly Item[] => {
    if (item.kind !== 'instruction' || !isBranch(item) || item.target === null) return [item];
    const distance = (addresses.get(item.target) ?? 0) - (ends[index] ?? 0);
    if (distance <= REACH) return [item];
    isChanged = true;
    return overJump(item, fresh());
  });
  return isChanged ? relax(relaxed, fresh) : items;
}

function overJump(item: Instruction, next: string): readonly Item[] {
  const mnemonic = OPPOSITE[item.mnemonic] ?? item.mnemonic;
  // The opposite branch has no guard: a worst case then only gets less exact, never too low.
  return [
    { ...item, mnemonic, operand: next, target: next, guard: null },
    { ...item, mnemonic: 'jmp', bytes: 3, cycles: 3, guard: null, comment: '' },
    { kind: 'label', name: next },
  ];
}
