import { readdirSync, readFileSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { REGISTERS } from '../../../src/hardware/registers.js';
import { tool } from '../../support/tools.js';

/** The equates that Debian's cc65 package brings for the two chips: the files are found by what they define. */
function equatesOf(ca65: string): ReadonlyMap<string, number> {
  const folder = join(dirname(realpathSync(ca65)), '..', 'share', 'cc65', 'asminc');
  const texts = readdirSync(folder)
    .filter(name => name.endsWith('.inc'))
    .map(name => readFileSync(join(folder, name), 'latin1'))
    .filter(text => /^(SWACNT|INPT4)\s*:?=/m.test(text));
  const found = texts.flatMap(text => [...text.matchAll(/^([A-Z0-9]+)\s*:?=\s*\$([0-9A-Fa-f]+)/gm)]);
  return new Map(found.map(([, name, hex]) => [name ?? '', Number.parseInt(hex ?? '', 16)]));
}

test('register addresses are those of the equates in cc65', () => {
  const equates = equatesOf(tool('ca65'));
  const known = Object.values(REGISTERS).map(({ symbol }) => [symbol, equates.get(symbol)]);
  expect(known).toEqual(Object.values(REGISTERS).map(({ symbol, address }) => [symbol, address]));
  expect(known).toHaveLength(11);
});
