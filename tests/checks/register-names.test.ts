import { readdirSync, readFileSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';
import { REGISTER_NAMES } from '../../src/checks/words/register-names.js';
import { tool } from '../support/tools.js';

/** The register equates that Debian's cc65 ships for the video chip and the 6532, found by what stands in them. */
function equatesOf(ca65: string): readonly string[] {
  const folder = join(dirname(realpathSync(ca65)), '..', 'share', 'cc65', 'asminc');
  const texts = readdirSync(folder)
    .filter(name => name.endsWith('.inc'))
    .map(name => readFileSync(join(folder, name), 'utf8'))
    .filter(text => /^CXBLPF\b/m.test(text) || /^SWACNT\b/m.test(text));
  return texts.flatMap(text => [...text.matchAll(/^([A-Z][A-Z0-9]*)\s*:?=/gm)].map(([, name = '']) => name));
}

it('are those of the equates that Debian’s cc65 ships', () => {
  const equates = equatesOf(tool('ca65'));
  expect([...REGISTER_NAMES].sort()).toEqual([...new Set(equates)].sort());
});
