import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Licences (SPDX) whose software may be used and passed on by software under the MIT licence; fonts under the OFL. */
const ALLOWED = new Set([
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BlueOak-1.0.0',
  'CC0-1.0',
  'ISC',
  'MIT',
  'MIT-0',
  'OFL-1.1',
  'Python-2.0',
  'Unlicense',
  'Zlib',
]);

interface LockedPackage {
  readonly version?: string;
  readonly resolved?: string;
  readonly integrity?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly devOptional?: boolean;
  readonly link?: boolean;
  readonly hasInstallScript?: boolean;
}

const lock: { readonly packages: Readonly<Record<string, LockedPackage>> } = JSON.parse(
  readFileSync(join(root, 'package-lock.json'), 'utf8'),
);
const all = Object.entries(lock.packages).filter(([path]) => path !== '');
/** What is installed with the package: the dependencies of its dependencies too. */
const shipped = all.filter(([, { dev }]) => dev !== true);

function licenceOf(path: string): string {
  const { license, licenses } = JSON.parse(readFileSync(join(root, path, 'package.json'), 'utf8'));
  const told =
    license?.type ?? license ?? licenses?.map((one: { readonly type: string }) => one.type).join(' OR ');
  return told ?? 'none';
}

/** An expression of SPDX (version 2.3, annex D): any of those joined by OR is enough, all joined by AND are needed. */
function isAllowed(expression: string, more: readonly string[] = []): boolean {
  const allowed = new Set([...ALLOWED, ...more]);
  const bare = expression.replace(/^\((.*)\)$/, '$1');
  return bare
    .split(/ OR /i)
    .some(choice =>
      choice.split(/ AND /i).every(licence => allowed.has(licence.replace(/[()]/g, '').trim())),
    );
}

describe('what is installed with the package', () => {
  const installed = shipped.filter(([path]) => existsSync(join(root, path)));

  it('is there', () => {
    // Parts for other systems are left out by npm.
    expect(
      shipped.filter(entry => !installed.includes(entry)).filter(([, { optional }]) => optional !== true),
    ).toEqual([]);
    expect(installed.length).toBeGreaterThan(50);
  });

  it('has licences that fit', () => {
    const wrong = installed
      .map(([path]) => `${path}: ${licenceOf(path)}`)
      .filter(line => !isAllowed(line.slice(line.indexOf(': ') + 2)));
    expect(wrong).toEqual([]);
  });

  it('is not all that a developer needs: the rest may not be passed on with it, but has licences that fit too', () => {
    const tools = all.filter(([path, { dev }]) => dev === true && existsSync(join(root, path)));
    const wrong = tools
      .map(([path]) => [path, licenceOf(path)] as const)
      .filter(([, licence]) => !isAllowed(licence, ['MPL-2.0', 'CC-BY-4.0']));
    expect(wrong).toEqual([]);
  });

  it('runs no script of its own when it is installed', () => {
    expect(
      shipped.filter(([, { hasInstallScript }]) => hasInstallScript === true).map(([path]) => path),
    ).toEqual([]);
    const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    for (const script of ['preinstall', 'install', 'postinstall', 'prepare'])
      expect(scripts).not.toHaveProperty(script);
  });
});

/** npm asks this one where the lock file names none. */
const REGISTRY = 'https://registry.npmjs.org/';

it('everything locked comes from the public registry, with a checksum', () => {
  for (const [path, { resolved, integrity, link }] of all) {
    expect(link, path).toBeUndefined();
    expect(resolved ?? REGISTRY, path).toMatch(/^https:\/\/registry\.npmjs\.org\//);
    expect(integrity, path).toMatch(/^sha512-/);
  }
});

it('a licence that does not fit is noticed', () => {
  expect(isAllowed('MIT')).toBe(true);
  expect(isAllowed('(MIT OR GPL-3.0)')).toBe(true);
  expect(isAllowed('MIT AND GPL-3.0')).toBe(false);
  for (const licence of ['GPL-3.0', 'AGPL-3.0-only', 'none', 'SEE LICENSE IN x', 'UNLICENSED'])
    expect(isAllowed(licence)).toBe(false);
});

it('the package holds what is needed to use it, and nothing else', { timeout: 120_000 }, () => {
  const output = execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], {
    cwd: root,
    encoding: 'utf8',
    shell: process.platform === 'win32',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const [{ files }] = JSON.parse(output);
  const paths: readonly string[] = files.map(({ path }: { readonly path: string }) => path);
  const allowed =
    /^(?:package\.json|LICENSE|README\.md|CHANGELOG\.md|controls\.schema\.json|dist\/[\w./-]+\.(?:js|d\.ts)|templates\/[\w./-]+\.(?:md|css|js)|schemes\/[\w./-]+\.md)$/;
  expect(paths.filter(path => !allowed.test(path))).toEqual([]);
  expect(paths).toEqual(
    expect.arrayContaining(['package.json', 'LICENSE', 'templates/starter.md', 'templates/styles/base.css']),
  );
});
