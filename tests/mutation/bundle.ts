import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { compileFunction } from 'node:vm';
import { build, type Plugin } from 'esbuild';
import { loadedPackage, loadPackage } from './packages.js';

/** Sources and tests in one script, not yet run. Each call gives modules of its own: nothing is kept from before. */
export type Bundle = () => Instance;

export interface Instance {
  /** Runs the modules of the mutated sources, and what they import. */
  readonly readSources: () => void;
  /** By path: runs a test file, and what it imports. */
  readonly tests: Readonly<Record<string, () => void>>;
}

export interface BundleOptions {
  /** The folder that holds the mutated copy of the project. */
  readonly root: string;
  /** Paths of the mutated sources, from the root. */
  readonly sources: readonly string[];
  readonly tests: readonly string[];
  /** Whether it is counted which mutants are come by; it takes time. */
  readonly counts: boolean;
}

export async function makeBundle({ root, sources, tests, counts }: BundleOptions): Promise<Bundle> {
  const contents = [
    `export function readSources() { ${sources.map(path => `require('./${path}');`).join(' ')} }`,
    `export const tests = { ${tests.map(path => `'${path}': () => { require('./${path}'); }`).join(', ')} };`,
  ];
  const { outputFiles } = await build({
    stdin: { contents: contents.join('\n'), resolveDir: root, loader: 'js' },
    plugins: [importPackages, readTypeScript(counts)],
    bundle: true,
    write: false,
    format: 'iife',
    globalName: 'bundle',
    footer: { js: 'return bundle;' },
    platform: 'node',
    target: `node${process.versions.node}`,
    minifySyntax: true,
    treeShaking: false,
    absWorkingDir: root,
  });
  const [output] = outputFiles;
  if (output === undefined) throw new Error('nothing was bundled');
  const run = compileFunction(output.text, ['loadedPackage'], { filename: join(root, 'bundle.js') });
  return () => run(loadedPackage) as Instance;
}

/** Packages stay outside: a module of the bundle hands on what the package exports. */
const importPackages: Plugin = {
  name: 'packages',
  setup: ({ onResolve, onLoad }) => {
    onResolve({ filter: /^[^./]/ }, ({ path, kind }) =>
      kind === 'dynamic-import' ? { path, external: true } : { path, namespace: 'package' },
    );
    onLoad({ filter: /.*/, namespace: 'package' }, async ({ path }) => {
      const names = Object.keys(await loadPackage(path)).filter(name => /^[A-Za-z_$][\w$]*$/.test(name));
      const exports = names.map((name, index) => `_${index} as ${name}`);
      const values = names.map((name, index) => `_${index} = exported.${name}`);
      const contents = `const exported = loadedPackage('${path}'), ${values.join(', ')};\nexport { ${exports.join(', ')} };`;
      return { contents, loader: 'js' };
    });
  },
};

const readTypeScript = (counts: boolean): Plugin => ({
  name: 'typescript',
  setup: ({ onLoad }) => {
    onLoad({ filter: /\.ts$/ }, async ({ path }) => {
      const text = await readFile(path, 'utf8');
      const url = JSON.stringify(pathToFileURL(path).href);
      const contents = (counts ? text : withoutCounting(text)).replaceAll('import.meta.url', url);
      return { contents, loader: 'ts' };
    });
  },
});

/** As StrykerJS writes it: `stryCov_9fa48("12", "13")` counts that these mutants were come by. */
const withoutCounting = (text: string): string => text.replaceAll(/stryCov_\w+\((?:"\d+"(?:, )?)+\)/g, '0');

/** The numbers of the mutants in a mutated source. */
export function mutantsIn(text: string): readonly string[] {
  return [...text.matchAll(/stryMutAct_\w+\("(\d+)"\)/g)].map(([, id = '']) => id);
}
