import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith, run, smallScheme } from './test-terminal.js';

describe('exit code 0', () => {
  it('is for a scheme without errors', async () => {
    const folder = folderWith({ 'game.md': smallScheme() });
    expect((await run(folder, 'check', 'game.md')).code).toBe(0);
  });

  it.each([['--help'], ['help'], ['help', 'check'], ['check', '--help'], ['--version'], ['explain']])(
    'is for %s %s',
    async (...words) => {
      const { code, out, lines } = await run(folderWith(), ...words);
      expect({ code, lines }).toEqual({ code: 0, lines: [] });
      expect(out).not.toBe('');
    },
  );
});

describe('exit code 1', () => {
  it.each(['text', 'json', 'sarif', 'github'])(
    'is for errors, which are still printed as %s',
    async format => {
      const folder = folderWith({ 'game.md': smallScheme('Tin Whistle', 'key 5') });
      const { code, out, lines } = await run(folder, 'check', 'game.md', '--format', format);
      expect({ code, lines }).toEqual({ code: 1, lines: [] });
      expect(out).toContain('no-such-control');
    },
  );

  it('is for a file that is empty: its findings say what is missing', async () => {
    const { code, out } = await run(folderWith({ 'game.md': '' }), 'check', 'game.md');
    expect(code).toBe(1);
    expect(out).toContain('missing-section');
    expect(out).toMatch(/not looked at yet: that takes a scheme that can be read whole\.\n$/);
  });

  it('is not for warnings alone', async () => {
    const scheme = smallScheme().replace('Play the note', '');
    const { code, out } = await run(folderWith({ 'game.md': scheme }), 'check', 'game.md');
    expect(code).toBe(0);
    expect(out).toContain('warning no-words');
  });
});

/** Each has a one-line complaint, whole. */
const badInput: readonly (readonly [name: string, words: readonly string[], complaint: RegExp])[] = [
  [
    'a file that is not there',
    ['check', 'none.md'],
    /^leverleaf: none\.md can't be read: it is not there\.$/,
  ],
  [
    'a folder without schemes',
    ['check', 'bare'],
    /^leverleaf: bare holds no scheme: there is no \.md file in this folder\.$/,
  ],
  ['a binary file', ['check', 'binary.md'], /^leverleaf: binary\.md is no text: it holds zero bytes\.$/],
  [
    'a file in another encoding',
    ['check', 'latin.md'],
    /^leverleaf: latin\.md is no UTF-8 text: save it in that encoding\.$/,
  ],
  [
    'a link that leads nowhere',
    ['check', 'dangling.md'],
    /^leverleaf: dangling\.md can't be read: it is not there\.$/,
  ],
  [
    'a link to itself',
    ['check', 'loop.md'],
    /^leverleaf: loop\.md can't be read: its links lead in a circle\.$/,
  ],
  [
    'a file used as a folder',
    ['check', 'game.md/x.md'],
    /^leverleaf: game\.md\/x\.md can't be read: a part of its path is no folder\.$/,
  ],
  [
    'an unknown command',
    ['chek', 'game.md'],
    /^leverleaf: unknown command 'chek' \(Did you mean check\?\) See leverleaf --help\.$/,
  ],
  [
    'the help of an unknown command',
    ['help', 'chek'],
    /^leverleaf: There is no command “chek”: did you mean “check”\? See leverleaf --help\.$/,
  ],
  ['an empty name', ['check', ''], /^leverleaf: No scheme is named: the name given is empty\.$/],
  ['an empty name of a new file', ['new', ''], /^leverleaf: The file has no name\.$/],
  [
    'an unknown option',
    ['check', 'game.md', '--forma', 'x'],
    /^leverleaf: unknown option '--forma' \(Did you mean --format\?\) See leverleaf check --help\.$/,
  ],
  [
    'a missing argument',
    ['check'],
    /^leverleaf: missing required argument 'scheme'\. See leverleaf check --help\.$/,
  ],
  [
    'an argument too many',
    ['check', 'game.md', 'other.md'],
    /^leverleaf: too many arguments.*See leverleaf check --help\.$/,
  ],
  [
    'an unknown format',
    ['check', 'game.md', '--format', 'xml'],
    /^leverleaf: option '-f, --format <format>' argument 'xml' is invalid\..*See leverleaf check --help\.$/,
  ],
  [
    'coverage in a format that has no place for it',
    ['check', 'game.md', '--coverage', '--format', 'sarif'],
    /^leverleaf: --coverage can't be printed as sarif: use --format text or json\.$/,
  ],
  [
    'a console that the scheme lacks',
    ['check', 'game.md', '--console', 'nine-switch'],
    /^leverleaf: The scheme has no console “nine-switch”: it has “six-switch”, “four-switch”, “no-difficulty”\.$/,
  ],
  [
    'a seats row that the scheme lacks',
    ['check', 'game.md', '--seats', 'Trio'],
    /^leverleaf: The scheme has no seats row “Trio”: it has “Solo”\.$/,
  ],
  [
    'a standard that the scheme lacks',
    ['check', 'game.md', '--standard', 'PAL'],
    /^leverleaf: The scheme has no TV standard “PAL”: it has “NTSC”\.$/,
  ],
  [
    'an unknown rule',
    ['explain', 'ghost-cord'],
    /^leverleaf: There is no rule “ghost-cord”: did you mean “ghost-chord”\?$/,
  ],
  [
    'a rule that is like none',
    ['explain', 'zzzzzzzzzz'],
    /^leverleaf: There is no rule “zzzzzzzzzz”: `leverleaf explain` lists all rules\.$/,
  ],
  ['a prototype’s name as a rule', ['explain', 'constructor'], /^leverleaf: There is no rule “constructor”/],
  [
    'a new file that is there',
    ['new', 'game.md'],
    /^leverleaf: game\.md is there already and stays as it is: give another name\.$/,
  ],
  [
    'a new file in a folder that is not there',
    ['new', 'none/game.md'],
    /^leverleaf: none\/game\.md can't be written: it is not there\.$/,
  ],
  [
    'an unknown mode',
    ['recipe', 'game.md', 'Tuna'],
    /^leverleaf: The scheme has no mode or variation “Tuna”: did you mean “Tune”\?$/,
  ],
  [
    'templates that are not there',
    ['build', 'game.md', '--templates', 'none'],
    /^leverleaf: The templates none can't be read: it is not there\.$/,
  ],
  [
    'templates that are no folder',
    ['build', 'game.md', '--templates', 'game.md'],
    /^leverleaf: The templates game\.md are no folder\.$/,
  ],
];

describe('exit code 2', () => {
  it.each(badInput)('is for %s, said in one line', async (_, words, complaint) => {
    const folder = folderWith({
      'game.md': smallScheme(),
      'binary.md': Uint8Array.of(0x23, 0x20, 0, 1, 2),
      'latin.md': Uint8Array.of(0x23, 0x20, 0xe9, 0x20),
    });
    mkdirSync(join(folder, 'bare'));
    writeFileSync(join(folder, 'bare', 'notes.txt'), 'nothing');
    symlinkSync('nowhere.md', join(folder, 'dangling.md'));
    symlinkSync('loop.md', join(folder, 'loop.md'));
    const { code, out, lines } = await run(folder, ...words);
    expect({ code, out, count: lines.length }).toEqual({ code: 2, out: '', count: 1 });
    expect(lines[0]).toMatch(complaint);
    expect(lines[0]).not.toMatch(/\n| at .*:\d+:\d+/);
  });

  it('is for no command at all, which prints the help', async () => {
    const { code, out, lines } = await run(folderWith());
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(lines.join('\n')).toContain('Usage: leverleaf');
  });
});

describe('what a scheme is read from', () => {
  it('is every .md file of a folder, in the order of the names', async () => {
    const [head = '', modes = ''] = smallScheme().split('## Mode');
    const folder = folderWith({
      '1-game.md': head,
      '2-modes.MD': `## Mode${modes}`,
      'notes.txt': '## Nonsense',
      '.1-game.md.swp.md': '## Nonsense',
    });
    mkdirSync(join(folder, '3.md'));
    symlinkSync('someone@somewhere.1234', join(folder, '.#1-game.md'));
    const { code, out } = await run(folder, 'check', '.', '--format', 'json');
    expect(code).toBe(0);
    expect(JSON.parse(out).scheme.files).toEqual(['1-game.md', '2-modes.MD']);
  });

  it('may begin with a byte order mark and end its lines with CR LF', async () => {
    const folder = folderWith({ 'game.md': `\ufeff${smallScheme().replaceAll('\n', '\r\n')}` });
    expect((await run(folder, 'check', 'game.md')).code).toBe(0);
  });
});
