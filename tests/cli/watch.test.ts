import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import type { ExitCode } from '../../src/cli/exit-code.js';
import { runCommandLine } from '../../src/cli/program.js';
import { createTestTerminal, folderWith, run, smallScheme } from './test-terminal.js';

/** `check --watch` in a folder, running until it is stopped. */
function startWatching(folder: string, scheme: string) {
  let stop = () => {};
  const stopped = new Promise<void>(resolve => {
    stop = resolve;
  });
  const { terminal, out, lines } = createTestTerminal(folder, () => stopped);
  const ended: Promise<ExitCode> = runCommandLine(['check', scheme, '--watch'], terminal);
  const sees = async (text: string) =>
    vi.waitFor(() => expect([...out, ...lines].join('\n')).toContain(text), {
      timeout: 30_000,
      interval: 20,
    });
  const end = (): Promise<ExitCode> => {
    stop();
    return ended;
  };
  return { out, lines, sees, end };
}

it('checks again after each change, and goes on whatever is in the file', async () => {
  const folder = folderWith({ 'game.md': smallScheme() });
  const watching = startWatching(folder, 'game.md');
  await watching.sees('Watching game.md');
  expect(watching.out).toHaveLength(1);
  writeFileSync(join(folder, 'game.md'), smallScheme('Tin Whistle', 'paddle'));
  await watching.sees('no-such-control');
  writeFileSync(join(folder, 'game.md'), new Uint8Array([0x23, 0, 0x23]));
  await watching.sees('it holds zero bytes');
  rmSync(join(folder, 'game.md'));
  await watching.sees('it is not there');
  const before = watching.out.length;
  writeFileSync(join(folder, 'game.md'), smallScheme());
  await vi.waitFor(() => expect(watching.out.length).toBe(before + 1), { timeout: 30_000 });
  expect(await watching.end()).toBe(0);
});

it('watches a folder, and ends with the code of the last check', async () => {
  const folder = folderWith({ 'a.md': smallScheme() });
  const watching = startWatching(folder, '.');
  await watching.sees('Watching .');
  writeFileSync(join(folder, 'b.md'), '## Nonsense\n');
  await watching.sees('unknown-heading');
  expect(await watching.end()).toBe(1);
});

it('is for people', async () => {
  const { code, lines } = await run(
    folderWith({ 'a.md': smallScheme() }),
    'check',
    'a.md',
    '-w',
    '-f',
    'json',
  );
  expect({ code, lines }).toEqual({
    code: 2,
    lines: ['leverleaf: --watch prints for people: use it with --format text.'],
  });
});
