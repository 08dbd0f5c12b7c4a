import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { expect, onTestFinished, test } from 'vitest';
import { buildSet } from '../../src/build-set.js';
import { compile } from '../../src/compile.js';
import { builtInTemplates } from '../../src/documents/page/templates.js';
import { printDocuments } from '../../src/print/print.js';
import { browserTool, tool } from '../support/tools.js';

/** Pages that stand for the look of all: a change of them is looked at before `npm run goldens` keeps it. */
const PAGES = [
  { scheme: 'kiln-yard', document: 'manual', page: 3 },
  { scheme: 'kiln-yard', document: 'manual', page: 5 },
  { scheme: 'night-exchange', document: 'overlays', page: 1 },
  { scheme: 'night-exchange', document: 'bits', page: 4 },
  { scheme: 'swarm-season', document: 'report', page: 2 },
] as const;

/** Dots per inch: enough to see a line that moved by half a millimetre. */
const RESOLUTION = 50;
/** Share of the page's pixels that another build of the browser or of the PDF reader may draw otherwise. */
const ALLOWED = 0.002;

const folder = fileURLToPath(new URL('../goldens/pages', import.meta.url));

test.each(PAGES)(
  '$scheme: page $page of the $document looks as it did',
  async ({ scheme, document, page }) => {
    const drawn = drawPage(await printDocument(scheme, document), page);
    const path = join(folder, `${scheme}-${document}-${page}.png`);
    if (process.env['LEVERLEAF_UPDATE_GOLDENS'] === '1') {
      mkdirSync(folder, { recursive: true });
      writeFileSync(path, drawn);
    }
    expect(existsSync(path), `${path} is missing: npm run goldens draws it`).toBe(true);
    const [now, kept] = [PNG.sync.read(drawn), PNG.sync.read(readFileSync(path))];
    expect([now.width, now.height]).toEqual([kept.width, kept.height]);
    const different = pixelmatch(now.data, kept.data, undefined, now.width, now.height, { threshold: 0.2 });
    expect(different / (now.width * now.height)).toBeLessThan(ALLOWED);
  },
);

test('a page that has changed is seen', async () => {
  const [kept, other] = ['kiln-yard-manual-3', 'kiln-yard-manual-5'].map(name =>
    PNG.sync.read(readFileSync(join(folder, `${name}.png`))),
  );
  if (kept === undefined || other === undefined) throw new Error('the reference pages are missing');
  const different = pixelmatch(kept.data, other.data, undefined, kept.width, kept.height, { threshold: 0.2 });
  expect(different / (kept.width * kept.height)).toBeGreaterThan(ALLOWED);
});

async function printDocument(name: string, wanted: string): Promise<Uint8Array> {
  const path = fileURLToPath(new URL(`../../schemes/${name}.md`, import.meta.url));
  const files = [{ path: `${name}.md`, text: readFileSync(path, 'utf8') }];
  const compiled = compile(files);
  if (compiled.scheme === null) throw new Error(`${name} has errors`);
  const options = { files, templates: builtInTemplates };
  const { printables } = buildSet({ ...compiled, scheme: compiled.scheme }, options);
  const jobs = printables.filter(document => document.name === wanted);
  const [printed] = await printDocuments(jobs, { browser: await browserTool() });
  if (printed === undefined) throw new Error(`there is no ${wanted}`);
  return printed.pdf;
}

/** With poppler, as a grey PNG. */
function drawPage(pdf: Uint8Array, page: number): Buffer {
  const place = mkdtempSync(join(tmpdir(), 'leverleaf-page-'));
  onTestFinished(() => rmSync(place, { recursive: true, force: true }));
  writeFileSync(join(place, 'it.pdf'), pdf);
  const pages = ['-f', `${page}`, '-l', `${page}`, '-singlefile'];
  const args = ['-r', `${RESOLUTION}`, '-gray', '-png', ...pages, 'it.pdf', 'page'];
  expect(spawnSync(tool('pdftoppm'), args, { cwd: place }).status).toBe(0);
  return readFileSync(join(place, 'page.png'));
}
