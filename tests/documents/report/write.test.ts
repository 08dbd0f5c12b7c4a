import { describe, expect, test } from 'vitest';
import { withCode } from '../../../src/documents/report/inline-code.js';
import { viewReport } from '../../../src/documents/report/view.js';
import { writeReport } from '../../../src/documents/report/write.js';
import type { Finding } from '../../../src/findings/finding.js';
import { unreadScheme } from '../../../src/unread-scheme.js';
import { DYE_WORKS, inputOf } from '../bits/support.js';
import { outsideReferences, parsePage } from './parsed-page.js';
import { SLUICE_RUN } from './sluice.js';

const input = inputOf(DYE_WORKS, 'dye-works.md');
const html = writeReport(input);

const at = (line: number) => ({
  file: 'scheme.md',
  range: { start: { line, column: 3, offset: 2 }, end: { line, column: 6, offset: 5 } },
});

const findingOf = (severity: Finding['severity'], message: string): Finding => ({
  rule: 'unknown-heading',
  severity,
  message,
  at: at(1),
  waysOut: ['Mend it.'],
  ...(severity === 'accepted' ? { why: 'It is meant so.' } : {}),
});

describe('report.html', () => {
  test('is well formed by the HTML standard (parse5) and refers to nothing outside itself', () => {
    for (const page of [html, writeReport(inputOf(SLUICE_RUN))]) {
      expect(parsePage(page).errors).toEqual([]);
      expect(outsideReferences(page)).toEqual([]);
    }
  });

  test('says each finding, what it does to the player, and every way out', () => {
    const { text } = parsePage(html);
    const plain = (words: string) => words.replaceAll('`', '').replace(/\s+/g, ' ').trim();
    const flat = text.replace(/\s+/g, '');
    expect(input.findings.length).toBeGreaterThan(10);
    for (const { message, waysOut, rule } of input.findings) {
      for (const words of [message, ...waysOut, rule])
        expect(flat).toContain(plain(words).replace(/\s+/g, ''));
    }
  });

  test('underlines the words of the scheme that a finding points at', () => {
    const marks = [...html.matchAll(/<mark>([^<]*)<\/mark>/g)].map(([, words]) => words);
    const [source] = input.files;
    const wanted = input.findings.map(({ at: { range } }) =>
      source?.text.slice(range.start.offset, range.end.offset),
    );
    expect(marks.length).toBeGreaterThanOrEqual(wanted.length);
    for (const words of wanted) expect(marks).toContain(words?.replaceAll('&', '&#x26;'));
  });

  test('is the same each time', () => {
    expect(writeReport(inputOf(DYE_WORKS, 'dye-works.md'))).toBe(html);
  });

  test('prints the matrix on a page of its own, on its side', () => {
    expect(html).toMatch(/@page wall\{size:279\.4mm 215\.9mm\}/);
    expect(html).toContain('class="coverage wall"');
  });
});

describe('the view', () => {
  const viewOf = (findings: readonly Finding[]) => viewReport({ ...input, findings });

  test('puts errors first, numbers through, and keeps accepted findings apart with their reasons', () => {
    const view = viewOf([
      findingOf('note', 'a'),
      findingOf('error', 'b'),
      findingOf('accepted', 'c'),
      findingOf('warning', 'd'),
      findingOf('error', 'e'),
    ]);
    expect(
      view.groups.map(({ title, findings }) => [
        title,
        findings.map(({ number, message }) => `${number} ${message}`),
      ]),
    ).toEqual([
      ['Errors', ['1 b', '2 e']],
      ['Warnings', ['3 d']],
      ['Notes', ['4 a']],
    ]);
    expect(view.accepted.map(({ number, message, why }) => [number, message, why])).toEqual([
      [5, 'c', 'It is meant so.'],
    ]);
    expect(view.summary).toEqual({ errors: 2, warnings: 1, notes: 1, accepted: 1 });
  });

  test('tells the verdict at a glance', () => {
    const headline = (findings: readonly Finding[], coverage = input.coverage) =>
      viewReport({ ...input, findings, coverage }).verdict;
    expect(headline([findingOf('error', 'a')])).toMatchObject({
      mark: 'broken',
      headline: 'Not ready: 1 error',
    });
    expect(headline([findingOf('warning', 'a'), findingOf('warning', 'b')])).toMatchObject({
      mark: 'altered',
      headline: 'Ready, with 2 warnings',
    });
    expect(headline([], null)).toMatchObject({ mark: 'plays', headline: 'Ready' });
    expect(headline([findingOf('note', 'a')], null).sentence).toContain('1 note');
    expect(headline([])).toMatchObject({ mark: 'altered' });
  });
});

describe('a scheme with little to report on', () => {
  test('without coverage the report says so', () => {
    const { text, errors } = parsePage(writeReport({ ...input, coverage: null }));
    expect(errors).toEqual([]);
    expect(text).toContain('Coverage was not explored');
  });

  test('a scheme of which nothing could be read has a report too', () => {
    const files = [{ path: 'scheme.md', text: '# x\n' }];
    const page = writeReport({
      ...input,
      scheme: unreadScheme(['scheme.md']),
      coverage: null,
      files,
      findings: [findingOf('error', 'Nothing here.')],
    });
    expect(parsePage(page).errors).toEqual([]);
    expect(parsePage(page).text).toContain('Nothing here.');
  });
});

test('a scheme’s text stays text', () => {
  const nasty = SLUICE_RUN.replace(
    '# Sluice Run',
    '# Sluice \\<img src=x onerror=alert(1)> \\</style>\\<script> Run',
  )
    .replace('Open | Open a sluice', 'Open | Open \\<b>a\\</b> sluice')
    .replace('stick down + button', 'stick down + <i>button</i>');
  const page = writeReport(inputOf(nasty, '<b>scheme</b>.md'));
  const { errors, elements, text } = parsePage(page);
  expect(errors).toEqual([]);
  expect(outsideReferences(page)).toEqual([]);
  expect(elements.filter(({ tagName }) => ['img', 'script', 'i'].includes(tagName))).toEqual([]);
  expect(elements.filter(({ tagName }) => tagName === 'style')).toHaveLength(1);
  expect(text).toContain('<img src=x onerror=alert(1)>');
  expect(text).toContain('<b>scheme</b>.md');
});

test('only what stands between backticks becomes code', () => {
  const tags = withCode('Write `<b>` or ` here').map(part => (typeof part === 'string' ? part : 'CODE'));
  expect(tags).toEqual(['Write ', 'CODE', ' or ` here']);
});
