import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compile } from '../../src/compile.js';
import type { Finding } from '../../src/findings/finding.js';
import { listCases, readMarked } from '../support/cases.js';

/** What the check proposes is tried: the scheme with the proposed fallback row no longer has the finding. */
describe('a proposed fallback does away with the finding', () => {
  const tried = listCases()
    .filter(({ rule }) => ['no-fallback', 'lost-action', 'lost-value'].includes(rule))
    .flatMap(({ rule, name, folder }) => {
      const text = readMarked('scheme.md', readFileSync(join(folder, 'scheme.md'), 'utf8')).file.text;
      return findingsOf(text)
        .filter(finding => finding.rule === rule)
        .flatMap(finding => {
          const row = proposedRow(finding);
          return row === null ? [] : [{ name: `${rule}/${name}: ${row}`, text, finding, row }];
        });
    });

  test('there are proposals to try', () => {
    expect(tried.length).toBeGreaterThan(8);
  });

  test.each(tried)('$name', ({ text, finding, row }) => {
    const after = findingsOf(withFallback(text, row));
    expect(after.filter(({ rule }) => rule === 'bad-value' || rule === 'unknown-name')).toEqual([]);
    expect(after.filter(each => isSame(each, finding))).toEqual([]);
  });

  test('says why the control is free', () => {
    for (const { finding } of tried)
      expect(finding.waysOut.join(' ')).toMatch(/It is free: no row of “.+” uses/);
  });
});

const findingsOf = (text: string): readonly Finding[] => compile([{ path: 'scheme.md', text }]).findings;

/** `| left difficulty | Wind | Title: SELECT press |` */
function proposedRow({ waysOut }: Finding): string | null {
  for (const way of waysOut) {
    const [, without, subject, instead] = /without (.+?), for “(.+?)”, instead `(.+?)`/.exec(way) ?? [];
    if (instead !== undefined) return `| ${without} | ${subject} | ${instead} |`;
  }
  return null;
}

function withFallback(text: string, row: string): string {
  const head = '| Without | For | Instead |\n| --- | --- | --- |\n';
  const heading = '## Fallbacks\n\n';
  if (!text.includes(heading)) return `${text}\n${heading}${head}${row}\n`;
  // A row for the same subject makes way for the proposed one.
  const [before = '', after = ''] = text.split(heading);
  const [, , ...rows] = (after.split('\n\n')[0] ?? '').trim().split('\n');
  const subject = row.split('|')[2]?.trim() ?? '';
  const kept = rows.filter(each => each.split('|')[2]?.trim() !== subject);
  return `${before}${heading}${head}${[...kept, row].join('\n')}\n`;
}

const isSame = (one: Finding, other: Finding): boolean =>
  one.rule === other.rule &&
  one.mode === other.mode &&
  String(one.actions) === String(other.actions) &&
  String(one.settings) === String(other.settings) &&
  String(one.players) === String(other.players);
