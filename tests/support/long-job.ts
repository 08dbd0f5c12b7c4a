import type { PrintJob } from '../../src/print/print.js';

/** A document that takes many seconds to print, and when the browser was given it. */
export function longJob(): { readonly job: PrintJob; readonly begun: Promise<void> } {
  const html = '<p>some words</p>'.repeat(80_000);
  let tell = () => {};
  const begun = new Promise<void>(resolve => {
    tell = resolve;
  });
  const job: PrintJob = {
    name: 'manual',
    title: 't',
    // Read by the printer when the browser runs and the page is open.
    get html() {
      tell();
      return html;
    },
  };
  return { job, begun };
}
