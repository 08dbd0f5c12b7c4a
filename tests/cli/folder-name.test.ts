import { join, relative } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { folderName } from '../../src/cli/build/folder-name.js';

describe('the name of a set’s folder', () => {
  it.each([
    ['Lantern Harbour', 'lantern-harbour'],
    ['Mind’s Eye & Co. 2', 'minds-eye-and-co-2'],
    ['Größe Åland', 'groesse-aland'],
    ['../../etc/passwd', 'etc-passwd'],
    ['CON', 'con-game'],
    ['lpt1', 'lpt1-game'],
    ['con-game', 'con-game'],
    ['.hidden', 'hidden'],
    ['日本', 'my-file'],
    ['…', 'my-file'],
    ['x'.repeat(300), 'x'.repeat(60)],
    [`${'x'.repeat(59)} yz`, 'x'.repeat(59)],
  ])('%j is %j', (title, name) => {
    expect(folderName(title, 'My File')).toBe(name);
  });

  it('is “scheme” where nothing else is there', () => {
    expect(folderName('', '')).toBe('scheme');
  });

  it('is always one plain name, whatever the title', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.string(), (title, file) => {
        const name = folderName(title, file);
        expect(name).toMatch(/^[a-z0-9]+(?:-[a-z0-9]+)*$/);
        expect(relative('/out', join('/out', name))).toBe(name);
      }),
    );
  });
});
