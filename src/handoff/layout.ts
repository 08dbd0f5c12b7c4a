import type { UnnamedHandoff as Handoff, PlacedPiece, UnitCost } from './model.js';
import { ramOf } from './ram.js';
import { type Piece, pieceBranches, pieceCycles, type UnitRoutine } from './routine/routine.js';
import type { ConsoleClass } from './units.js';

/** Bytes of the table of wheel steps, which lies first. */
export const WHEEL_TABLE_BYTES = 16;

/** Everything that is assembled for one class of consoles, in order. */
export function layOutClass(handoff: Handoff, consoles: ConsoleClass): readonly UnitCost[] {
  const own = handoff.routines.filter(({ unit }) => unit.consoles === consoles);
  const codes = sharedCode(own);
  const placed = new Map<Piece, PlacedPiece>();
  let offset = usesWheel(handoff) ? WHEEL_TABLE_BYTES : 0;
  for (const routine of own) {
    if (codes.get(routine) !== routine) continue;
    for (const piece of piecesOf(routine)) {
      const aliases = own
        .filter(other => other !== routine && codes.get(other) === routine)
        .flatMap(other => aliasOf(piece, routine, other));
      const start = offset % 256;
      const cycles = pieceCycles(piece, start);
      placed.set(piece, { piece, aliases, offset, cycles, moreElsewhere: pieceBranches(piece) });
      offset += piece.bytes;
    }
  }
  return own.map(routine => costOf(handoff, routine, codes.get(routine) ?? routine, placed));
}

export function piecesOf({ scan, read, enter, start }: UnitRoutine): readonly Piece[] {
  return [...scan, read, enter, ...(start === null ? [] : [start])];
}

function costOf(
  { ram }: Handoff,
  routine: UnitRoutine,
  code: UnitRoutine,
  placed: ReadonlyMap<Piece, PlacedPiece>,
): UnitCost {
  const at = (piece: Piece): PlacedPiece => {
    const found = placed.get(piece);
    if (found === undefined) throw new RangeError(`${piece.label} has no place`);
    return found;
  };
  const scan = code.scan.map(at);
  const read = at(code.read);
  return {
    routine,
    code,
    read,
    enter: at(code.enter),
    start: code.start === null ? null : at(code.start),
    scan,
    cycles: [...scan, read].reduce((sum, { cycles }) => sum + cycles, 0),
    romBytes: piecesOf(code).reduce((sum, { bytes }) => sum + bytes, 0),
    ramBytes: ramOf(ram, code),
  };
}

/** Seats rows of one mode whose code is the same but for its labels share it. */
function sharedCode(routines: readonly UnitRoutine[]): ReadonlyMap<UnitRoutine, UnitRoutine> {
  const first = new Map<string, UnitRoutine>();
  const codes = new Map<UnitRoutine, UnitRoutine>();
  for (const routine of routines) {
    const key = `${routine.unit.mode.name}\n${textOf(routine)}`;
    const code = first.get(key) ?? routine;
    first.set(key, code);
    codes.set(routine, code);
  }
  return codes;
}

function textOf(routine: UnitRoutine): string {
  const lines = piecesOf(routine).flatMap(({ items }) =>
    items.map(item => (item.kind === 'instruction' ? `${item.mnemonic} ${item.operand}` : item.kind)),
  );
  return lines.join('\n').replaceAll(routine.ownPrefix, '');
}

function aliasOf(piece: Piece, from: UnitRoutine, to: UnitRoutine): readonly string[] {
  const index = piecesOf(from).indexOf(piece);
  const other = piecesOf(to)[index];
  return other === undefined ? [] : [other.label];
}

export function usesWheel({ routines }: Handoff): boolean {
  return routines.some(({ plan }) => plan.happenings.some(({ source }) => source.kind === 'wheel'));
}
