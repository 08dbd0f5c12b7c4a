import { describe, expect, it } from 'vitest';
import { writeGithub } from '../../src/findings/formats/github.js';
import { acceptedFinding, fullFinding, sampleFile, sampleFindings } from './sample-findings.js';

const sample = sampleFile('schemes/a,b: 50%.md');

// Escapes as the forge's own toolkit makes them (actions/toolkit, packages/core/src/command.ts).
describe('findings as workflow commands', () => {
  it('are one line each, with all that would end a part escaped', () => {
    const text = writeGithub([fullFinding(sample)]);
    expect(text.match(/\n/g)).toHaveLength(1);
    expect(text).toMatch(
      /^::error file=schemes\/a%2Cb%3A 50%25\.md,line=2,endLine=2,col=10,endColumn=13,title=ghost-chord::Three corners: 100 %25 \{sure\}, and%0Amore/,
    );
    expect(text).toContain('%0AWay out: Use two keys.%0AWay out: Use keys of one row.\n');
  });

  it('are warnings and notices by severity, and none for what is accepted', () => {
    const [warning] = sampleFindings(sample);
    if (warning === undefined) throw new RangeError('no sample');
    expect(writeGithub([warning])).toMatch(/^::warning /);
    expect(writeGithub([{ ...warning, severity: 'note' }])).toMatch(/^::notice /);
    expect(writeGithub([acceptedFinding(sample)])).toBe('');
  });
});
