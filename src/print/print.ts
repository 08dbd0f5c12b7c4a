import type { Page } from 'puppeteer-core';
import { type FoundBrowser, requireBrowser } from './browser.js';
import { PrintError } from './errors.js';
import { finishPdf } from './finish.js';
import { withContentPolicy } from './isolation.js';
import { launchBrowser, type PrintBrowser } from './launch.js';
import type { DocumentInfo } from './metadata.js';
import { sweepProfiles } from './profile.js';
import { findOverflow, findShrink, type PrintScale } from './shrink.js';

/** One document to print. */
export interface PrintJob extends DocumentInfo {
  /** How messages call it: `manual`. */
  readonly name: string;
  /** The whole document; nothing it refers to outside itself is fetched, and no script of it runs. */
  readonly html: string;
}

export interface PrintedDocument {
  readonly name: string;
  readonly pdf: Uint8Array;
}

export interface PrintOptions {
  /** The browser to print with; looked for if left out. */
  readonly browser?: FoundBrowser;
  /** The time all jobs together may take, ms; 120 000 if left out. */
  readonly deadlineMs?: number;
  /** Hears of each document as soon as it is printed; work begun here overlaps with printing the next. */
  readonly onPrinted?: (document: PrintedDocument) => void;
}

const defaultDeadlineMs = 120_000;

/**
 * Prints all jobs with one browser, in their order. The same jobs and browser give the same bytes.
 * Throws NoBrowserError, or PrintError that names the document: the browser failed, the deadline passed, or an
 * element is wider than its page.
 */
export async function printDocuments(
  jobs: readonly PrintJob[],
  options: PrintOptions = {},
): Promise<readonly PrintedDocument[]> {
  const found = options.browser ?? (await requireBrowser());
  const browser = await launchBrowser(found, options.deadlineMs ?? defaultDeadlineMs);
  try {
    const page = await browser.race(browser.openPage()).catch(error => {
      throw explain('The documents', undefined, error);
    });
    const printed: PrintedDocument[] = [];
    for (const job of jobs) {
      const document = { name: job.name, pdf: await printJob(browser, page, job) };
      options.onPrinted?.(document);
      printed.push(document);
    }
    return printed;
  } finally {
    await Promise.all([browser.close(), sweepProfiles()]);
  }
}

async function printJob(browser: PrintBrowser, page: Page, job: PrintJob): Promise<Uint8Array> {
  try {
    const pdf = await browser.race(printPage(page, job.html));
    const shrink = findShrink(pdf);
    if (shrink) throw await browser.race(describeShrink(page, job, shrink));
    return finishPdf(pdf, job);
  } catch (error) {
    throw error instanceof PrintError ? error : explain(`The ${job.name}`, job.name, error);
  }
}

function explain(subject: string, document: string | undefined, error: unknown): PrintError {
  const reason = error instanceof Error ? error.message : String(error);
  return new PrintError(`${subject} could not be printed: ${reason}`, document, { cause: error });
}

async function printPage(page: Page, html: string): Promise<Uint8Array> {
  await page.setContent(withContentPolicy(html), { waitUntil: 'load', timeout: 0 });
  return page.pdf({
    preferCSSPageSize: true,
    printBackground: true,
    outline: true,
    tagged: true,
    timeout: 0,
  });
}

async function describeShrink(page: Page, job: PrintJob, shrink: PrintScale): Promise<PrintError> {
  const overflow = await findOverflow(page, shrink);
  const what = overflow
    ? `${overflow.element} is ${overflow.excessMm.toFixed(1)} mm wider than its page has room for`
    : 'something is wider than its page';
  return new PrintError(
    `The ${job.name} does not fit its paper: ${what}, and all pages would shrink to ${Math.round(shrink.scale * 100)} %.`,
    job.name,
  );
}
