import { readFileSync } from 'node:fs';
import puppeteer from 'puppeteer';
import { buildSet } from '../../dist/build-set.js';
import { compile } from '../../dist/compile.js';
import { builtInTemplates } from '../../dist/documents/page/templates.js';
import { makeBooklet } from '../../dist/print/booklet.js';
import { findBrowser } from '../../dist/print/browser.js';
import { printDocuments } from '../../dist/print/print.js';
import { ratioOf } from './measure.js';
import { type BenchRow, ratioRow } from './row.js';

/** The PDFs of a build, booklet included, against a bare puppeteer script that prints the same pages in parallel. */
export async function benchPrint(): Promise<readonly BenchRow[]> {
  const browser = await findBrowser();
  if (browser === undefined) return [];
  const path = 'schemes/kiln-yard.md';
  const files = [{ path, text: readFileSync(path, 'utf8') }];
  const compiled = compile(files);
  const { scheme } = compiled;
  if (scheme === null) throw new Error('the scheme of the benchmark has errors');
  const { printables } = buildSet({ ...compiled, scheme }, { files, templates: builtInTemplates });

  const ours = async () => {
    const booklets: Promise<unknown>[] = [];
    await printDocuments(printables, {
      browser,
      onPrinted: ({ name, pdf }) => {
        if (name === 'manual') booklets.push(makeBooklet(pdf, { page: scheme.game.manualPage }));
      },
    });
    await Promise.all(booklets);
  };
  const bare = async () => {
    const bareBrowser = await puppeteer.launch({
      executablePath: browser.path,
      headless: browser.path.includes('headless-shell') ? 'shell' : true,
      args: ['--no-sandbox', '--font-render-hinting=none'],
    });
    await Promise.all(
      printables.map(async ({ html }) => {
        const page = await bareBrowser.newPage();
        await page.setContent(html);
        await page.pdf({ preferCSSPageSize: true, printBackground: true });
      }),
    );
    await bareBrowser.close();
  };
  return [ratioRow('PDFs of a build, against a bare puppeteer script', 1.3, await ratioOf(ours, bare, 5))];
}
