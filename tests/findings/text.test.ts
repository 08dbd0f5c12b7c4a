import { describe, expect, it } from 'vitest';
import { createColours } from '../../src/findings/formats/colours.js';
import { visibleText } from '../../src/findings/formats/terminal-text.js';
import { writeText } from '../../src/findings/formats/text.js';
import { foldWitness } from '../../src/findings/formats/timeline.js';
import { expectGolden } from '../support/golden.js';
import { acceptedFinding, fullFinding, sampleFile, sampleFindings } from './sample-findings.js';

const sample = sampleFile();
const options = { colours: createColours(false), width: 80 };

describe('findings as text', () => {
  it('show the line, underline the words and say the rest', async () => {
    const findings = [fullFinding(sample), acceptedFinding(sample)];
    expectGolden('formats/full.txt', await writeText(findings, [sample.file], options));
  });

  it('underline wide, combining, tabbed and far words', async () => {
    expectGolden('formats/underlines.txt', await writeText(sampleFindings(sample), [sample.file], options));
  });

  // Columns by the Unicode East Asian Width property (UAX #11) and by hand: tabs go to the next multiple of four.
  it.each([
    [1, 9, 4], // `| left | Blow`
    [2, 4, 8], // tab to 4; `two`, tab to 8, `tabs` to 12
    [3, 13, 2], // `| ` + 4 wide + ` | `
    [4, 8, 3], // combining marks take no column
    [5, 7, 1], // the picture takes two
    [6, 14, 4], // escape, bell and the mark that turns the text are shown as signs
  ])('at the right columns, number %i', async (number, indent, marked) => {
    const findings = sampleFindings(sample);
    const text = await writeText(findings.slice(number - 1, number), [sample.file], options);
    const line = text.split('\n').find(one => one.includes('^'));
    expect(line).toBe(`    | ${' '.repeat(indent)}${'^'.repeat(marked)}`);
  });

  it('never send a character to the terminal that would act there', async () => {
    const text = await writeText(sampleFindings(sample), [sample.file], options);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are looked for.
    expect(text.replaceAll('\n', '')).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
    expect(visibleText('a\u001b[2Jb\u009bc')).toBe('a␛[2Jb\ufffdc');
  });

  it('cut a line of ten million characters', async () => {
    const long = `${'x'.repeat(5_000_000)}here${'y'.repeat(5_000_000)}`;
    const point = (column: number) => ({ line: 1, column, offset: column - 1 });
    const at = { file: 'a.md', range: { start: point(5_000_001), end: point(5_000_005) } };
    const findings = sampleFindings({ ...sample, places: [at] });
    const text = await writeText(findings, [{ path: 'a.md', text: long }], options);
    expect(text).toContain('xxxhereyyy');
    expect(text.length).toBeLessThan(700);
  });

  it('say that there are none', async () => {
    expect(await writeText([], [], options)).toBe('no findings\n');
  });

  it('use colours only when told to', async () => {
    const text = await writeText([fullFinding(sample)], [sample.file], {
      ...options,
      colours: createColours(true),
    });
    expect(text).toContain('\u001b[31m');
  });
});

describe('a witness', () => {
  it('is folded where reads are alike', () => {
    const { witness } = fullFinding(sample);
    const rows = witness === undefined ? [] : foldWitness(witness);
    expect(rows.map(({ first, last }) => [first, last])).toEqual([
      [0, 0],
      [1, 1],
      [2, 3],
      [4, 4],
    ]);
  });
});
