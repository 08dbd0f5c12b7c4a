import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { symbolOf, symbolPart } from '../../src/language/symbol.js';

describe('a name as a part of a symbol', () => {
  it.each([
    ['Laid to', 'LAID_TO'],
    ["Mind's eye", 'MINDS_EYE'],
    ['Mind’s eye', 'MINDS_EYE'],
    ['0.5-up', '0_5_UP'],
    ['Étoile', 'ETOILE'],
    ['Größe', 'GROESSE'],
    ['Вперёд', 'VPERYOD'],
    ['日本', 'U65E5_U672C'],
    ['左 2', 'U5DE6_2'],
  ])('%s is %s', (name, part) => {
    expect(symbolPart(name)).toBe(part);
  });

  it('has a place of its own in the whole symbol, which never begins with a digit', () => {
    expect(symbolOf('LH', 'Harbour', 'Steer', 'left A', 'up')).toBe('LH_HARBOUR_STEER_LEFT_A_UP');
    expect(symbolOf('2P', 'x')).toBe('_2P_X');
  });

  // What all four assemblers take as a symbol: letters, digits and _, no digit first.
  it('is never empty and never breaks out, whatever the name', () => {
    const name = fc.string({ unit: 'binary', minLength: 1 });
    fc.assert(fc.property(name, text => /^[A-Z0-9_]+$/.test(symbolPart(text))));
    fc.assert(fc.property(name, name, (a, b) => /^[A-Z_][A-Z0-9_]*$/.test(symbolOf(a, b))));
  });
});
