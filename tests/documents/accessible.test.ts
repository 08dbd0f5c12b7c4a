import axe from 'axe-core';
import puppeteer from 'puppeteer-core';
import { describe, expect, it } from 'vitest';
import { createIndex } from '../../src/documents/index-page/index-page.js';
import { browserTool } from '../support/tools.js';
import { documentsOf, inputOf, SCHEMES } from './inputs.js';

const PICTURE =
  'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string }[];
}

// axe-core's own rules, WCAG 2.2 and best practices, contrast at its enhanced level (7:1).
describe('axe-core finds nothing in', () => {
  it.each(['everything', 'night-exchange', 'longest, joystick'])('the documents of %s', async name => {
    const found = await browserTool();
    const input = inputOf((SCHEMES[name] as () => string)());
    const index = createIndex(
      input,
      ['manual.html', 'manual.pdf', 'overlays.html', 'report.html', 'controls.inc'],
      [{ document: 'manual', page: 1, image: PICTURE, width: 100, height: 140 }],
    );
    const pages = [...documentsOf(input), { name: 'index', html: String(index.content) }];
    const browser = await puppeteer.launch({
      executablePath: found.path,
      headless: found.isShell ? 'shell' : true,
      args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
    });
    try {
      const page = await browser.newPage();
      for (const { name: document, html } of pages) {
        await page.setContent(html, { waitUntil: 'load' });
        await page.evaluate(axe.source);
        const violations = await page.evaluate(async () => {
          const { axe: checker } = window as unknown as {
            axe: { run(options: object): Promise<{ violations: Violation[] }> };
          };
          const result = await checker.run({ rules: { 'color-contrast-enhanced': { enabled: true } } });
          return result.violations.map(({ id, nodes }) => ({
            id,
            nodes: nodes.slice(0, 3).map(({ html: tag }) => ({ html: tag.slice(0, 200) })),
          }));
        });
        expect(violations, document).toEqual([]);
      }
    } finally {
      await browser.close();
    }
  });
});
