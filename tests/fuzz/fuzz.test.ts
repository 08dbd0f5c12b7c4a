import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { compile } from '../../src/compile.js';
import { builtInTemplates } from '../../src/documents/page/templates.js';
import { examine, examinedToo } from './examine.js';
import { createCases } from './generate.js';
import { checkPlaces } from './places.js';

const makeCase = createCases(fileURLToPath(new URL('../..', import.meta.url)));
const RUNS = 300;
/** CPU time that no check may take on a slow machine under load, ms; the fuzzer itself is stricter. */
const PATIENCE = 20_000;

it(`${RUNS} random and mutated schemes go through without a fault`, { timeout: 300_000 }, async () => {
  const faults: string[] = [];
  let findings = 0;
  let playing = 0;
  for (let seed = 1; seed <= RUNS; seed++) {
    const fuzzCase = makeCase(seed);
    const examined = await examine(fuzzCase, {
      templates: builtInTemplates,
      mostMs: PATIENCE,
      ...examinedToo(seed, fuzzCase.plays),
    });
    faults.push(...examined.faults.map(fault => `seed ${seed}: ${fault}`));
    findings += examined.findings;
    if (fuzzCase.plays) playing++;
  }
  expect(faults).toEqual([]);
  // The generator does make what it is to make.
  expect(findings).toBeGreaterThan(RUNS);
  expect(playing).toBeGreaterThan(0);
});

it('the same seed makes the same case', () => {
  expect(makeCase(7)).toEqual(makeCase(7));
  expect(makeCase(7)).not.toEqual(makeCase(8));
});

it('a finding whose place is off is noticed', () => {
  const text = '# Title\r\n\r\n## Nonsense\r\n';
  const files = [{ path: 'scheme.md', text }];
  const { findings } = compile(files);
  const [finding] = findings.filter(({ rule }) => rule === 'unknown-heading');
  if (finding === undefined) throw new Error('the heading was not noticed');
  const { start, end } = finding.at.range;
  const moved = (range: typeof finding.at.range) => [{ ...finding, at: { ...finding.at, range } }];
  expect(checkPlaces(findings, files)).toEqual([]);
  for (const wrong of [
    { start: end, end: start },
    { start: { ...start, line: start.line + 1 }, end },
    { start: { ...start, column: start.column - 1 }, end },
    { start, end: { ...end, offset: text.length + 1 } },
  ])
    expect(checkPlaces(moved(wrong), files), JSON.stringify(wrong)).toHaveLength(1);
  expect(checkPlaces([{ ...finding, at: { ...finding.at, file: 'other.md' } }], files)).toHaveLength(1);
});

it('a fault of the compiler is told, not thrown', async () => {
  const fuzzCase = { ...makeCase(1), files: [{ path: 'scheme.md', text: undefined as unknown as string }] };
  const { faults } = await examine(fuzzCase, { templates: builtInTemplates });
  expect(faults).toHaveLength(1);
});
