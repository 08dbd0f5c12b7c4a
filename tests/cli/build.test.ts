import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { browserVariable } from '../../src/print/browser.js';
import { browserTool } from '../support/tools.js';
import { folderWith, run, smallScheme } from './test-terminal.js';

afterEach(() => vi.unstubAllEnvs());

const setOf = (folder: string, name = 'tin-whistle') => readdirSync(join(folder, 'out', name)).sort();

function bytesOf(folder: string, name = 'tin-whistle'): ReadonlyMap<string, string> {
  const path = join(folder, 'out', name);
  return new Map(readdirSync(path).map(file => [file, readFileSync(join(path, file), 'base64')]));
}

describe('a build', () => {
  it('makes every document as a page and as a PDF, the same bytes each time', async () => {
    await browserTool();
    const folder = folderWith({ 'game.md': smallScheme() });
    const { code, out } = await run(folder, 'build', 'game.md');
    expect({ code, out }).toEqual({ code: 0, out: 'out/tin-whistle\n' });
    const first = bytesOf(folder);
    expect([...first.keys()]).toEqual(
      expect.arrayContaining([
        'index.html',
        ...['manual', 'overlays', 'bits', 'report'].flatMap(name => [`${name}.html`, `${name}.pdf`]),
        'manual-booklet.pdf',
        ...['controls.inc', 'controls.h', 'controls.json', 'read.asm', 'vectors.json', 'vectors.csv'],
        'report.json',
      ]),
    );
    await run(folder, 'build', 'game.md');
    expect(bytesOf(folder)).toEqual(first);
  });

  it('makes no PDF when asked not to, and needs no browser', async () => {
    vi.stubEnv(browserVariable, '/nowhere/browser');
    const folder = folderWith({ 'game.md': smallScheme() });
    const { code } = await run(folder, 'build', 'game.md', '--html-only', '--out', 'elsewhere');
    expect(code).toBe(0);
    expect(existsSync(join(folder, 'out'))).toBe(false);
    const names = readdirSync(join(folder, 'elsewhere', 'tin-whistle'));
    expect(names).toContain('manual.html');
    expect(names.filter(name => name.endsWith('.pdf'))).toEqual([]);
  });

  it('without a browser makes the pages, says so in a line and ends with 2', async () => {
    vi.stubEnv(browserVariable, '/nowhere/browser');
    const folder = folderWith({ 'game.md': smallScheme() });
    const { code, lines } = await run(folder, 'build', 'game.md');
    expect(code).toBe(2);
    expect(lines.filter(line => line.startsWith('leverleaf:'))).toEqual([
      `leverleaf: ${browserVariable} names /nowhere/browser, which can't be run. Tin Whistle has no PDFs.`,
    ]);
    expect(setOf(folder)).toContain('manual.html');
    expect(setOf(folder).filter(name => name.endsWith('.pdf'))).toEqual([]);
  });

  it('of a scheme with errors makes the report only and leaves the last good set', async () => {
    const folder = folderWith({ 'game.md': smallScheme() });
    await run(folder, 'build', 'game.md', '--html-only');
    const good = bytesOf(folder);
    writeFileSync(join(folder, 'game.md'), smallScheme('Tin Whistle', 'key 5'));
    const { code, lines } = await run(folder, 'build', 'game.md', '--html-only');
    expect(code).toBe(1);
    expect(lines.at(-1)).toMatch(/^Tin Whistle: 1 error.*only the report was made/);
    const changed = [...bytesOf(folder)].filter(([name, bytes]) => good.get(name) !== bytes);
    expect(changed.map(([name]) => name).sort()).toEqual(['report.html', 'report.json']);
    expect(setOf(folder)).toEqual([...good.keys()].sort());
  });

  it('of a file that holds no scheme makes a report named after the file', async () => {
    const folder = folderWith({ 'Empty File.md': '' });
    const { code } = await run(folder, 'build', 'Empty File.md', '--html-only');
    expect(code).toBe(1);
    expect(setOf(folder, 'empty-file')).toEqual(['report.html', 'report.json']);
  });

  it('writes the report that check prints', async () => {
    const folder = folderWith({ 'game.md': smallScheme() });
    await run(folder, 'build', 'game.md', '--html-only');
    const { out } = await run(folder, 'check', 'game.md', '--format', 'json');
    expect(readFileSync(join(folder, 'out', 'tin-whistle', 'report.json'), 'utf8')).toBe(out);
  });

  it('of several schemes ends with the worst of them', async () => {
    const folder = folderWith({ 'a.md': smallScheme('Aa', 'key 5'), 'b.md': smallScheme('Bb') });
    const { code, out } = await run(folder, 'build', 'a.md', 'b.md', '--html-only');
    expect({ code, out }).toEqual({ code: 1, out: 'out/aa\nout/bb\n' });
  });

  it('of two schemes that would share a folder is refused before anything is written', async () => {
    const folder = folderWith({ 'a.md': smallScheme('Tin Whistle'), 'b.md': smallScheme('Tin: whistle!') });
    const { code, lines } = await run(folder, 'build', 'a.md', 'b.md', '--html-only');
    expect({ code, lines }).toEqual({
      code: 2,
      lines: ['leverleaf: a.md and b.md would both be built into tin-whistle: build one at a time.'],
    });
    expect(existsSync(join(folder, 'out'))).toBe(false);
  });

  it.each(['game.md', 'game.md/out'])('into %s, which is no folder, ends with a line', async out => {
    const folder = folderWith({ 'game.md': smallScheme() });
    const { code, lines } = await run(folder, 'build', 'game.md', '--html-only', '--out', out);
    expect(code).toBe(2);
    expect(lines.filter(line => line.startsWith('leverleaf:'))).toHaveLength(1);
    expect(lines.join('\n')).not.toContain('unforeseen');
  });

  it('writes nothing outside its folder, whatever the title', async () => {
    const folder = folderWith({ 'game.md': smallScheme('../../../up and away') });
    await run(folder, 'build', 'game.md', '--html-only');
    expect(readdirSync(folder).sort()).toEqual(['game.md', 'out']);
    expect(readdirSync(join(folder, 'out'))).toEqual(['up-and-away']);
  });
});
