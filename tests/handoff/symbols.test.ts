import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, describe, expect, test } from 'vitest';
import { createHandoff } from '../../src/handoff/create.js';
import { CONTROLS_SCHEMA, writeHandoff } from '../../src/handoff/index.js';
import { REGISTERS } from '../../src/hardware/registers.js';
import type { Scheme } from '../../src/language/model.js';
import { tool } from '../support/tools.js';
import { exampleSchemes, randomRead, readText } from './schemes.js';

const folder = mkdtempSync(join(tmpdir(), 'leverleaf-symbols-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Names that try to end a comment, a line, a macro, a cell; the language allows some of it, the title all. */
const SLY = readText(`# Sly */ "game" \\\\ : ; ?? \` $FF

It is not nice.

## Game

| Item | Value |
| --- | --- |
| Short name | SLY |
| TV standards | NTSC, PAL |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| -1 | 1 | joystick | keypad |
| O'Neill's row | 2 | joystick | keypad |

## Settings

| Setting | Values | Starts as | Set by |
| --- | --- | --- | --- |
| A-B | -1, 2 | 2 | game |

## Actions

| Action | Say it as |
| --- | --- |
| -x.'y | =HYPERLINK("x") |
| Größe | Ein Wort: mehr; .byte 1 |
| MASK | Nothing |

## Mode: 0.'-

| Who | Action | Control | Gesture | When | Then |
| --- | --- | --- | --- | --- | --- |
| each | -x.'y | stick | hold 1 s | A-B is -1 | A-B: next |
| each | Größe | button | tap under 1 s | | |
| right | MASK | key 5 | press | | |
`);

const schemes: readonly (readonly [string, Scheme])[] = [
  ...exampleSchemes().map(({ name, scheme }) => [name, scheme] as const),
  ['sly names', SLY],
  ...Array.from({ length: 8 }, (_, seed) => [`random ${seed}`, randomRead(seed)] as const),
];

function symbolsOf(scheme: Scheme) {
  return createHandoff(scheme).symbols.flatMap(({ entries }) => entries);
}

const written = new Map(schemes.map(([, scheme]) => [scheme, writeHandoff({ scheme, findings: [] })]));

function fileOf(scheme: Scheme, name: string): string {
  return String(written.get(scheme)?.find(file => file.name === name)?.content);
}

interface Assembler {
  readonly name: string;
  readonly source: (names: readonly string[]) => string;
  readonly run: (source: string, output: string) => void;
}

const words = (directive: string) => (names: readonly string[]) =>
  names.map(name => `        ${directive} ${name}`);
const LINKER =
  'MEMORY { M: start = $1000, size = $8000, file = %O; } SEGMENTS { CODE: load = M, type = ro; }';

/** Four assemblers of Debian; each writes every symbol as a word of two bytes, the low one first. */
const ASSEMBLERS: readonly Assembler[] = [
  {
    name: 'ca65',
    source: names => ['.include "controls.inc"', '.segment "CODE"', ...words('.word')(names), ''].join('\n'),
    run: (source, output) => {
      writeFileSync(join(folder, 'link.cfg'), LINKER);
      execFileSync(tool('ca65'), ['-o', `${source}.o`, source], { cwd: folder, stdio: 'pipe' });
      execFileSync(tool('ld65'), ['-C', 'link.cfg', '-o', output, `${source}.o`], {
        cwd: folder,
        stdio: 'pipe',
      });
    },
  },
  {
    name: '64tass',
    source: names => ['        .include "controls.inc"', ...words('.word')(names), ''].join('\n'),
    run: (source, output) => {
      execFileSync(tool('64tass'), ['-q', '-a', '-b', '-o', output, source], { cwd: folder, stdio: 'pipe' });
    },
  },
  {
    name: 'xa',
    source: names => ['#include "controls.inc"', '* = $1000', ...words('.word')(names), ''].join('\n'),
    run: (source, output) => {
      execFileSync(tool('xa'), ['-o', output, source], { cwd: folder, stdio: 'pipe' });
    },
  },
  {
    name: 'acme',
    source: names => ['!src "controls.inc"', '* = $1000', ...words('!word')(names), ''].join('\n'),
    run: (source, output) => {
      execFileSync(tool('acme'), ['-f', 'plain', '-o', output, source], { cwd: folder, stdio: 'pipe' });
    },
  },
];

describe.each(schemes)('%s', (_, scheme) => {
  const symbols = symbolsOf(scheme);

  test.each(ASSEMBLERS)('controls.inc gives its values in $name', ({ name, source, run }) => {
    writeFileSync(join(folder, 'controls.inc'), fileOf(scheme, 'controls.inc'));
    writeFileSync(join(folder, `${name}.s`), source(symbols.map(symbol => symbol.name)));
    run(`${name}.s`, `${name}.bin`);
    const bytes = readFileSync(join(folder, `${name}.bin`));
    expect(symbols.map((symbol, index) => [symbol.name, bytes.readUInt16LE(2 * index)])).toEqual(
      symbols.map(symbol => [symbol.name, symbol.value]),
    );
  });

  test.each([
    ['gcc', ['-std=c89', '-Wall', '-Wextra', '-pedantic', '-Werror', '-c', '-o', 'c.o']],
    ['cc65', ['--standard', 'c89', '-t', 'none', '-W', 'error', '-o', 'c.s']],
  ])('controls.h compiles with %s without a warning', (compiler, options) => {
    writeFileSync(join(folder, 'controls.h'), fileOf(scheme, 'controls.h'));
    const checks = symbols.map(({ name, value }) => `#if ${name} != ${value}\n#error ${name}\n#endif`);
    writeFileSync(
      join(folder, 'c.c'),
      `#include "controls.h"\n${checks.join('\n')}\nint main(void) { return 0; }\n`,
    );
    const output = execFileSync(tool(compiler), [...options, 'c.c'], { cwd: folder, stdio: 'pipe' });
    expect(output.toString()).toBe('');
  });

  test('controls.json has its published form (JSON Schema 2020-12, held by ajv)', () => {
    const isValid = new Ajv2020({ strict: true }).compile(CONTROLS_SCHEMA);
    const data: unknown = JSON.parse(fileOf(scheme, 'controls.json'));
    isValid(data);
    expect(isValid.errors).toBeNull();
    expect(isValid({ ...(data as object), format: 'other' })).toBe(false);
  });

  test('no two symbols are alike, and every line of controls.inc is one or a comment', () => {
    expect(new Set(symbols.map(({ name }) => name)).size).toBe(symbols.length);
    const lines = fileOf(scheme, 'controls.inc').split('\n');
    const odd = lines.filter(
      line => !/^(|;[ -~]*|[A-Z_][A-Z0-9_]* = \$[0-9A-F]{2,4}( +; [ -~]+)?)$/.test(line),
    );
    expect(odd).toEqual([]);
    expect(lines.filter(line => line.includes(' = '))).toHaveLength(symbols.length);
  });

  test('the same scheme gives the same bytes', () => {
    expect(writeHandoff({ scheme, findings: [] })).toEqual(written.get(scheme));
  });
});

test('a CSV cell can neither leave its cell nor be a formula', () => {
  const lines = fileOf(SLY, 'vectors.csv')
    .split('\r\n')
    .filter(line => line !== '');
  const cells = lines.map(line => line.split(',').length);
  expect(new Set(cells).size).toBe(1);
  expect(lines.flatMap(line => line.split(',')).filter(cell => /^"?[=+\-@]/.test(cell))).toEqual([]);
});

test('the schema that is published is the schema that is used', () => {
  const published = readFileSync(new URL('../../controls.schema.json', import.meta.url), 'utf8');
  expect(JSON.parse(published)).toEqual(JSON.parse(JSON.stringify(CONTROLS_SCHEMA)));
});

test('the registers have the addresses of the hardware tables', () => {
  const values = new Map(symbolsOf(SLY).map(({ name, value }) => [name, value]));
  for (const { symbol, address } of Object.values(REGISTERS))
    expect(values.get(`SLY__${symbol}`)).toBe(address);
});
