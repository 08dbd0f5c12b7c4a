import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hasColours } from '../../src/cli/terminal.js';
import { RULES } from '../../src/findings/catalogue.js';
import { folderWith, run, smallScheme } from './test-terminal.js';

describe('new', () => {
  it('writes a scheme that compiles without a finding, of any severity', async () => {
    const folder = folderWith();
    expect((await run(folder, 'new')).code).toBe(0);
    const { code, out } = await run(folder, 'check', 'my-game.md', '--format', 'json');
    expect({ code, findings: JSON.parse(out).findings }).toEqual({ code: 0, findings: [] });
  });

  it('leaves a file that is there as it is', async () => {
    const folder = folderWith({ 'game.md': 'mine' });
    expect((await run(folder, 'new', 'game.md')).code).toBe(2);
    expect(readFileSync(join(folder, 'game.md'), 'utf8')).toBe('mine');
  });
});

describe('explain', () => {
  it('shows what a message names in capitals, and leaves out what is put to a word only at times', async () => {
    const { out } = await run(folderWith(), 'explain', 'on-the-way');
    expect(out).toContain('can’t be done without doing “X” (CONTROL GESTURE) first.');
  });

  it.each(Object.keys(RULES))('says all there is to say of %s', async rule => {
    const { code, out } = await run(folderWith(), 'explain', rule.toUpperCase());
    expect(code).toBe(0);
    for (const part of [rule, 'What it does', 'Ways out', 'Example']) expect(out).toContain(part);
    expect(out).not.toMatch(/\{[A-Za-z]+\}/);
  });

  it('lists every rule', async () => {
    const { out } = await run(folderWith(), 'explain');
    for (const rule of Object.keys(RULES)) expect(out).toContain(`  ${rule} `);
  });
});

describe('help', () => {
  it('names every command with what it does, examples and the exit codes', async () => {
    const { out } = await run(folderWith(), '--help');
    for (const command of ['new', 'check', 'build', 'explain', 'recipe', 'trace'])
      expect(out).toContain(`\n  ${command} `);
    expect(out).toMatch(/Examples:\n {2}leverleaf new/);
    expect(out).toContain('Exit codes: 0 fine, 1 the scheme has errors, 2');
  });

  it('gives the version of the package', async () => {
    const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    expect((await run(folderWith(), '--version')).out).toBe(`${version}\n`);
  });
});

describe('recipe', () => {
  it('says how to get there, step by step, and where the way is the same', async () => {
    const folder = folderWith();
    await run(folder, 'new', 'game.md');
    const { code, out } = await run(folder, 'recipe', 'game.md', 'LEAF');
    expect(code).toBe(0);
    expect(out).toMatch(/^On any console\n {2}1\. Dusk: .+ \(Take wing\)\n {2}2\. Flight: .+ \(Rest\)\n$/);
  });

  it('of the start mode has no step', async () => {
    const folder = folderWith({ 'game.md': smallScheme() });
    const { out } = await run(folder, 'recipe', 'game.md', 'Tune', '--console', 'six-switch');
    expect(out).toBe('On six-switch\n  from power-on, without a step\n');
  });

  it('of a scheme with faults of its language says what to do first', async () => {
    const folder = folderWith({ 'game.md': smallScheme().replace('joystick', 'joystik') });
    const { code, lines } = await run(folder, 'recipe', 'game.md', 'Tune');
    expect({ code, lines }).toEqual({
      code: 1,
      lines: ['The scheme has errors to mend first: leverleaf check game.md'],
    });
  });
});

describe('check', () => {
  it('prints the matrix of what plays where, told by sign and word', async () => {
    const folder = folderWith();
    await run(folder, 'new', 'game.md');
    const { out } = await run(folder, 'check', 'game.md', '--coverage');
    expect(out).toMatch(/^ +A +B\nDusk +● plays +◐ altered\n/);
    expect(out).toContain(
      '\nA  six-switch, four-switch; Solo; NTSC, PAL\nB  no-difficulty; Solo; NTSC, PAL\n',
    );
    expect(out).toContain('\nno findings\n');
  });

  it('narrows coverage to what is asked', async () => {
    const folder = folderWith();
    await run(folder, 'new', 'game.md');
    const asked = ['--console', 'Four-Switch', '--seats', 'solo', '--standard', 'pal'];
    const { out } = await run(folder, 'check', 'game.md', '--format', 'json', ...asked);
    const { coverage } = JSON.parse(out);
    expect(coverage.map((cell: { mode: string }) => cell.mode)).toEqual(['Dusk', 'Flight', 'Leaf']);
    for (const { console, seats, standard } of coverage) {
      expect([console, seats, standard]).toEqual(['four-switch', 'Solo', 'PAL']);
    }
  });

  it('does not take words from a scheme for its own', async () => {
    const folder = folderWith({ 'game.md': smallScheme('%s $& {action} \u001b[31m', 'key 5') });
    const { out } = await run(folder, 'check', 'game.md');
    expect(out).toContain('“Blow” in Tune needs key 5');
    expect(out).not.toContain('\u001b');
    const json = await run(folder, 'check', 'game.md', '--format', 'json');
    expect(JSON.parse(json.out).scheme.title).toContain('%s $& {action}');
  });
});

describe('colours', () => {
  // NO_COLOR as at no-color.org: any value but an empty one.
  it.each([
    [true, {}, true],
    [false, {}, false],
    [false, { CI: 'true' }, false],
    [true, { NO_COLOR: '1' }, false],
    [true, { NO_COLOR: '' }, true],
    [false, { FORCE_COLOR: '1' }, true],
    [false, { FORCE_COLOR: '0' }, false],
    [true, { FORCE_COLOR: '1', NO_COLOR: '1' }, false],
    [true, { TERM: 'dumb' }, false],
  ])('at a terminal: %s, with %j: %s', (isTerminal, environment, expected) => {
    expect(hasColours(isTerminal, environment)).toBe(expected);
  });
});

describe('trace', () => {
  const scheme = readFileSync(new URL('../../schemes/kiln-yard.md', import.meta.url), 'utf8');
  const log = (last: string) =>
    `SWCHA,SWCHB,INPT4,fires\n$FF,$0B,$80,\n$FF,$0B,$00,Light the kiln\n$FF,$0B,$80,\n$FF,$0B,$00,${last}\n`;

  it('says nothing of a build that does what the scheme says', async () => {
    const folder = folderWith({ 'game.md': scheme, 'log.csv': log('Lift') });
    expect(await run(folder, 'trace', 'game.md', 'log.csv')).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^4 reads: the build and the scheme agree/),
    });
  });

  it('names the read, the control and the action where they differ', async () => {
    const folder = folderWith({ 'game.md': scheme, 'log.csv': log('Set down') });
    const { code, out } = await run(folder, 'trace', 'game.md', 'log.csv');
    expect(code).toBe(1);
    expect(out).toMatch(/Read 3 \(line 5\), Yard, left button/);
    expect(out).toContain('“Lift” (left) should happen');
    expect(out).toContain('Set down');
  });

  it.each([
    { name: 'a log that is not there', words: ['game.md', 'none.csv'] },
    { name: 'a file that is no log', words: ['game.md', 'game.md'] },
    { name: 'seats that the scheme has not', words: ['game.md', 'log.csv', '--seats', 'Nobody'] },
  ])('can’t be run with $name', async ({ words }) => {
    const folder = folderWith({ 'game.md': scheme, 'log.csv': log('Lift') });
    const { code, out, lines } = await run(folder, 'trace', ...words);
    expect({ code, out, lines: lines.length }).toEqual({ code: 2, out: '', lines: 1 });
  });
});
