import fc from 'fast-check';
import remarkParse from 'remark-parse';
import * as standIn from './stand-in.js';

/**
 * The packages that sources and tests import, loaded once for all mutants: none of them is mutated. Three are
 * changed on the way, so that a run takes less time.
 */

/** Ends a random test that has been tried often enough here; what it counts afterwards needs the full number. */
export const ENOUGH = Symbol('enough');

let mostRuns = 100;

export function limitRuns(runs: number): void {
  mostRuns = runs;
}

/** A property fails at its first failure, unshrunk, and is tried at most so often. */
const assert: typeof fc.assert = (property, options = {}) => {
  const wanted = options.numRuns ?? 100;
  const numRuns = Math.min(wanted, mostRuns);
  const checked = fc.assert(property as never, { ...options, numRuns, endOnFailure: true } as never);
  if (numRuns < wanted) throw ENOUGH;
  return checked as never;
};

type Parser = (text: string, file: unknown) => unknown;

const parsed = new Map<string, unknown>();

/** Markdown is parsed once for each text: no one changes the trees (src/language/document.ts). */
function parseOnce(this: { parser?: Parser }, ...options: readonly unknown[]): void {
  Reflect.apply(remarkParse, this, options);
  const { parser } = this;
  if (parser === undefined) throw new Error('remark-parse sets no parser');
  this.parser = (text, file) => {
    const key = String(text);
    const known = parsed.get(key) ?? freeze(parser(text, file));
    parsed.set(key, known);
    return known;
  };
}

function freeze(tree: unknown): unknown {
  if (typeof tree !== 'object' || tree === null) return tree;
  for (const value of Object.values(tree)) freeze(value);
  return Object.freeze(tree);
}

const REPLACED: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  vitest: { ...standIn, test: standIn.it },
  'fast-check': { default: { ...fc, assert } },
  'remark-parse': { default: parseOnce },
};

type Exports = Readonly<Record<string, unknown>>;

const loaded = new Map<string, Exports>();

/** The exports of a package, as sources and tests get them. */
export async function loadPackage(name: string): Promise<Exports> {
  const known = loaded.get(name) ?? REPLACED[name] ?? ((await import(name)) as Exports);
  loaded.set(name, known);
  return known;
}

/** As loadPackage, for one that is loaded. */
export function loadedPackage(name: string): Exports {
  const known = loaded.get(name);
  if (known === undefined) throw new Error(`${name} is not loaded`);
  return known;
}
