import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const src = fileURLToPath(new URL('../src', import.meta.url));

/** Data flows down this list: a stage imports only from those above it. */
const STAGES = [
  'hardware',
  'findings',
  'language',
  'gestures',
  'checks',
  'documents',
  'handoff',
  'print',
  'tryout',
  'cli',
];

interface Import {
  readonly file: string;
  readonly from: string;
  readonly to: string;
}

/** Every import of one stage by another; files beside the folders belong to no stage. */
function importsBetweenStages(): readonly Import[] {
  const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(path => path.endsWith('.ts'));
  return files.flatMap(path => {
    const file = path.replaceAll('\\', '/');
    const text = readFileSync(join(src, path), 'utf8');
    return [...text.matchAll(/(?:from|import\()\s*'(\.[^']+)'/g)].flatMap(([, to = '']) => {
      const target = normalize(join(dirname(file), to)).replaceAll('\\', '/');
      const [from, into] = [stageOf(file), stageOf(target)];
      return from === null || into === null || from === into ? [] : [{ file, from, to: into }];
    });
  });
}

const stageOf = (path: string): string | null => STAGES.find(stage => path.startsWith(`${stage}/`)) ?? null;

it('a stage imports only from the stages before it', () => {
  const imports = importsBetweenStages();
  expect(imports.length).toBeGreaterThan(300);
  const upstream = imports.filter(({ from, to }) => STAGES.indexOf(to) > STAGES.indexOf(from));
  expect(upstream.map(({ file, to }) => `${file} imports from ${to}`)).toEqual([]);
});

it('what runs in a browser imports nothing of Node', () => {
  const files = ['gestures', 'hardware', 'language', 'handoff', 'tryout'].flatMap(stage =>
    readdirSync(join(src, stage), { recursive: true, encoding: 'utf8' }).map(path => join(stage, path)),
  );
  const users = files.filter(
    path => path.endsWith('.ts') && /from 'node:/.test(readFileSync(join(src, path), 'utf8')),
  );
  expect(users).toEqual([]);
});
