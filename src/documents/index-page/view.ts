import type { Coverage, Verdict } from '../../checks/coverage-model.js';
import type { Finding } from '../../findings/finding.js';
import type { DocumentInput } from '../document.js';
import { versionWords } from '../manual/view.js';
import type { PhraseKey } from '../phrase-keys.js';
import type { Phrases } from '../phrases.js';
import { panelWords } from '../wording/machine.js';

/** The set at a glance. */
export interface IndexView {
  readonly title: string;
  readonly version: string;
  readonly verdict: {
    readonly kind: 'fine' | 'warnings' | 'errors';
    readonly words: string;
    readonly count: string;
  };
  readonly madeFrom: string;
  readonly groups: readonly LinkGroup[];
  readonly matrix: MatrixView | null;
}

export interface LinkGroup {
  readonly title: string;
  readonly links: readonly IndexLink[];
}

export interface IndexLink {
  readonly words: string;
  /** Names of the files that hold it, the one to read first. */
  readonly files: readonly string[];
}

/** Where the game plays: a row for each way to sit down, a column for each console. */
export interface MatrixView {
  readonly title: string;
  readonly corner: string;
  readonly consoles: readonly string[];
  readonly rows: readonly { readonly seats: string; readonly cells: readonly MatrixCell[] }[];
}

export interface MatrixCell {
  readonly verdict: Verdict;
  readonly words: string;
}

interface Offer {
  readonly words: PhraseKey;
  readonly files: readonly string[];
}

/** What a set may hold, for whom, in the order of the page. */
const OFFERS: readonly { readonly title: PhraseKey; readonly offers: readonly Offer[] }[] = [
  {
    title: 'index for player',
    offers: [
      { words: 'index manual', files: ['manual.html', 'manual.pdf'] },
      { words: 'index booklet', files: ['manual-booklet.pdf'] },
      { words: 'index overlays', files: ['overlays.html', 'overlays.pdf'] },
    ],
  },
  {
    title: 'index for designer',
    offers: [
      { words: 'index report', files: ['report.html', 'report.pdf', 'report.json'] },
      { words: 'index tryout', files: ['tryout.html'] },
    ],
  },
  {
    title: 'index for programmer',
    offers: [
      { words: 'index bits', files: ['bits.html', 'bits.pdf'] },
      { words: 'index include', files: ['controls.inc'] },
      { words: 'index header', files: ['controls.h'] },
      { words: 'index data', files: ['controls.json'] },
      { words: 'index routine', files: ['read.asm'] },
      { words: 'index vectors', files: ['vectors.json', 'vectors.csv'] },
    ],
  },
];

/** @param names the files of the set: only these are linked */
export function viewIndex(input: DocumentInput, names: readonly string[], phrases: Phrases): IndexView {
  const { scheme, findings, files, coverage } = input;
  const say = (key: PhraseKey) => (phrases.say as (key: PhraseKey) => string)(key);
  return {
    title: scheme.title.value,
    version: versionWords(scheme.game.version, phrases),
    verdict: viewVerdict(findings, phrases),
    madeFrom: phrases.say('index made', { files: phrases.and(files.map(({ path }) => baseName(path))) }),
    groups: OFFERS.map(({ title, offers }) => ({
      title: say(title),
      links: offers.flatMap(offer => {
        const there = offer.files.filter(name => names.includes(name));
        return there.length === 0 ? [] : [{ words: say(offer.words), files: there }];
      }),
    })).filter(({ links }) => links.length > 0),
    matrix: coverage === null ? null : viewMatrix(input, coverage, phrases),
  };
}

/** The file's own name: the folders of the machine it was built on are nobody's business. */
const baseName = (path: string): string => path.split(/[\\/]/).at(-1) ?? path;

function viewVerdict(findings: readonly Finding[], phrases: Phrases): IndexView['verdict'] {
  const count = (severity: Finding['severity']) => findings.filter(each => each.severity === severity).length;
  const kind = count('error') > 0 ? 'errors' : count('warning') > 0 ? 'warnings' : 'fine';
  const counts = [
    phrases.count('index errors', count('error')),
    phrases.count('index warnings', count('warning')),
    phrases.count('index notes', count('note')),
    phrases.count('index accepted', count('accepted')),
  ];
  return { kind, words: phrases.say(`index verdict ${kind}`), count: counts.join(', ') };
}

/** The worst first. */
const VERDICTS: readonly Verdict[] = ['broken', 'altered', 'plays', 'not offered'];

function viewMatrix({ scheme }: DocumentInput, { cells }: Coverage, phrases: Phrases): MatrixView {
  return {
    title: phrases.say('index coverage'),
    corner: phrases.say('column seats'),
    consoles: scheme.consoles.map(({ name }) => panelWords(name, phrases)),
    rows: scheme.seats.map(seats => ({
      seats: seats.name,
      cells: scheme.consoles.map(profile => {
        const own = cells.filter(cell => cell.seats === seats && cell.console === profile);
        const verdict = VERDICTS.find(each => own.some(cell => cell.verdict === each)) ?? 'not offered';
        return { verdict, words: phrases.say(`index ${verdict}`) };
      }),
    })),
  };
}
