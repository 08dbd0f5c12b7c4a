/** Examines the seeds its parent sends, one at a time, and sends back what came of each. */
import { examine, examinedToo } from './examine.js';
import { createCases } from './generate.js';
import type { FuzzJob, FuzzResult } from './jobs.js';

const [root = '.', templates = 'templates'] = process.argv.slice(2);
const makeCase = createCases(root);

process.on('message', async ({ seeds }: FuzzJob) => {
  for (const seed of seeds) {
    send({ kind: 'begun', seed });
    const fuzzCase = makeCase(seed);
    send({
      kind: 'done',
      seed,
      ...(await examine(fuzzCase, { templates, ...examinedToo(seed, fuzzCase.plays) })),
    });
  }
  send({ kind: 'free' });
});

send({ kind: 'free' });

function send(result: FuzzResult): void {
  process.send?.(result);
}
