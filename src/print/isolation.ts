import type { HTTPRequest, Page } from 'puppeteer-core';

/**
 * What keeps a document from reaching anything outside itself. Each of these alone leaks something (found by
 * experiment: prefetches, DNS look-ups, redirects); all of them together let nothing out.
 */
export const isolationArguments = [
  '--host-resolver-rules=MAP * ~NOTFOUND',
  '--proxy-server=http://127.0.0.1:9',
  '--proxy-bypass-list=<-loopback>',
  '--disable-background-networking',
  '--disable-sync',
  '--disable-component-update',
  '--no-first-run',
] as const;

const contentPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:";

/**
 * Puts the content policy before everything else in the document. The HTML parser (HTML Living Standard,
 * 13.2.6.4) opens `html` and `head` for the `meta` and merges the document's own tags into them.
 */
export function withContentPolicy(html: string): string {
  return `<!doctype html><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${contentPolicy}">${html}`;
}

/** Turns off scripts and the network for a page that has not loaded anything yet. */
export async function isolatePage(page: Page): Promise<void> {
  page.on('request', request => {
    answer(request).catch(() => undefined); // the page is gone: nothing left to answer
  });
  await Promise.all([
    page.setJavaScriptEnabled(false),
    page.setOfflineMode(true),
    page.setRequestInterception(true),
  ]);
}

/** Any other code than `aborted` blanks the page. */
async function answer(request: HTTPRequest): Promise<void> {
  const isOwn = request.url().startsWith('data:') && !request.isNavigationRequest();
  await (isOwn ? request.continue() : request.abort('aborted'));
}
