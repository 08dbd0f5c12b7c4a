import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.js';
import { writeReportJson } from '../../src/documents/report-json.js';
import { smallScheme } from '../cli/test-terminal.js';
import { expectGolden } from '../support/golden.js';
import { acceptedFinding, fullFinding, sampleFile } from './sample-findings.js';

const text = smallScheme();
const files = [{ path: 'game.md', text }];
const compiled = compile(files);
const sample = sampleFile();

describe('the report as data', () => {
  it('has its fields in a fixed order, those without a value left out', () => {
    const findings = [fullFinding(sample), acceptedFinding(sample)];
    expectGolden('formats/report.json', writeReportJson({ ...compiled, files, findings }));
  });

  it('is the same bytes each time', () => {
    const again = compile([{ path: 'game.md', text }]);
    expect(writeReportJson({ ...again, files })).toBe(writeReportJson({ ...compiled, files }));
  });

  it('of a file that holds no scheme names the file and nothing else', () => {
    const empty = [{ path: 'empty.md', text: '' }];
    const report = JSON.parse(writeReportJson({ ...compile(empty), files: empty }));
    expect(report.scheme).toEqual({ files: ['empty.md'] });
    expect(report.coverage).toEqual([]);
    expect(report.summary.errors).toBe(report.findings.length);
  });
});
