import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** One piece of source to assemble into the program: its own folder, its own symbols. */
export interface Part {
  /** Symbols given before the source: `RND__PAL` → 1. */
  readonly defines: Readonly<Record<string, number>>;
  readonly files: Readonly<Record<string, string>>;
  /** The one of them that is assembled. */
  readonly main: string;
}

export interface Program {
  /** The whole address space as loaded. */
  readonly image: Uint8Array;
  readonly labels: ReadonlyMap<string, number>;
  /** For sim65. */
  readonly file: string;
  readonly remove: () => void;
}

/** A call of a subroutine, with the bytes written before it. */
export interface Call {
  readonly address: number;
  /** Address and value; at most 20. */
  readonly pokes: readonly (readonly [number, number])[];
}

/** Bytes from $80 that the harness gives back after each call. */
export const WINDOW_START = 0x80;
export const WINDOW_BYTES = 16;
const RECORD_BYTES = 64;
const MOST_POKES = 20;
const LOAD_ADDRESS = 0x0300;
const HEADER_BYTES = 12;

/**
 * Registers are RAM here: sim65 has nothing but RAM, so $0280 and the INPT addresses take what is written to
 * them. The program lies above them. Header and calls as in cc65's own sim65 library: read is $FFF6, write $FFF7,
 * exit $FFF9; A and X give the count, two words on the C stack (whose pointer is at zero page $F0) the rest.
 */
const CONFIG = `MEMORY {
  ZP: file = "", start = $0000, size = $0100;
  HEADER: file = %O, start = $0000, size = $000C;
  MAIN: file = %O, define = yes, start = $0300, size = $FC00;
}
SEGMENTS {
  EXEHDR: load = HEADER, type = ro;
  HARNESS: load = MAIN, type = rw;
  CODE: load = MAIN, type = rw, align = $100, optional = yes;
}
`;

const HARNESS = `
.segment "EXEHDR"
        .byte "sim65", 2, 0, $F0
        .addr $0300, harness
.segment "HARNESS"
record: .res ${RECORD_BYTES}
harness:
        cld
        ldx #$FF
        txs
next:   lda #<readArguments
        sta $F0
        lda #>readArguments
        sta $F1
        lda #<${RECORD_BYTES}
        ldx #0
        jsr $FFF6
        cmp #${RECORD_BYTES}
        beq :+
        lda #0
        jmp $FFF9
:       ldy #0
        ldx record+2
        beq called
poke:   lda record+3,y
        sta $F2
        lda record+4,y
        sta $F3
        sty $F4
        lda record+5,y
        ldy #0
        sta ($F2),y
        lda $F4
        clc
        adc #3
        tay
        dex
        bne poke
called: jsr enter
        lda #<writeArguments
        sta $F0
        lda #>writeArguments
        sta $F1
        lda #<${WINDOW_BYTES}
        ldx #0
        jsr $FFF7
        jmp next
enter:  jmp (record)
readArguments: .addr record, 0
writeArguments: .addr ${WINDOW_START}, 1
.segment "CODE"
`;

/** Assembles parts with ca65 and links them with ld65. */
export function assemble(ca65: string, ld65: string, parts: readonly Part[]): Program {
  const folder = mkdtempSync(join(tmpdir(), 'leverleaf-sim65-'));
  const at = (name: string) => join(folder, name);
  writeFileSync(at('sim.cfg'), CONFIG);
  writeFileSync(at('harness.s'), HARNESS);
  execFileSync(ca65, ['-o', at('harness.o'), at('harness.s')], { stdio: 'pipe' });
  const objects = parts.map((part, number) => {
    const own = (name: string) => at(`p${number}-${name}`);
    const renamed = Object.keys(part.files);
    for (const [name, text] of Object.entries(part.files))
      writeFileSync(own(name), rename(text, renamed, number));
    const defines = Object.entries(part.defines).flatMap(([name, value]) => ['-D', `${name}=${value}`]);
    execFileSync(ca65, ['-g', ...defines, '-o', own('o'), own(part.main)], { cwd: folder, stdio: 'pipe' });
    return own('o');
  });
  const file = at('program');
  execFileSync(ld65, ['-C', at('sim.cfg'), '-Ln', at('labels'), '-o', file, at('harness.o'), ...objects], {
    stdio: 'pipe',
  });
  const image = new Uint8Array(0x10000);
  image.set(readFileSync(file).subarray(HEADER_BYTES), LOAD_ADDRESS);
  const labels = readLabels(readFileSync(at('labels'), 'utf8'));
  return { image, labels, file, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

function rename(text: string, names: readonly string[], number: number): string {
  return names.reduce((changed, name) => changed.replaceAll(`"${name}"`, `"p${number}-${name}"`), text);
}

function readLabels(text: string): ReadonlyMap<string, number> {
  const found = [...text.matchAll(/^al ([0-9A-F]+) \.(\S+)$/gm)];
  return new Map(found.map(([, address, name]) => [name ?? '', Number.parseInt(address ?? '', 16)]));
}

export interface Run {
  /** Of each call: the window's bytes after it. */
  readonly windows: readonly Uint8Array[];
  /** Of the whole run, harness included. */
  readonly cycles: number;
}

/** Runs the calls one after the other under sim65. */
export function runCalls(sim65: string, program: Program, calls: readonly Call[]): Run {
  const input = Buffer.alloc(calls.length * RECORD_BYTES);
  calls.forEach(({ address, pokes }, index) => {
    if (pokes.length > MOST_POKES) throw new RangeError('too many pokes for a record');
    const bytes = [address & 0xff, address >> 8, pokes.length];
    for (const [where, value] of pokes) bytes.push(where & 0xff, where >> 8, value);
    input.set(bytes, index * RECORD_BYTES);
  });
  const done = spawnSync(sim65, ['-c', program.file], { input, maxBuffer: 1 << 28 });
  if (done.status !== 0) throw new Error(`sim65 ended with ${done.status}: ${done.stderr.toString()}`);
  const cycles = /([0-9]+) cycles/.exec(
    `${done.stderr.toString()}${done.stdout.subarray(calls.length * WINDOW_BYTES).toString()}`,
  );
  const windows = calls.map((_, index) =>
    Uint8Array.from(done.stdout.subarray(index * WINDOW_BYTES, (index + 1) * WINDOW_BYTES)),
  );
  return { windows, cycles: Number(cycles?.[1] ?? Number.NaN) };
}
