import { describe, expect, it } from 'vitest';
import { createIndex } from '../../src/documents/index-page/index-page.js';
import { viewIndex } from '../../src/documents/index-page/view.js';
import { builtInTemplates } from '../../src/documents/page/templates.js';
import { findPhrases } from '../../src/documents/phrases.js';
import { EVERYTHING } from './everything-scheme.js';
import { inputOf } from './inputs.js';

const input = inputOf(EVERYTHING, '/somebody/at/home/salt-orchard.md');
const { phrases } = findPhrases('en', builtInTemplates);

describe('the index page', () => {
  it('links what is there and nothing else', () => {
    const view = viewIndex(input, ['manual.html', 'report.html', 'report.json'], phrases);
    expect(view.groups.flatMap(({ links }) => links.flatMap(({ files }) => files))).toEqual([
      'manual.html',
      'report.html',
      'report.json',
    ]);
    expect(view.groups.map(({ title }) => title)).toEqual(['For the player', 'For the designer']);
  });

  it('counts the findings and says whether the set may be printed', () => {
    const count = (severity: string) =>
      input.findings.filter(finding => finding.severity === severity).length;
    const some = (severity: string) => `${count(severity)} ${severity}${count(severity) === 1 ? '' : 's'}`;
    const view = viewIndex(input, [], phrases);
    expect(view.verdict.count).toBe(
      `${some('error')}, ${some('warning')}, ${some('note')}, ${count('accepted')} accepted`,
    );
    expect(view.verdict.kind).toBe(
      count('error') > 0 ? 'errors' : count('warning') > 0 ? 'warnings' : 'fine',
    );
    expect(viewIndex({ ...input, findings: [] }, [], phrases).verdict.kind).toBe('fine');
  });

  it('counts one as one', () => {
    const one = input.findings.slice(0, 1).map(finding => ({ ...finding, severity: 'warning' as const }));
    const countIn = (language: string) =>
      viewIndex({ ...input, findings: one }, [], findPhrases(language, builtInTemplates).phrases).verdict
        .count;
    expect(countIn('en')).toBe('0 errors, 1 warning, 0 notes, 0 accepted');
    expect(countIn('de')).toBe('0 Fehler, 1 Warnung, 0 Hinweise, 0 hingenommen');
    expect(countIn('fr')).toBe('0 erreur, 1 avertissement, 0 remarque, 0 acceptée');
  });

  it('gives each seats row and console its worst verdict', () => {
    const { matrix } = viewIndex(input, [], phrases);
    expect(matrix?.rows).toHaveLength(4);
    for (const [index, row] of (matrix?.rows ?? []).entries()) {
      for (const [at, { verdict }] of row.cells.entries()) {
        const own = input.coverage?.cells.filter(
          cell => cell.seats === input.scheme.seats[index] && cell.console === input.scheme.consoles[at],
        );
        const order = ['broken', 'altered', 'plays', 'not offered'];
        const worst = Math.min(...(own ?? []).map(cell => order.indexOf(cell.verdict)));
        expect(verdict).toBe(order[worst]);
      }
    }
  });

  it('tells nobody where the scheme stood, and takes only pictures that are inside the page', () => {
    const picture = { document: 'manual', page: 1, width: 10, height: 14 } as const;
    const html = String(
      createIndex(
        input,
        ['manual.pdf'],
        [
          { ...picture, image: 'https://example.com/a.png' },
          { ...picture, image: 'data:text/html;base64,AAAA' },
          { ...picture, image: 'data:image/png;base64,AAAA' },
        ],
      ).content,
    );
    expect(html).not.toContain('somebody');
    expect(html).toContain('salt-orchard.md');
    expect([...html.matchAll(/<img/g)]).toHaveLength(1);
    expect(html).not.toContain('example.com');
  });
});
