import { expect, test } from 'vitest';
import { createBits } from '../../../src/documents/bits/write.js';
import { createReportDocument } from '../../../src/documents/report/write.js';
import { printDocuments } from '../../../src/print/print.js';
import { browserTool } from '../../support/tools.js';
import { DYE_WORKS, inputOf } from '../bits/support.js';
import { SLUICE_RUN } from './sluice.js';

/** Names as long as a name may well be, without a place to break them. */
const LONG = 'Honorificabilitudinitatibus'.repeat(4);

/** Printing fails where an element is wider than its page: then every page would shrink. */
test('long names widen no page, on A4 and on letter', async () => {
  const browser = await browserTool();
  const long = DYE_WORKS.replaceAll('Turn the sign', `Turn ${LONG}`)
    .replaceAll('Pouring', LONG)
    .replaceAll('left pedal', `left ${LONG}`)
    .replaceAll('workbench', `bench-${LONG}`)
    .replaceAll('River', `River ${LONG}`);
  const clash = SLUICE_RUN.replaceAll('Whistle', LONG).replaceAll('Pair', `Pair ${LONG}`);
  const inputs = [inputOf(long), inputOf(long.replace('| letter ', '| A4 ')), inputOf(clash)];
  const jobs = inputs.flatMap(input => [createBits(input), createReportDocument(input)]);
  const printed = await printDocuments(jobs, { browser });
  expect(printed).toHaveLength(6);
  for (const { pdf } of printed) expect(pdf.length).toBeGreaterThan(10_000);
}, 120_000);
