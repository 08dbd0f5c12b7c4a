import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { folderWith, smallScheme } from './test-terminal.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** Of the command. */
const NAME = 'leverleaf';
const isWindows = process.platform === 'win32';

function npm(folder: string, ...words: readonly string[]): string {
  return execFileSync('npm', words, {
    cwd: folder,
    encoding: 'utf8',
    shell: isWindows,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

/** Packs what would be published, compiled anew from the sources; gives the path of the package file. */
function pack(): string {
  const folder = folderWith();
  for (const name of readdirSync(root)) {
    if (['package.json', 'LICENSE', 'README.md', 'CHANGELOG.md', 'templates', 'schemes'].includes(name)) {
      cpSync(join(root, name), join(folder, name), { recursive: true });
    }
  }
  const compiler = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
  execFileSync(process.execPath, [
    compiler,
    '-p',
    join(root, 'tsconfig.json'),
    '--outDir',
    join(folder, 'dist'),
  ]);
  execFileSync(process.execPath, [join(root, 'src', 'setup', 'bundle.mjs'), join(folder, 'dist')]);
  const [name = ''] = npm(folder, 'pack', '--ignore-scripts', '--silent').trim().split('\n');
  return join(folder, name);
}

it('is installed from its package into an empty folder and used there', { timeout: 300_000 }, () => {
  const packed = pack();
  const folder = folderWith({ 'game.md': smallScheme() });
  writeFileSync(join(folder, 'package.json'), '{ "private": true, "type": "module" }');
  npm(folder, 'install', packed, '--prefer-offline', '--no-audit', '--no-fund', '--ignore-scripts');

  const check = spawnSync('npx', ['--no-install', NAME, 'check', 'game.md'], {
    cwd: folder,
    encoding: 'utf8',
    shell: isWindows,
  });
  expect({ code: check.status, text: check.stderr }).toEqual({ code: 0, text: '' });

  const build = spawnSync('npx', ['--no-install', NAME, 'build', 'game.md', '--html-only'], {
    cwd: folder,
    encoding: 'utf8',
    shell: isWindows,
  });
  expect(build.status).toBe(0);
  expect(readdirSync(join(folder, 'out', 'tin-whistle'))).toContain('manual.html');

  writeFileSync(
    join(folder, 'use.js'),
    `import { readFileSync } from 'node:fs';
import { compile } from 'leverleaf';
const { scheme, findings } = compile([{ path: 'game.md', text: readFileSync('game.md', 'utf8') }]);
console.log(scheme.title.value, findings.filter(({ severity }) => severity === 'error').length);`,
  );
  expect(execFileSync(process.execPath, ['use.js'], { cwd: folder, encoding: 'utf8' })).toBe(
    'Tin Whistle 0\n',
  );

  mkdirSync(join(folder, 'typed'));
  writeFileSync(
    join(folder, 'typed', 'use.ts'),
    `import { type Compiled, type Finding, compile } from 'leverleaf';
const compiled: Compiled = compile([]);
const first: Finding | undefined = compiled.findings[0];
export const rule: string | undefined = first?.rule;`,
  );
  const compiler = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
  const options = ['--noEmit', '--strict', '--module', 'nodenext', '--target', 'es2023', '--skipLibCheck'];
  const types = spawnSync(process.execPath, [compiler, ...options, 'typed/use.ts'], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect({ code: types.status, text: types.stdout }).toEqual({ code: 0, text: '' });
});
