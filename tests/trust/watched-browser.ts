import { pathToFileURL } from 'node:url';
import puppeteer, { type Browser, type Page } from 'puppeteer-core';
import type { FoundBrowser } from '../../src/print/browser.js';

/** A browser that runs scripts, as the reader's does, and tells what a page tries to do. */
export async function launchWatched({ path, isShell }: FoundBrowser): Promise<Browser> {
  const isRoot = process.platform === 'linux' && process.getuid?.() === 0;
  return puppeteer.launch({
    executablePath: path,
    headless: isShell ? 'shell' : true,
    pipe: true,
    args: ['--host-resolver-rules=MAP * ~NOTFOUND', ...(isRoot ? ['--no-sandbox'] : [])],
  });
}

/**
 * Opens a file as a reader would, moves the pointer over it; tells all that it does beyond
 * showing itself, and all in it that could act.
 */
export async function watchPage(browser: Browser, path: string): Promise<readonly string[]> {
  const page = await browser.newPage();
  const url = pathToFileURL(path).href;
  const deeds: string[] = [];
  watch(page, url, deed => deeds.push(deed));
  try {
    await page.goto(url, { waitUntil: 'load' });
    for (const place of [20, 200, 400]) await page.mouse.move(place, place);
    await new Promise(resolve => setTimeout(resolve, QUIET_MS));
    if (page.url() === url) deeds.push(...(await page.evaluate(findActive)));
    return deeds;
  } finally {
    await page.close();
  }
}

/** What a page does late would come within this time. */
const QUIET_MS = 200;

function watch(page: Page, url: string, tell: (deed: string) => void): void {
  const own = (address: string) => address.replace(/#.*/s, '') === url;
  page.on('request', request => {
    if (!own(request.url()) && !request.url().startsWith('data:')) tell(`asked for ${request.url()}`);
  });
  page.on('framenavigated', frame => {
    if (!own(frame.url())) tell(`went to ${frame.url()}`);
  });
  page.on('dialog', dialog => {
    tell(`showed a dialog: ${dialog.message()}`);
    dialog.dismiss().catch(() => undefined);
  });
  page.on('popup', () => tell('opened a window'));
  page.on('console', message => tell(`said on the console: ${message.text()}`));
  page.on('pageerror', error => tell(`failed: ${error instanceof Error ? error.message : String(error)}`));
}

/** Runs in the browser. Elements and attributes that run, fetch or lead somewhere other than the web or mail. */
function findActive(): string[] {
  const active =
    'script:not([type="application/json"]), iframe, frame, object, embed, base, form, meta[http-equiv="refresh"], link, applet, portal';
  const found = [...document.querySelectorAll(active)].map(element => element.outerHTML.slice(0, 80));
  for (const element of document.querySelectorAll('*')) {
    for (const { name, value } of element.attributes) {
      const isAddress = [
        'href',
        'xlink:href',
        'src',
        'srcset',
        'action',
        'formaction',
        'poster',
        'data',
      ].includes(name);
      const isSafe = /^(?:#|data:image\/|data:font\/|[\w-]+\.(?:html|pdf|json|csv|inc|h|asm)(?:#|$))/.test(
        value,
      );
      const isLink = element.localName === 'a' && /^(?:https?:|mailto:)/.test(value);
      if (name.startsWith('on') || (isAddress && !isSafe && !isLink))
        found.push(`${element.localName} ${name}=${value.slice(0, 80)}`);
      if (name === 'style' && /url\(|expression|@import/i.test(value))
        found.push(`style=${value.slice(0, 80)}`);
    }
  }
  for (const sheet of document.styleSheets)
    for (const rule of sheet.cssRules)
      if (/url\((?!"?data:)/.test(rule.cssText) || rule instanceof CSSImportRule)
        found.push(rule.cssText.slice(0, 80));
  return found;
}
