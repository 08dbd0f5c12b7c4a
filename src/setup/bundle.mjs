// Bundles the program of the try-out page into one file that a browser runs: `node bundle.mjs [DIST FOLDER]`.
import { join } from 'node:path';
import { build } from 'esbuild';
import { root } from './run.mjs';

const dist = process.argv[2] ?? join(root, 'dist');

await build({
  entryPoints: [join(root, 'src', 'tryout', 'main.ts')],
  outfile: join(dist, 'tryout', 'program.js'),
  bundle: true,
  minify: true,
  format: 'iife',
  platform: 'browser',
  target: 'es2022',
  legalComments: 'none',
  logLevel: 'warning',
});
