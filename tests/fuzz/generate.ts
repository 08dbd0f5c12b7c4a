import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import type { SourceFile } from '../../src/findings/place.js';
import { randomScheme as coverageScheme } from '../coverage/random-scheme.js';
import { tidyScheme } from '../coverage/tidy-scheme.js';
import { EVERYTHING as EVERY_DOCUMENT } from '../documents/everything-scheme.js';
import { createRandom, type Random } from '../support/random.js';
import { randomScheme } from '../support/random-scheme.js';
import { withExtraSections } from './extra-sections.js';
import { mutate, mutateSection, withHostileWords } from './mutate.js';

/** What one run of the fuzzer looks at. */
export interface FuzzCase {
  readonly files: readonly SourceFile[];
  /** The same files with one section changed. */
  readonly changed: readonly SourceFile[];
  /** Its tables are those of a scheme that plays, and only its free words are hostile: a whole set can be built. */
  readonly plays: boolean;
}

/** Makes the case of a seed; the same seed gives the same case as long as the project's schemes stay the same. */
export type MakeCase = (seed: number) => FuzzCase;

/** @param root the folder of the project, whose schemes and cases are taken as well */
export function createCases(root: string): MakeCase {
  const written = [EVERY_DOCUMENT, ...readSchemes(root)];
  const cases = readCases(root);
  return seed => {
    const random = createRandom(seed);
    const plays = random.chance(0.02);
    const text = plays
      ? withHostileWords(random.pick(written), random)
      : anyText(random, seed, written, cases);
    const cut = random.chance(0.15) ? random.below(text.length) : null;
    return { files: filesOf(text, cut), changed: filesOf(mutateSection(text, random), cut), plays };
  };
}

function anyText(random: Random, seed: number, written: readonly string[], cases: readonly string[]): string {
  const plain = baseScheme(random, seed, written, cases);
  const text = random.chance(0.65) ? mutate(plain, random) : plain;
  return random.chance(0.08) ? text.replaceAll('\n', random.pick(['\r\n', '\r'])) : text;
}

function baseScheme(
  random: Random,
  seed: number,
  written: readonly string[],
  cases: readonly string[],
): string {
  const kind = random.below(20);
  if (kind < 8) return withExtraSections(randomScheme(seed), random);
  if (kind < 12) return sample(coverageScheme, seed);
  if (kind < 13) return sample(tidyScheme, seed);
  if (kind < 14) return random.pick(written);
  return random.pick(cases);
}

function sample(arbitrary: fc.Arbitrary<string>, seed: number): string {
  const [text = ''] = fc.sample(arbitrary, { seed, numRuns: 1 });
  return text;
}

function filesOf(text: string, cut: number | null): readonly SourceFile[] {
  if (cut === null) return [{ path: 'scheme.md', text }];
  return [
    { path: 'scheme/1.md', text: text.slice(0, cut) },
    { path: 'scheme/2.md', text: text.slice(cut) },
  ];
}

function readSchemes(root: string): readonly string[] {
  const names = readdirSync(join(root, 'schemes')).filter(name => name.endsWith('.md'));
  const paths = names.sort().map(name => join(root, 'schemes', name));
  return [join(root, 'tests', 'language', 'everything.md'), ...paths].map(path => readFileSync(path, 'utf8'));
}

/** The schemes of `tests/cases/`, each wrong in one way. */
function readCases(root: string): readonly string[] {
  const folder = join(root, 'tests', 'cases');
  const found = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(name =>
    /scheme\.md$/.test(name),
  );
  return found.sort().map(name => readFileSync(join(folder, name), 'utf8'));
}
