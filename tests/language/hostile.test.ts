import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createReport } from '../../src/findings/report.js';
import { LIMITS } from '../../src/language/limits.js';
import { createReader } from '../../src/language/read.js';
import { plainText } from '../support/plain.js';
import { EVERYTHING, goodSchemes, read } from './fixture.js';

/** Milliseconds that no text may take, on a slow machine under load. */
const PATIENCE = 20_000;

const lines = EVERYTHING.split('\n');
const hostile = [
  '',
  '|',
  '| | | | | |',
  '`',
  '**',
  '\\',
  '&#0;',
  '\u0000',
  '\u202e',
  '__proto__',
  'constructor',
  '<script>',
  '</td>',
  '## ',
  '## Mode: ',
  '- Kind:',
  '- : x',
  '> | a |',
  '[x]: y',
  '```',
  '| --- |',
  '=cmd',
  '\uFFFD',
  '\uD800',
  'x'.repeat(3000),
];

/** A scheme that something was done to: lines cut, doubled, swapped, cells filled with hostile words. */
const mutated = fc
  .array(
    fc.record({
      kind: fc.constantFrom('cut', 'double', 'swap', 'cell', 'insert', 'chop'),
      line: fc.nat(lines.length - 1),
      other: fc.nat(lines.length - 1),
      text: fc.constantFrom(...hostile),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map(changes => {
    const changed = [...lines];
    for (const { kind, line, other, text } of changes) {
      const now = changed[line] ?? '';
      if (kind === 'cut') changed[line] = '';
      else if (kind === 'double') changed[line] = `${now}\n${now}`;
      else if (kind === 'swap') [changed[line], changed[other]] = [changed[other] ?? '', now];
      else if (kind === 'cell')
        changed[line] = now.replace(/\| *[^|]*\|(?= *[^|]*\|? *[^|]*$)/, `| ${text} |`);
      else if (kind === 'insert') changed[line] = `${now}${text}`;
      else changed[line] = now.slice(0, other % (now.length + 1));
    }
    return changed.join('\n');
  });

function expectSound(text: string): void {
  const { scheme, findings } = read(text);
  for (const { at, message, waysOut } of findings) {
    expect(at.range.start.offset).toBeLessThanOrEqual(at.range.end.offset);
    expect(at.range.end.offset).toBeLessThanOrEqual(text.length);
    expect(message).not.toMatch(/\{[A-Za-z]+\}|undefined|\[object/);
    expect(waysOut.length).toBeGreaterThan(0);
  }
  if (scheme !== null) expect(scheme.complete).toBe(findings.length === 0);
}

describe('a text that is no scheme', () => {
  it('is read without a crash, and each finding has a place in it', () => {
    fc.assert(fc.property(mutated, expectSound), { numRuns: 150 });
  });

  it.each([
    ['an empty file', ''],
    ['white space', ' \n\t\n \n'],
    ['a line of 10 million characters', 'x'.repeat(10_000_000)],
    ['a zero byte', 'PK\u0003\u0004\u0000\u0000 # Title'],
    ['a cell of a million characters', EVERYTHING.replace('Pull the rope', 'x'.repeat(1_000_000))],
    ['deep quotes', `${EVERYTHING}\n${'>'.repeat(5000)} deep`],
    ['deep lists on one line', `${EVERYTHING}\n${'- '.repeat(5000)} deep`],
    [
      'deep lists on many lines',
      `${EVERYTHING}\n${Array.from({ length: 500 }, (_, i) => `${' '.repeat(2 * i)}- a`).join('\n')}`,
    ],
    [
      'thousands of columns',
      EVERYTHING.replace(
        '| Name      | Time  |\n| --------- | ----- |',
        `${'| a '.repeat(3000)}|\n${'| - '.repeat(3000)}|`,
      ),
    ],
    [
      'thousands of cells outside the table',
      EVERYTHING.replace('| long pull | 1.5 s |', `| long pull | 1.5 s ${'| x '.repeat(3000)}|`),
    ],
    ['many brackets', `${EVERYTHING}\n${'['.repeat(15_000)}\n${'![['.repeat(5000)}`],
    ['much emphasis', `${EVERYTHING}\n${'*a _b '.repeat(3000)}`],
    ['nested emphasis', `${EVERYTHING}\n${'*a **b '.repeat(1500)}${'** *'.repeat(1500)}`],
    ['many headings', '## Mode: x\n'.repeat(3000)],
    [
      'binary noise',
      Array.from({ length: 20_000 }, (_, i) => String.fromCharCode((i * 7919) % 256)).join(''),
    ],
  ])('gets a finding, soon: %s', (_, text) => {
    const start = performance.now();
    const { findings } = read(text);
    expect(performance.now() - start).toBeLessThan(PATIENCE);
    if (text.length > 0 && text.includes('Bell Tower') && !/brackets|emphasis/.test(_))
      expect(findings).not.toEqual([]);
    expectSound(text);
  });

  it('is not read where it is over a limit, but other files are', () => {
    const { scheme, findings } = read(
      EVERYTHING,
      `## Manual: Long\n\n${'word '.repeat(LIMITS.characters / 5)}`,
    );
    expect(findings.map(({ rule, message }) => `${rule} ${message}`)).toEqual([
      expect.stringMatching(/^bad-value The file: the scheme is longer than/),
    ]);
    expect(scheme?.modes).toHaveLength(2);
    expect(scheme?.complete).toBe(false);
  });

  it('is told from others by names that every object has', () => {
    const names = ['__proto__', 'constructor', 'toString', 'hasOwnProperty'];
    for (const name of names) {
      const good = EVERYTHING.replaceAll('Ring', `\`${name}\``);
      if (/^[a-z]+$/i.test(name)) expect(read(good).findings).toEqual([]);
      const { findings } = read(EVERYTHING.replace('go to Tower', `go to \`${name}\``));
      expect(findings.map(({ rule }) => rule)).toEqual(['unknown-name']);
    }
  });
});

describe('a reader that keeps what it has parsed', () => {
  it('reads as a new one does', () => {
    const reader = createReader();
    const texts = goodSchemes().map(({ text }) => text);
    fc.assert(
      fc.property(fc.oneof(mutated, fc.constantFrom(...texts)), text => {
        const kept = createReport();
        const files = [{ path: '1.md', text }];
        const scheme = reader(files, kept.report);
        const fresh = read(text);
        expect(kept.findings).toEqual(fresh.findings);
        expect(plainText(scheme)).toBe(plainText(fresh.scheme));
      }),
      { numRuns: 40 },
    );
  });
});
