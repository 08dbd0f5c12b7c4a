import { describe, expect, it } from 'vitest';
import { RULES } from '../src/findings/catalogue.js';
import { expectsFinding, listCases, readMarked, runCase } from './support/cases.js';

const cases = listCases();

describe.each(Object.keys(RULES))('rule %s', rule => {
  it('has cases with the finding, and cases close to it without', () => {
    const own = cases.filter(one => one.rule === rule);
    expect(own.filter(expectsFinding)).not.toEqual([]);
    expect(own.filter(one => !expectsFinding(one))).not.toEqual([]);
  });

  it.each(cases.filter(one => one.rule === rule))('$name', one => {
    expect(runCase(one).join('\n')).toBe('');
  });
});

describe('the cases themselves', () => {
  it('belong to rules of the catalogue', () => {
    const strangers = cases.filter(({ rule }) => !Object.hasOwn(RULES, rule));
    expect(strangers).toEqual([]);
  });

  it('have names that can be read', () => {
    for (const { name } of cases) expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it('take marks out and know where they were', () => {
    const { file, marks } = readMarked('a.md', 'one ⟦two⟧ three ⟦four⟧');
    expect(file.text).toBe('one two three four');
    expect(marks).toEqual([
      { file: 'a.md', start: 4, end: 7 },
      { file: 'a.md', start: 14, end: 18 },
    ]);
  });
});
