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

/** What each file imports, by path from `src/`. */
function importsByFile(): ReadonlyMap<string, readonly string[]> {
  const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(path => path.endsWith('.ts'));
  return new Map(
    files.map(path => {
      const file = path.replaceAll('\\', '/');
      const text = readFileSync(join(src, path), 'utf8');
      const imports = [...text.matchAll(/(?:from|import\()\s*'(\.[^']+)'/g)].map(([, to = '']) =>
        normalize(join(dirname(file), to))
          .replaceAll('\\', '/')
          .replace(/\.js$/, '.ts'),
      );
      return [file, imports];
    }),
  );
}

/** Every import of one stage by another; files beside the folders belong to no stage. */
function importsBetweenStages(): readonly Import[] {
  return [...importsByFile()].flatMap(([file, imports]) =>
    imports.flatMap(target => {
      const [from, into] = [stageOf(file), stageOf(target)];
      return from === null || into === null || from === into ? [] : [{ file, from, to: into }];
    }),
  );
}

/** The first round of imports that comes back to a file; empty where there is none. */
function findCircle(imports: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const clean = new Set<string>();
  const follow = (file: string, way: readonly string[]): readonly string[] => {
    if (way.includes(file)) return [...way.slice(way.indexOf(file)), file];
    if (clean.has(file)) return [];
    for (const next of imports.get(file) ?? []) {
      const circle = follow(next, [...way, file]);
      if (circle.length > 0) return circle;
    }
    clean.add(file);
    return [];
  };
  for (const file of imports.keys()) {
    const circle = follow(file, []);
    if (circle.length > 0) return circle;
  }
  return [];
}

const stageOf = (path: string): string | null => STAGES.find(stage => path.startsWith(`${stage}/`)) ?? null;

it('a stage imports only from the stages before it', () => {
  const imports = importsBetweenStages();
  expect(imports.length).toBeGreaterThan(300);
  const upstream = imports.filter(({ from, to }) => STAGES.indexOf(to) > STAGES.indexOf(from));
  expect(upstream.map(({ file, to }) => `${file} imports from ${to}`)).toEqual([]);
});

it('no files import each other in a circle', () => {
  const imports = importsByFile();
  expect(imports.size).toBeGreaterThan(300);
  expect(findCircle(imports)).toEqual([]);
  const bent = new Map([...imports, ['language/model.ts', ['compile.ts']]]);
  expect(findCircle(bent)).toContain('compile.ts');
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
