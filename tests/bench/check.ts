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
  return [
    ratioRow('check, 64 modes × 32 rows, against the Markdown parse', 1.25, whole),
    ...CHANGES.map(change => recheckRow(text, change)),
  ];
}

/** Something that a designer changes in the large scheme, a little differently each time. */
interface Change {
  readonly what: string;
  /** What is replaced, the first time it stands after the heading of a mode, or in the whole text. */
  readonly words: string;
  readonly within: string | null;
  readonly become: (round: number) => string;
  /** Null where all modes depend on what is changed: then there is little to keep. */
  readonly limit: { readonly most: number } | null;
}

const CHANGES: readonly Change[] = [
  {
    what: 'a sentence of a mode',
    words: 'The shelves go up',
    within: '## Mode: Room 20\n',
    become: round => `The ${round} shelves go up`,
    limit: { most: 0.05 },
  },
  {
    what: 'a row of a mode',
    words: 'hold long press',
    within: '## Mode: Room 20\n',
    become: round => `hold ${100 + round} ms    `,
    limit: { most: 0.05 },
  },
  {
    what: 'the words of an action',
    words: 'Turn the jar in this room',
    within: null,
    become: round => `Turn the jar ${round} times`,
    limit: { most: 0.05 },
  },
  {
    what: 'a time that every mode uses',
    words: '| 2 s',
    within: null,
    become: round => `| ${3 + round} s`,
    limit: null,
  },
];

function recheckRow(text: string, change: Change): BenchRow {
  const read = createReader();
  compile([{ path: 'big.md', text }], { read });
  const at = text.indexOf(change.words, change.within === null ? 0 : text.indexOf(change.within));
  const [before, after] = [text.slice(0, at), text.slice(at + change.words.length)];
  const changed = (round: number) => [{ path: 'big.md', text: `${before}${change.become(round)}${after}` }];
  // Changes come one after the other, as they do from an editor: no garbage is collected by force between them.
  const rounds = [0, 1, 2, 3, 4, 5].map(round => {
    const files = changed(round);
    const full = timeOf(() => void compile(files));
    const again = [1, 2, 3, 4, 5].map(more => {
      const files = changed(6 + 5 * round + more);
      const start = performance.now();
      compile(files, { read });
      return performance.now() - start;
    });
    return { full, again: median(again) };
  });
  const counted = rounds.slice(1);
  return {
    what: `check again after a change of ${change.what}, against a full check`,
    value: median(counted.map(({ again, full }) => again / full)),
    unit: '×',
    limit: change.limit,
    detail: `${ms(counted.map(({ again }) => again))} ms against ${ms(counted.map(({ full }) => full))} ms`,
  };
}

const ms = (times: readonly number[]): string => median(times).toFixed(0);

const MODES = [1, 4, 16, 64, 256];

/** How the check grows with the number of modes: an exponent fitted to its times, beside that of the parse. */
export function benchGrowth(): readonly BenchRow[] {
  const texts = MODES.map(modes => [modes, bigScheme({ ...USUAL_SIZE, modes, rows: 8 })] as const);
  const growth = (work: (text: string) => void) =>
    exponentOf(texts.map(([modes, text]) => [modes, median([1, 2, 3].map(() => timeOf(() => work(text))))]));
  const parse = growth(parseMarkdown);
  const check = growth(text => void compile([{ path: 'big.md', text }]));
  return [
    {
      what: 'growth of check from 1 to 256 modes of 8 rows',
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
