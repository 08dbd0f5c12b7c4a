import type { Page } from 'puppeteer-core';
import { type AnchorPages, readAnchorPages } from './anchor-pages.js';
import { type FoundBrowser, requireBrowser } from './browser.js';
import { PrintError } from './errors.js';
import { finishPdf } from './finish.js';
import { withContentPolicy } from './isolation.js';
import { launchBrowser, type PrintBrowser } from './launch.js';
import type { DocumentInfo } from './metadata.js';
import { sweepProfiles } from './profile.js';
import { findOverflow, findShrink, type PrintScale } from './shrink.js';
import { type Thumbnail, takeThumbnail } from './thumbnail.js';

/** One document to print. */
export interface PrintJob<Name extends string = string> extends DocumentInfo {
  /** How messages call it: `manual`. */
  readonly name: Name;
  /** The whole document; nothing it refers to outside itself is fetched, and no script of it runs. */
  readonly html: string;
  /**
   * Told where the document's anchors came to stand, the HTML to print again (page numbers of a contents list);
   * must move no page.
   */
  readonly revise?: (anchors: AnchorPages) => string;
}

export interface PrintedDocument<Name extends string = string> {
  readonly name: Name;
  /** As printed: revised, where the job revises it. */
  readonly html: string;
  readonly pdf: Uint8Array;
  /** Where thumbnails were asked for. */
  readonly thumbnail?: Thumbnail;
}

export interface PrintOptions {
  /** The browser to print with; looked for if left out. */
  readonly browser?: FoundBrowser;
  /** The time all jobs together may take, ms; 120 000 if left out. */
  readonly deadlineMs?: number;
  /** Also take a picture of each document's first page. */
  readonly thumbnails?: boolean;
  /** Hears of each document as soon as it is printed; work begun here overlaps with printing the next. */
  readonly onPrinted?: (document: PrintedDocument) => void;
}

const defaultDeadlineMs = 120_000;

/**
 * Prints all jobs with one browser, in their order. The same jobs and browser give the same bytes.
 * Throws NoBrowserError, or PrintError that names the document: the browser failed, the deadline passed, or an
 * element is wider than its page.
 */
export async function printDocuments<Name extends string>(
  jobs: readonly PrintJob<Name>[],
  options: PrintOptions = {},
): Promise<readonly PrintedDocument<Name>[]> {
  const found = options.browser ?? (await requireBrowser());
  const browser = await launchBrowser(found, options.deadlineMs ?? defaultDeadlineMs);
  try {
    const page = await browser.race(browser.openPage()).catch(error => {
      throw explain('The documents', undefined, error);
    });
    const printed: PrintedDocument<Name>[] = [];
    for (const job of jobs) {
      const document = await printJob(browser, page, job, options.thumbnails === true);
      options.onPrinted?.(document);
      printed.push(document);
    }
    return printed;
  } finally {
    await Promise.all([browser.close(), sweepProfiles()]);
  }
}

async function printJob<Name extends string>(
  browser: PrintBrowser,
  page: Page,
  job: PrintJob<Name>,
  withThumbnail: boolean,
): Promise<PrintedDocument<Name>> {
  try {
    const { html, pdf } = await browser.race(printSettled(page, job));
    const shrink = findShrink(pdf);
    if (shrink) throw await browser.race(describeShrink(page, job, shrink));
    const printed = { name: job.name, html, pdf: finishPdf(pdf, job) };
    return withThumbnail
      ? { ...printed, thumbnail: await browser.race(takeThumbnail(page, printed.pdf)) }
      : printed;
  } catch (error) {
    throw error instanceof PrintError ? error : explain(`The ${job.name}`, job.name, error);
  }
}

/** Prints, and prints again where the job has something to add that only the first print can tell. */
async function printSettled(page: Page, { html, revise }: PrintJob) {
  const first = await printPage(page, html);
  const revised = revise?.(readAnchorPages(first)) ?? html;
  return revised === html ? { html, pdf: first } : { html: revised, pdf: await printPage(page, revised) };
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
