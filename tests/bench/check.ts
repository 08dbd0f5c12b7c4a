import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { compile } from '../../dist/compile.js';
import { createReader } from '../../dist/language/read.js';
import { bigScheme, USUAL_SIZE } from '../support/big-scheme.js';
import { parseMarkdown } from './markdown.js';
import { exponentOf, median, ratioOf, timeOf } from './measure.js';
import { type BenchRow, ratioRow } from './row.js';

/** The check of a large scheme, whole and after a change in one section. */
export async function benchCheck(): Promise<readonly BenchRow[]> {
  const text = bigScheme(USUAL_SIZE);
  const whole = await ratioOf(
    () => void compile([{ path: 'big.md', text }]),
    () => parseMarkdown(text),
    5,
  );
  const read = createReader();
  compile([{ path: 'big.md', text }], { read });
  const rounds = [1, 2, 3, 4, 5, 6].map(round => {
    const changed = text.replace('## Mode: ', `Prose that was changed ${round} times.\n\n## Mode: `);
    const again = timeOf(() => void compile([{ path: 'big.md', text: changed }], { read }));
    return again / timeOf(() => void compile([{ path: 'big.md', text: changed }]));
  });
  return [
    ratioRow('check, 64 modes × 32 rows, against the Markdown parse', 1.25, whole),
    {
      what: 'check again after a change in one section, against a full check',
      value: median(rounds.slice(1)),
      unit: '×',
      limit: { most: 0.05 },
      detail: 'median of five changes',
    },
  ];
}

const MODES = [4, 16, 64, 256];

/** How the check grows with the number of modes: an exponent fitted to its times, beside that of the parse. */
export function benchGrowth(): readonly BenchRow[] {
  const texts = MODES.map(modes => [modes, bigScheme({ ...USUAL_SIZE, modes, rows: 8 })] as const);
  const growth = (work: (text: string) => void) =>
    exponentOf(texts.map(([modes, text]) => [modes, median([1, 2, 3].map(() => timeOf(() => work(text))))]));
  const parse = growth(parseMarkdown);
  const check = growth(text => void compile([{ path: 'big.md', text }]));
  return [
    {
      what: 'growth of check from 4 to 256 modes of 8 rows',
      value: check,
      unit: 'exponent',
      limit: null,
      detail: `Markdown parse ${parse.toFixed(2)}`,
    },
  ];
}

const FLOOR = `
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { readFileSync } from 'node:fs';
unified().use(remarkParse).use(remarkGfm).parse(readFileSync(process.env.SCHEME, 'utf8'));
`;

/** The command on a small scheme, against a bare start of Node that imports and runs remark on it. */
export async function benchStart(): Promise<readonly BenchRow[]> {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const scheme = 'schemes/kiln-yard.md';
  const run = (args: readonly string[]) => () =>
    void spawnSync(process.execPath, args, { cwd: root, env: { ...process.env, SCHEME: scheme } });
  const start = await ratioOf(
    run(['dist/cli/main.js', 'check', scheme]),
    run(['--input-type=module', '-e', FLOOR]),
    7,
  );
  return [ratioRow('leverleaf check of a small game, against node with remark', 2.5, start)];
}
