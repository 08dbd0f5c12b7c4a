import type { Page } from 'puppeteer-core';

/**
 * The words in cells and captions of the page's tables that stand on two lines, a part on each. A hyphen or a dash
 * within a word is a place to break it.
 *
 * @param tables CSS selector
 */
export async function findCutWords(page: Page, tables: string): Promise<readonly string[]> {
  return page.evaluate(lookForCutWords, tables);
}

/** Runs in the browser: nothing from outside it is there. */
function lookForCutWords(tables: string): readonly string[] {
  const cut: string[] = [];
  for (const table of document.querySelectorAll(tables)) {
    const walker = document.createTreeWalker(table, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      if (node.parentElement?.closest('.read-only') !== null) continue;
      for (const match of (node.textContent ?? '').matchAll(/[^\s\u2013\u2014-]+/g)) {
        const range = document.createRange();
        range.setStart(node, match.index);
        range.setEnd(node, match.index + match[0].length);
        const tops = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (tops.size > 1) cut.push(match[0]);
      }
    }
  }
  return cut;
}
