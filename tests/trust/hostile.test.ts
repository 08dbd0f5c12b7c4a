import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { toString as wordsOf } from 'mdast-util-to-string';
import { type DefaultTreeAdapterTypes, parse } from 'parse5';
import type { Browser } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createReport } from '../../src/findings/report.js';
import { parseMarkdown } from '../../src/language/document.js';
import { readScheme } from '../../src/language/read.js';
import { folderWith, run } from '../cli/test-terminal.js';
import { HOSTILE_CELLS } from '../fuzz/hostile-text.js';
import { checkPlaces } from '../fuzz/places.js';
import { browserTool, tool } from '../support/tools.js';
import { hostileFields, hostileScheme } from './hostile-scheme.js';
import { launchWatched, watchPage } from './watched-browser.js';

const TITLE = '<script>alert(1)</script> \\</title> "x\' ../../up {y} =1 *b* &lt;';

let shared: Browser | undefined;

async function watchedBrowser(): Promise<Browser> {
  shared ??= await launchWatched(await browserTool());
  return shared;
}

afterAll(() => shared?.close());

describe('a page that is watched', () => {
  it.each([
    ['a script', '<script>console.log("ran")</script>', /said on the console: ran/],
    ['a dialog', '<body onload="alert(1)">', /showed a dialog: 1/],
    ['a picture from elsewhere', '<img src="http://hostile.invalid/x.png">', /asked for http:\/\/hostile/],
    [
      'a style from elsewhere',
      '<style>p{background:url(http://hostile.invalid/c)}</style><p>x',
      /asked for http:/,
    ],
    ['a way off', '<meta http-equiv="refresh" content="0;url=about:blank">', /went to about:blank/],
    ['a fault', '<script>throw new Error("broken")</script>', /failed: .*broken/],
    ['a script link', '<a href="javascript:void 0">x</a>', /a href=javascript:/],
    ['a file link', '<a href="file:///etc/passwd">x</a>', /a href=file:/],
  ])('is caught at %s', async (_, html, deed) => {
    const browser = await watchedBrowser();
    const folder = folderWith({ 'page.html': `<!doctype html><title>t</title>${html}` });
    expect((await watchPage(browser, join(folder, 'page.html'))).join('\n')).toMatch(deed);
  });
});

/** Everything in a folder, as paths from it. */
const tree = (folder: string) => readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();

const isPolluted = () => Object.keys(Object.prototype).length > 0;

describe('a scheme with hostile text in every field', () => {
  let folder = '';
  let set = '';
  const read = (name: string) => readFileSync(join(set, name), 'utf8');

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'leverleaf-hostile-'));
    writeFileSync(join(folder, 'game.md'), hostileScheme(TITLE));
    const { code, lines } = await run(folder, 'build', 'game.md');
    expect(lines.at(-1)).toMatch(/: built, \d+ notes$/);
    expect(code).toBe(0);
    const [name = ''] = readdirSync(join(folder, 'out'));
    set = join(folder, 'out', name);
  });

  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it('is built, and nothing lands outside its folder', () => {
    expect(readdirSync(folder).sort()).toEqual(['game.md', 'out']);
    expect(readdirSync(join(folder, 'out'))).toHaveLength(1);
    for (const name of tree(set)) expect(name).toMatch(/^[a-z-]+\.(?:html|pdf|json|inc|h|asm|csv)$/);
    expect(existsSync(join(tmpdir(), 'hostile'))).toBe(false);
    expect(isPolluted()).toBe(false);
  });

  it('gives pages that only show themselves, to a browser that runs scripts', async () => {
    const browser = await watchedBrowser();
    const pages = tree(set).filter(name => name.endsWith('.html'));
    expect(pages).toEqual(
      expect.arrayContaining(['bits.html', 'index.html', 'manual.html', 'overlays.html', 'report.html']),
    );
    for (const name of pages.filter(each => each !== 'tryout.html'))
      expect(await watchPage(browser, join(set, name)), name).toEqual([]);
  });

  it('gives a try-out page that runs its own program and nothing else', async () => {
    const program = readFileSync(new URL('../../dist/tryout/program.js', import.meta.url), 'utf8');
    const deeds = await watchPage(await watchedBrowser(), join(set, 'tryout.html'));
    expect(deeds).toEqual([`<script>${program}`.slice(0, 80)]);
    expect(read('tryout.html').split('<script')).toHaveLength(3);
  });

  it('has its words in the manual as they were written', () => {
    const text = textOf(read('manual.html'));
    for (const { name, text: words } of HOSTILE_CELLS.filter(({ text: one }) =>
      /^(?!<http)[<}@"=%(]/.test(one),
    ))
      expect(text.includes(words), name).toBe(true);
    expect(text.startsWith('<script>alert(1)</script> </title> "x\' ../../up {y} =1 b <')).toBe(true);
  });

  it('gives PDFs with links to the web only, and no actions', () => {
    for (const name of tree(set).filter(one => one.endsWith('.pdf'))) {
      const pdf = readFileSync(join(set, name), 'latin1');
      expect(pdf, name).not.toMatch(/\/(?:JavaScript|JS|Launch|GoToR|SubmitForm|EmbeddedFile)\b/);
      for (const [, address = ''] of pdf.matchAll(/\/URI\s*\(([^)]*)/g))
        expect(address).toMatch(/^(?:https?|mailto):/);
    }
  });

  it('gives a table of vectors that a spreadsheet takes for what it is', () => {
    const cells = csvOf(join(set, 'vectors.csv'));
    const [head = [], ...rows] = cells;
    expect(rows.filter(row => row.length !== head.length)).toEqual([]);
    expect(cells.flat().filter(cell => /^[=+\-@\t\r]/.test(cell))).toEqual([]);
    const { vectors } = JSON.parse(read('vectors.json'));
    const steps = vectors.map((vector: { readonly steps: readonly unknown[] }) => vector.steps.length + 1);
    expect(rows).toHaveLength(steps.reduce((sum: number, count: number) => sum + count, 0));
  });

  it.each([
    ['controls.inc', /^(?:|;.*|HOSTILE_\w+ += \$[0-9A-F]{2,4}(?: +;.*)?|\w+ += \$[0-9A-F]{2,4}(?: +;.*)?)$/],
    [
      'controls.h',
      /^(?:|\/\* [^*]* \*\/|#(?:ifndef|define) HOSTILE__CONTROLS_H|#endif|#define \w+ +0x[0-9A-F]{2,4}(?: +\/\* [^*]* \*\/)?)$/,
    ],
    [
      'read.asm',
      /^(?:|;.*|[@\w]+:(?: +;.*)?|\.include "controls\.inc"|\.ifndef \w+|\.endif|\w+ += [$\w+]+(?: +;.*)?| +(?:;.*|[a-z]{3}(?: [^;]*)?(?:;.*)?|\.\w+ .*))$/i,
    ],
  ])('gives a %s in which every line is what it should be', (name, line) => {
    const text = read(name);
    expect(text).toMatch(/^[\x20-\x7e\n]*$/);
    expect(text.split('\n').filter(one => !line.test(one))).toEqual([]);
  });

  it('gives a reading routine that an assembler takes', () => {
    execFileSync(tool('ca65'), ['-o', join(folder, 'read.o'), '-I', set, join(set, 'read.asm')], {
      stdio: 'pipe',
    });
    rmSync(join(folder, 'read.o'));
  });

  it('gives JSON that is whole', () => {
    for (const name of tree(set).filter(one => one.endsWith('.json'))) {
      expect(() => JSON.parse(read(name)), name).not.toThrow();
      expect(read(name), name).not.toMatch(/[\ud800-\udbff](?![\udc00-\udfff])/);
    }
  });
});

describe('hostile text where a name must stand', () => {
  /** Each turns one name of a scheme into other text, wherever it stands. */
  const plain = hostileFields('Lamp').text;
  const fields = Object.entries(hostileFields('Lamp').names);

  it.each(fields)('is a finding, or a name that the language allows: %s', (_, name) => {
    const legal = /^(?:[\p{L}\p{M}\p{N}\s\-'’.]*|—)$/u;
    for (const { name: kind, text } of HOSTILE_CELLS) {
      const files = [{ path: 'game.md', text: plain.replaceAll(name, text) }];
      const { report, findings } = createReport();
      readScheme(files, report);
      expect(checkPlaces(findings, files), kind).toEqual([]);
      // Marks of Markdown around a name are no part of it.
      const words = wordsOf({ type: 'root', children: [...parseMarkdown(text)] });
      if (findings.length === 0) expect(legal.test(words), `${kind}: ${words}`).toBe(true);
    }
  });

  it('gives a report that only shows itself', async () => {
    const browser = await watchedBrowser();
    const bad = fields.reduce(
      (text, [, name], index) => text.replaceAll(name, `${name}${HOSTILE_CELLS[index]?.text}`),
      plain,
    );
    const folder = folderWith({
      'game.md': bad,
      'controls.md': bad.replace('# Lamp', '# Lamp\u001b[31m \u0007'),
    });
    for (const name of ['game', 'controls']) {
      const { code, lines } = await run(folder, 'build', `${name}.md`, '--html-only', '--out', name);
      expect(code).toBe(1);
      expect(lines.join('')).not.toMatch(/\p{Cc}/u);
      const [set = ''] = readdirSync(join(folder, name));
      const path = join(folder, name, set);
      expect(readdirSync(path)).toEqual(['report.html', 'report.json']);
      expect(await watchPage(browser, join(path, 'report.html'))).toEqual([]);
    }
    expect(isPolluted()).toBe(false);
  });
});

/** The words of a page, by the rules of the HTML parser. */
function textOf(html: string): string {
  const words: string[] = [];
  const visit = (node: DefaultTreeAdapterTypes.Node): void => {
    if (node.nodeName === 'style' || node.nodeName === 'script') return;
    if ('value' in node) words.push(node.value);
    if ('childNodes' in node) node.childNodes.forEach(visit);
  };
  visit(parse(html));
  return words.join('');
}

/** Read by Python's csv module. */
function csvOf(path: string): readonly (readonly string[])[] {
  const script =
    'import csv,json,sys; print(json.dumps(list(csv.reader(open(sys.argv[1], newline="", encoding="utf-8"), strict=True))))';
  return JSON.parse(
    execFileSync(tool('python3'), ['-c', script, path], { encoding: 'utf8', maxBuffer: 2 ** 28 }),
  );
}
