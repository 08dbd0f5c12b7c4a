import type { RamByte } from './documents/bits/ram-byte.js';
import type { ModeRam } from './documents/bits/ram-view.js';
import type { RoutineFacts } from './documents/bits/view.js';
import type { HandoffFacts, ModeFacts, OutputFact, RamFact } from './handoff/index.js';

/** What the bit-level appendix says of the generated reading routine. */
export function routineFacts(facts: HandoffFacts): RoutineFacts {
  const { modes, sharedRam, ramBytes, outputs, howToRunVectors } = facts;
  return {
    vectorsGuide: howToRunVectors,
    costs: worstCosts(modes),
    ram: {
      about: 'The layout of the reading routine in read.asm.',
      shared: sharedRam.map(fact => byteOf(fact, '')),
      fired: firedBytes(sharedRam, outputs),
      modes: joinAlike(modes),
      total: ramBytes,
    },
  };
}

/** The bytes of fired actions bit by bit, for each mode. */
function firedBytes(sharedRam: readonly RamFact[], outputs: readonly OutputFact[]): readonly ModeRam[] {
  const cells = sharedRam.filter(({ kind }) => kind === 'fired');
  return [...new Set(outputs.map(({ mode }) => mode))].map(mode => ({
    mode,
    prefixes: [],
    bytes: cells.flatMap((cell, byte) => {
      const own = outputs.filter(output => output.mode === mode && output.byte === byte);
      if (own.length === 0) return [];
      const bits = [7, 6, 5, 4, 3, 2, 1, 0].map(bit => firedText(own.find(output => output.bit === bit)));
      return [{ ...byteOf(cell, ''), bits }];
    }),
  }));
}

function firedText(output: OutputFact | undefined): string {
  if (output === undefined) return '';
  const { player, action, direction } = output;
  return `${player === 'anyone' ? '' : `${player}: `}${action}${direction === null ? '' : ` ${direction}`}`;
}

/** The dearest of the console classes for each mode and seats row. */
function worstCosts(modes: readonly ModeFacts[]): RoutineFacts['costs'] {
  const worst = new Map<string, RoutineFacts['costs'][number]>();
  for (const { mode, seats, cycles, moreElsewhere, romBytes } of modes) {
    const key = JSON.stringify([mode, seats]);
    const known = worst.get(key);
    worst.set(key, {
      mode,
      seats,
      cycles: Math.max(known?.cycles ?? 0, cycles + moreElsewhere),
      bytes: Math.max(known?.bytes ?? 0, romBytes),
    });
  }
  return [...worst.values()];
}

/** Modes and seats rows that use the bytes in the same way, their symbols differing in how they begin, are told once. */
function joinAlike(modes: readonly ModeFacts[]): readonly ModeRam[] {
  const joined = new Map<
    string,
    {
      readonly names: string[];
      readonly consoles: string[];
      readonly prefixes: string[];
      readonly bytes: readonly RamByte[];
    }
  >();
  for (const { mode, seats, consoles, ram } of modes) {
    if (ram.length === 0) continue;
    const prefix = prefixOf(ram);
    const bytes = ram.map(fact => byteOf(fact, prefix));
    const key = JSON.stringify(bytes);
    const known = joined.get(key) ?? { names: [], consoles: [], prefixes: [], bytes };
    joined.set(key, known);
    const name = `${mode}, ${seats}`;
    if (!known.names.includes(name)) known.names.push(name);
    known.consoles.push(...consoles.filter(console => !known.consoles.includes(console)));
    if (prefix !== '' && !known.prefixes.includes(prefix)) known.prefixes.push(prefix);
  }
  const all = new Set(modes.flatMap(({ consoles }) => consoles)).size;
  return [...joined.values()].map(({ names, consoles, prefixes, bytes }) => ({
    mode: `${names.join('; ')}${consoles.length === all ? '' : ` (${consoles.join(', ')})`}`,
    prefixes,
    bytes,
  }));
}

/** How the symbols of a mode all begin, up to a `__`: `LH__QUAY_DUET__`; empty where they do not. */
function prefixOf(ram: readonly RamFact[]): string {
  const first = ram[0]?.symbol ?? '';
  const prefix = first.slice(0, first.lastIndexOf('__') + 2);
  return first.includes('__') && ram.every(({ symbol }) => symbol.startsWith(prefix)) ? prefix : '';
}

function byteOf({ symbol, offset, holds }: RamFact, prefix: string): RamByte {
  return { offset, name: symbol.slice(prefix.length), holds, bits: [] };
}
