import { describe, expect, it } from 'vitest';
import { fromSource, SOURCES, type SourceKey, sourceText } from '../../src/hardware/source.js';

/** The published sources that the hardware tables rest on, and the two kinds of fact that have none. */
const NAMED: readonly (readonly [SourceKey, readonly RegExp[]])[] = [
  ['G', [/^S\. Wright, programmer’s guide/, /TIA and PIA/, /3 December 1979$/]],
  ['M', [/^MOS Technology/, /MCS6500 family programming manual/, /1976$/]],
  ['D', [/^MOS Technology/, /6532 data sheet$/]],
  ['V', [/ITU-R BT\.1700/, /SMPTE 170M/, /colour subcarriers/]],
  ['P', [/^common practice/, /no source$/]],
  ['R', [/^from memory/, /to be checked on the bench$/]],
];

describe('the sources', () => {
  it.each(NAMED)('%s names what it stands for', (key, words) => {
    for (const word of words) expect(SOURCES[key]).toMatch(word);
  });

  it('are these six and no other', () => {
    expect(Object.keys(SOURCES)).toEqual(NAMED.map(([key]) => key));
  });
});

describe('a cited source', () => {
  it('keeps its section', () => {
    expect(fromSource('G', 'PIA 4.1')).toStrictEqual({ key: 'G', section: 'PIA 4.1' });
  });

  it('has no section, not an undefined one, where none is given', () => {
    expect(fromSource('M')).toStrictEqual({ key: 'M' });
  });

  it('is printed with its section behind its name', () => {
    expect(sourceText({ key: 'G', section: 'TIA 12.1' })).toBe(`${SOURCES.G}, section TIA 12.1`);
  });

  it('is printed as its name alone where it has no section', () => {
    expect(sourceText({ key: 'D' })).toBe(SOURCES.D);
  });
});
