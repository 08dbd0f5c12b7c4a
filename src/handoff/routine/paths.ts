import { type Guard, type Instruction, type Item, isBranch, type LineState } from './code.js';

/**
 * Cycles of the longest way through the code, from its first instruction to the last of its ways out, RTS
 * included. All branches go forward, so the ways are finite; a way that would need one setting to have two
 * values at once is not one.
 *
 * @param start address of the first instruction within its page, 0 to 255: a branch into another page costs one
 *   cycle more; null where it is not known, and every taken branch is counted as one
 */
export function worstCycles(items: readonly Item[], start: number | null): number {
  const program = linkProgram(items, start);
  return valuations(items).reduce((worst, known) => Math.max(worst, longest(program, known)), 0);
}

/** Branches that can go wrong by one cycle when the code is not where it was counted. */
export function branchCount(items: readonly Item[]): number {
  return items.filter(item => item.kind === 'instruction' && isBranch(item)).length;
}

interface Step {
  readonly instruction: Instruction;
  /** Index of the step a branch or jump goes to; null for other instructions. */
  readonly target: number | null;
  /** Cycles a taken branch adds. */
  readonly taken: number;
}

const PAGE = 256;

function linkProgram(items: readonly Item[], start: number | null): readonly Step[] {
  const labels = new Map<string, { index: number; address: number }>();
  const placed: { instruction: Instruction; next: number }[] = [];
  let address = start ?? 0;
  for (const item of items) {
    if (item.kind === 'label') labels.set(item.name, { index: placed.length, address });
    if (item.kind !== 'instruction') continue;
    address += item.bytes;
    placed.push({ instruction: item, next: address });
  }
  return placed.map(({ instruction, next }) => {
    const target = instruction.target === null ? undefined : labels.get(instruction.target);
    if (target === undefined) return { instruction, target: null, taken: 0 };
    const crosses = start === null || Math.floor(target.address / PAGE) !== Math.floor(next / PAGE);
    return { instruction, target: target.index, taken: isBranch(instruction) ? (crosses ? 2 : 1) : 0 };
  });
}

type Valuation = ReadonlyMap<string, number>;

/** From the last step to the first: the longest way on from each. */
function longest(program: readonly Step[], known: Valuation): number {
  const ahead: number[] = new Array(program.length + 1).fill(0);
  for (let index = program.length - 1; index >= 0; index--) {
    const step = program[index];
    if (step !== undefined) ahead[index] = step.instruction.cycles + onward(step, index, ahead, known);
  }
  return ahead[0] ?? 0;
}

function onward({ instruction, target, taken }: Step, index: number, ahead: number[], known: Valuation) {
  const through = ahead[index + 1] ?? 0;
  if (instruction.mnemonic === 'rts') return 0;
  if (target === null) return through;
  if (target <= index) throw new RangeError(`${instruction.mnemonic} ${instruction.operand} goes back`);
  const away = taken + (ahead[target] ?? 0);
  if (instruction.mnemonic === 'jmp') return away;
  const decided = instruction.guard === null ? null : isTaken(instruction.guard, known);
  if (decided === null) return Math.max(through, away);
  return decided ? away : through;
}

/** Null where the valuation does not decide it. */
function isTaken(guard: Guard, known: Valuation): boolean | null {
  if (guard.kind === 'setting') {
    const number = known.get(guard.setting);
    if (number === undefined) return null;
    return (number === guard.value) === (guard.takenWhen === 'equal');
  }
  const levels = guard.lines.map(line => known.get(line));
  const isThere = isInState(guard.unless, levels);
  return isThere === false ? true : isThere === true && guard.exact ? false : null;
}

/** Null where a line is not known and it depends on that. */
function isInState(state: LineState, levels: readonly (number | undefined)[]): boolean | null {
  const allowed = ALLOWED[state];
  if (levels.some(level => level !== undefined && !allowed.includes(level))) return false;
  if (levels.includes(undefined)) return null;
  return state !== 'just engaged' || levels.includes(JUST_ENGAGED);
}

/** Above this, settings and lines are taken as free of one another: still never too low. */
const MOST_VALUATIONS = 1024;
/** Stands for every value that no branch asks for. */
const OTHER = -1;
const LET_GO = 0;
const ENGAGED_BEFORE = 1;
const JUST_ENGAGED = 2;
const ALLOWED: Readonly<Record<LineState, readonly number[]>> = {
  engaged: [ENGAGED_BEFORE, JUST_ENGAGED],
  'let go': [LET_GO],
  'just engaged': [ENGAGED_BEFORE, JUST_ENGAGED],
  'engaged before': [ENGAGED_BEFORE],
};

/** Every way in which the things that more than one branch asks for can be. */
function valuations(items: readonly Item[]): readonly Valuation[] {
  let all: Valuation[] = [new Map()];
  for (const [name, { values, count }] of askedOf(items)) {
    if (count < 2 || all.length * values.size > MOST_VALUATIONS) continue;
    all = all.flatMap(known => [...values].map(number => new Map([...known, [name, number]])));
  }
  return all;
}

/** Settings first, then lines; how many branches ask for each, and for which values. */
function askedOf(items: readonly Item[]) {
  const guards = items.flatMap(item => (item.kind === 'instruction' ? (item.guard ?? []) : []));
  const asked = new Map<string, { readonly values: Set<number>; count: number }>();
  const ask = (name: string, ...values: readonly number[]) => {
    const known = asked.get(name) ?? { values: new Set<number>(), count: 0 };
    for (const number of values) known.values.add(number);
    asked.set(name, known);
    known.count++;
  };
  for (const guard of guards) if (guard.kind === 'setting') ask(guard.setting, OTHER, guard.value);
  for (const guard of guards)
    if (guard.kind === 'lines')
      for (const line of guard.lines) ask(line, LET_GO, ENGAGED_BEFORE, JUST_ENGAGED);
  return asked;
}
