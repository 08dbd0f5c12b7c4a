import type { BuiltFile } from '../documents/document.js';
import type { Finding } from '../findings/finding.js';
import type { Scheme } from '../language/model.js';
import { writeHeader } from './c-header.js';
import { writeControlsJson } from './controls-json.js';
import { createHandoff } from './create.js';
import { writeInclude } from './include.js';
import type { Handoff } from './model.js';
import { writeReadAsm } from './read-asm.js';
import type { CellKind } from './routine/cells.js';
import { vectorsGuide } from './vectors/guide.js';
import { makeVectors } from './vectors/vectors.js';
import { vectorEntries, writeVectorsCsv, writeVectorsJson } from './vectors/write.js';

export { CONTROLS_SCHEMA } from './controls.schema.js';

/** What the programmer's files are made from. */
export interface HandoffInput {
  readonly scheme: Scheme;
  /** Accepted findings give vectors of their own. */
  readonly findings: readonly Finding[];
}

/** The programmer's files of a scheme without errors; the same scheme gives the same bytes. */
export function writeHandoff({ scheme, findings }: HandoffInput): readonly BuiltFile[] {
  const handoff = createHandoff(scheme);
  const entries = vectorEntries(makeVectors(handoff, findings));
  return [
    { name: 'controls.inc', content: writeInclude(handoff) },
    { name: 'controls.h', content: writeHeader(handoff) },
    { name: 'controls.json', content: writeControlsJson(handoff) },
    { name: 'read.asm', content: writeReadAsm(handoff) },
    { name: 'vectors.json', content: writeVectorsJson(handoff, entries) },
    { name: 'vectors.csv', content: writeVectorsCsv(entries) },
  ];
}

/** What the bit appendix tells of the programmer's files. */
export interface HandoffFacts {
  readonly modes: readonly ModeFacts[];
  /** Bytes that all modes share, and of all together. */
  readonly sharedRam: readonly RamFact[];
  readonly ramBytes: number;
  /** The fired bits of every mode. */
  readonly outputs: readonly OutputFact[];
  readonly howToRunVectors: readonly string[];
}

/** One mode in one seats row on one class of consoles. */
export interface ModeFacts {
  readonly mode: string;
  readonly seats: string;
  readonly consoles: readonly string[];
  /** At its worst, JSR, RTS and the steps of a keypad scan included. */
  readonly cycles: number;
  /** Added at most where the code does not begin on a page. */
  readonly moreElsewhere: number;
  readonly romBytes: number;
  /** Shared bytes included. */
  readonly ramBytes: number;
  readonly read: string;
  readonly enter: string;
  readonly start: string | null;
  readonly scan: readonly string[];
  readonly ram: readonly RamFact[];
}

export interface RamFact {
  readonly symbol: string;
  /** From the first byte of the routine's RAM. */
  readonly offset: number;
  readonly kind: CellKind;
  readonly holds: string;
}

export interface OutputFact {
  readonly mode: string;
  readonly action: string;
  readonly player: string;
  readonly direction: string | null;
  readonly symbol: string;
  readonly byte: number;
  readonly bit: number;
}

export function handoffFacts(scheme: Scheme): HandoffFacts {
  const handoff = createHandoff(scheme);
  const { ram, outputs } = handoff;
  return {
    modes: modeFacts(handoff),
    sharedRam: ram.shared,
    ramBytes: ram.size,
    outputs: [...outputs].flatMap(([mode, own]) =>
      [...own.values()].map(({ actionName, player, direction, symbol, byte, bit }) => ({
        mode: mode.name,
        action: actionName,
        player,
        direction,
        symbol,
        byte,
        bit,
      })),
    ),
    howToRunVectors: vectorsGuide(handoff),
  };
}

function modeFacts(handoff: Handoff): readonly ModeFacts[] {
  const costs = handoff.costs.flatMap(({ units }) => units);
  return costs.map(({ routine, code, cycles, romBytes, ramBytes, read, scan }) => ({
    mode: routine.unit.mode.name,
    seats: routine.unit.seats.name,
    consoles: routine.unit.consoles.profiles.map(({ name }) => name),
    cycles,
    moreElsewhere: [read, ...scan].reduce((sum, each) => sum + each.moreElsewhere, 0),
    romBytes,
    ramBytes,
    read: routine.read.label,
    enter: routine.enter.label,
    start: routine.start?.label ?? null,
    scan: routine.scan.map(({ label }) => label),
    ram: handoff.ram.own.get(code) ?? [],
  }));
}
