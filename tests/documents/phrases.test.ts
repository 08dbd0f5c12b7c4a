import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readPairs } from '../../src/documents/page/markdown-table.js';
import { builtInTemplates, readTemplate } from '../../src/documents/page/templates.js';
import { PHRASE_KEYS, PHRASES } from '../../src/documents/phrase-keys.js';
import { checkPhrases, findPhrases } from '../../src/documents/phrases.js';
import { createReport } from '../../src/findings/report.js';
import { EVERYTHING } from './everything-scheme.js';
import { inputOf, withGame } from './inputs.js';

const LANGUAGES = ['en', 'de', 'fr'];
const textsOf = (language: string) =>
  readPairs(readTemplate(builtInTemplates, ['phrases', `${language}.md`]));
const namesIn = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name ?? '').sort();

describe.each(LANGUAGES)('the phrases of %s', language => {
  it('are complete, and there are no others', () => {
    expect([...textsOf(language).keys()].sort()).toEqual([...PHRASE_KEYS].sort());
    for (const [key, text] of textsOf(language)) expect(text, key).not.toBe('');
  });

  it('use the parameters they are given, and each of them', () => {
    for (const key of PHRASE_KEYS) {
      const used = new Set(namesIn(textsOf(language).get(key) ?? '').map(name => name.toLowerCase()));
      expect([...used].sort(), key).toEqual(
        [...new Set(PHRASES[key].map(name => name.toLowerCase()))].sort(),
      );
    }
  });

  // Typography: The Chicago Manual of Style (17th ed., 6.115), DIN 5008:2020, Lexique des règles typographiques en
  // usage à l'Imprimerie nationale (2002); all quoted from memory.
  it('are set with the quotes and spaces of the language', () => {
    for (const [key, text] of textsOf(language)) {
      expect(text, key).not.toMatch(/["']/);
      if (language === 'fr') {
        expect(text, key).not.toMatch(/[^\u00a0]:/);
        expect(text, key).not.toMatch(/[^\u202f][;?!]/);
        expect(text, key).not.toMatch(/[“”„]/);
      }
      if (language === 'de') expect(text, key).not.toMatch(/„[^“]*”|“[^„]*“/);
    }
  });
});

it('every phrase is used', () => {
  const roots = ['documents', 'tryout'].map(name =>
    fileURLToPath(new URL(`../../src/${name}`, import.meta.url)),
  );
  const code = roots
    .flatMap(root => readdirSync(root, { recursive: true, encoding: 'utf8' }).map(name => join(root, name)))
    .filter(name => name.endsWith('.ts') && !name.endsWith('phrase-keys.ts'))
    .map(name => readFileSync(name, 'utf8'))
    .join('\n');
  // Keys that are put together from a part and a name of the language.
  const composed =
    /^(label|the|press|release|push|together|short|player|console|panel|controller|mode kind|panel switch|index|port|held|hold|tap|double tap|repeat|at|flip|flip to|turn|section)\b/;
  const unused = PHRASE_KEYS.filter(key => {
    const name = key.replace(/ \((one|other)\)$/, '');
    return !code.includes(`'${name}'`) && !composed.test(name);
  });
  expect(unused).toEqual([]);
});

describe('the language of a scheme', () => {
  // RFC 4647, 3.4: parts are taken from the end of the tag until one fits.
  it.each([
    ['de', 'de'],
    ['de-AT', 'de'],
    ['DE-de-1996', 'de'],
    ['fr-CA', 'fr'],
    ['en-GB', 'en'],
    ['nl', null],
    ['deu', null],
  ])('%s is served by %s', (tag, fits) => {
    const found = findPhrases(tag, builtInTemplates);
    expect(found.fits).toBe(fits);
    expect(found.phrases.language).toBe(fits ?? 'en');
  });

  it('counts as CLDR does', () => {
    const say = (language: string, count: number) =>
      findPhrases(language, builtInTemplates).phrases.count('seconds', count);
    expect(say('en', 1)).toBe('1 second');
    expect(say('en', 0.5)).toBe('0.5 seconds');
    expect(say('de', 0.5)).toBe('0,5 Sekunden');
    expect(say('fr', 0.5)).toBe('0,5 seconde');
    expect(say('fr', 2)).toBe('2 secondes');
  });

  it('lowers the capital of an action within an English sentence only', () => {
    const item = (language: string, Action: string) =>
      findPhrases(language, builtInTemplates).phrases.say('together item', { how: 'x', Action });
    expect(item('en', 'Throw')).toBe('x to throw');
    expect(item('en', 'USO')).toBe('x to USO');
    expect(item('de', 'Werfen')).toBe('„Werfen“ (x)');
  });
});

describe('missing-phrase', () => {
  const findingsFor = (language: string, templates: string) => {
    const { report, findings } = createReport();
    checkPhrases(inputOf(withGame(EVERYTHING, { Language: language })).scheme, templates, report);
    return findings;
  };

  it('is silent for the languages that come with the program', () => {
    for (const language of LANGUAGES) expect(findingsFor(language, builtInTemplates)).toEqual([]);
  });

  it('names a language without a file, and points at its tag', () => {
    const [finding, ...more] = findingsFor('nl', builtInTemplates);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ rule: 'missing-phrase', severity: 'warning' });
    expect(finding?.message).toContain('“nl”');
    const { start, end } = finding?.at.range ?? { start: { offset: 0 }, end: { offset: 0 } };
    expect(withGame(EVERYTHING, { Language: 'nl' }).slice(start.offset, end.offset)).toBe('nl');
  });

  it('names the phrases that a file lacks; English stands in for them', () => {
    const folder = mkdtempSync(join(tmpdir(), 'templates-'));
    try {
      mkdirSync(join(folder, 'phrases'));
      const text = readTemplate(builtInTemplates, ['phrases', 'en.md'])
        .replace(/^\| contents .*\n/m, '')
        .replace(/^\| or +\|.*$/m, '| or | of |');
      writeFileSync(join(folder, 'phrases', 'nl.md'), text);
      const [finding, ...more] = findingsFor('nl-BE', folder);
      expect(more).toEqual([]);
      expect(finding?.message).toContain('“contents”');
      const { phrases, missing } = findPhrases('nl-BE', folder);
      expect(missing).toEqual(['contents']);
      expect(phrases.say('contents')).toBe('Contents');
      expect(phrases.say('or')).toBe('of');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
