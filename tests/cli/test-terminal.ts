import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { runCommandLine } from '../../src/cli/program.js';
import type { Terminal } from '../../src/cli/terminal.js';
import { createColours } from '../../src/findings/formats/colours.js';

export interface Run {
  readonly code: number;
  readonly out: string;
  readonly lines: readonly string[];
}

/** A terminal in a folder that keeps what is written to it. */
export function createTestTerminal(folder: string, stopped: () => Promise<void> = async () => {}) {
  const out: string[] = [];
  const lines: string[] = [];
  const terminal: Terminal = {
    out: async text => void out.push(text),
    say: line => void lines.push(line),
    colours: createColours(false),
    isInteractive: false,
    width: 100,
    workingFolder: folder,
    stopped,
  };
  return { terminal, out, lines };
}

/** Runs a command line in a folder; keeps what it writes. */
export async function run(folder: string, ...words: readonly string[]): Promise<Run> {
  const { terminal, out, lines } = createTestTerminal(folder);
  const code = await runCommandLine(words, terminal);
  return { code, out: out.join(''), lines };
}

/** A folder with files that is gone after the test. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), 'leverleaf-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  return folder;
}

/** A small scheme that plays; with `button` for a joystick it has no error. */
export function smallScheme(title = 'Tin Whistle', control = 'button'): string {
  return `# ${title}

## Game

| Item       | Value |
| ---------- | ----- |
| Short name | TW    |

## Seats

| Seats | Players | Left port | Right port |
| ----- | ------- | --------- | ---------- |
| Solo  | 1       | joystick  | empty      |

## Actions

| Action | Say it as     |
| ------ | ------------- |
| Blow   | Play the note |

## Mode: Tune

| Who  | Action | Control | Gesture |
| ---- | ------ | ------- | ------- |
| left | Blow   | ${control} | press |
`;
}
