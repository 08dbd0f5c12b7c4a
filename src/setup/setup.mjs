// Does what `npm run demo|test|bench|fuzz|mutants|goldens` ask for on a machine that has nothing but Node and this
// folder. Plain JavaScript without a dependency, because it runs before `npm ci`.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { buildPackage, findOrInstallBrowser, installPackages } from './prepare.mjs';
import { fail, isNodeNewEnough, neededNode, root, runNode, say } from './run.mjs';
import { runTests } from './tests.mjs';

const MUTATION_TESTS = [
  'node_modules/@stryker-mutator/core/bin/stryker.js',
  'run',
  'tests/mutation/stryker.config.mjs',
];

const wishes = {
  demo: { run: runDemo },
  test: { run: runTests },
  bench: { run: runBench },
  fuzz: { run: args => runNode(['--import', 'tsx', 'tests/fuzz/run.ts', ...args]) },
  mutants: { run: args => runNode([...MUTATION_TESTS, ...args]) },
  goldens: { run: args => runTests(args, { LEVERLEAF_UPDATE_GOLDENS: '1' }) },
};

const [wish = '', ...args] = process.argv.slice(2);
process.exitCode = await grant(wishes[wish], args);

/** Gets everything ready, then runs the wish. Returns the exit code: 2 if it could not be run. */
async function grant(wanted, args) {
  if (!wanted) return fail(`usage: node src/setup/setup.mjs ${Object.keys(wishes).join('|')} [arguments]`);
  if (!isNodeNewEnough()) return fail(`Node ${neededNode} or newer is needed; this is ${process.version}.`);
  if (!installPackages()) return fail('The packages could not be installed (npm ci failed, see above).');
  if (!buildPackage()) return fail('The sources do not compile (see above).');
  await findOrInstallBrowser();
  return wanted.run(args);
}

/** Builds each scheme of `schemes/`. The exit code is the highest of the builds'. */
function runDemo(args) {
  const folder = join(root, 'schemes');
  const schemes = readdirSync(folder, { withFileTypes: true })
    .filter(entry => !/^(\.|readme)/i.test(entry.name) && (entry.isDirectory() || entry.name.endsWith('.md')))
    .map(entry => join('schemes', entry.name))
    .sort();
  if (schemes.length === 0) return fail('There is no scheme in schemes/ to build.');
  const begun = Date.now();
  const codes = schemes.map(scheme => {
    say(`building ${scheme} …`);
    return runNode(['dist/cli/main.js', 'build', scheme, ...args]);
  });
  const built = listBuilt(begun);
  if (built.length > 0) say(`the documents are ready; open\n${built.map(path => `  ${path}`).join('\n')}`);
  return Math.max(...codes);
}

/** The first page of each set in `out/` that was built since a time (ms). */
function listBuilt(since) {
  const out = join(root, 'out');
  return readdirSync(out, { withFileTypes: true })
    .filter(entry => entry.isDirectory() && statSync(join(out, entry.name)).ctimeMs >= since)
    .map(entry => join('out', entry.name, 'index.html'))
    .map(index => (existsSync(join(root, index)) ? index : dirname(index)));
}

/** The benchmarks import what is shipped, from dist/. */
function runBench(args) {
  return runNode(['--expose-gc', '--import', 'tsx', 'tests/bench/run.ts', ...args]);
}
