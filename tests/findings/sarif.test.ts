import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import AjvDraft04 from 'ajv-draft-04';
import addFormats from 'ajv-formats';
import type { Log } from 'sarif';
import { describe, expect, it } from 'vitest';
import { RULES } from '../../src/findings/catalogue.js';
import type { Finding } from '../../src/findings/finding.js';
import { writeSarif } from '../../src/findings/formats/sarif.js';
import { acceptedFinding, fullFinding, sampleFile, sampleFindings } from './sample-findings.js';

/**
 * The schema published with the standard (OASIS, Static Analysis Results Interchange Format 2.1.0, JSON schema
 * rtm.5), as the npm package @microsoft/jest-sarif ships it.
 */
function createValidator() {
  const require = createRequire(import.meta.url);
  const entry = require.resolve('@microsoft/jest-sarif');
  const path = join(dirname(entry), 'schemas', 'sarif-2.1.0-rtm.5.json');
  const ajv = new AjvDraft04.default({ strict: false, allErrors: true, unicodeRegExp: false });
  addFormats.default(ajv);
  return ajv.compile(JSON.parse(readFileSync(path, 'utf8')));
}

const validate = createValidator();
const sample = sampleFile();
const all: readonly Finding[] = [fullFinding(sample), ...sampleFindings(sample), acceptedFinding(sample)];

function log(findings: readonly Finding[]): Log {
  return JSON.parse(writeSarif(findings, '1.2.3'));
}

describe('findings as SARIF', () => {
  it.each([
    ['none', []],
    ['all kinds', all],
    ['an absolute path', sampleFindings(sampleFile('/tmp/tin whistle#1.md'))],
  ])('validate against the published schema: %s', (_, findings) => {
    expect(validate(log(findings)), JSON.stringify(validate.errors)).toBe(true);
  });

  it('would not validate with a fault in it', () => {
    const broken = JSON.parse(writeSarif(all, '1.2.3').replace('"startLine": 2', '"startLine": 0'));
    expect(validate(broken)).toBe(false);
  });

  it('name every rule of the catalogue, with help, and each result its own', () => {
    const [run] = log(all).runs;
    const rules = run?.tool.driver.rules ?? [];
    expect(rules.map(({ id }) => id)).toEqual(Object.keys(RULES));
    for (const rule of rules) expect(rule.help?.text).not.toBe('');
    for (const { ruleId, ruleIndex } of run?.results ?? []) expect(rules[ruleIndex ?? -1]?.id).toBe(ruleId);
  });

  it('point at the words, the end exclusive, and at related places', () => {
    const result = log(all).runs[0]?.results?.[0];
    expect(result?.locations?.[0]?.physicalLocation).toEqual({
      artifactLocation: { uri: 'schemes/tin%20whistle.md' },
      region: { startLine: 2, startColumn: 10, endLine: 2, endColumn: 14, charOffset: 23, charLength: 4 },
    });
    expect(result?.relatedLocations?.[0]?.message?.text).toBe('the other is here');
    expect(result?.properties?.['witness']).toBeDefined();
  });

  it('double the braces of a text: alone they stand for parameters (3.11.5)', () => {
    expect(log(all).runs[0]?.results?.[0]?.message.text).toContain('{{sure}}');
  });

  it('suppress what is accepted, with the reason', () => {
    const result = log([acceptedFinding(sample)]).runs[0]?.results?.[0];
    expect(result?.level).toBe('note');
    expect(result?.suppressions).toEqual([
      { kind: 'inSource', status: 'accepted', justification: 'As it always was.' },
    ]);
  });
});
