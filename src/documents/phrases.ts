import type { Report } from '../findings/report.js';
import { fillText } from '../findings/rule.js';
import type { Scheme } from '../language/model.js';
import { readPairs } from './page/markdown-table.js';
import { isOwnTemplate, listPhraseLanguages, readTemplate } from './page/templates.js';
import { PHRASE_KEYS, type PHRASES, type PhraseKey } from './phrase-keys.js';

type Values = Readonly<Record<string, string | number>>;

/** What a phrase is given: nothing, or a value for each of its names. `{action}` comes from `Action` by itself. */
export type Given<Key extends PhraseKey> = (typeof PHRASES)[Key]['length'] extends 0
  ? readonly []
  : readonly [Readonly<Record<GivenName<(typeof PHRASES)[Key][number]>, string | number>>];

type GivenName<Name extends string> = Name extends 'action' ? 'Action' : Name;

/** Keys of phrases that say a number: `players` for `players (one)` and `players (other)`. */
export type CountedKey = PhraseKey extends infer Key
  ? Key extends `${infer Base} (one)`
    ? Base
    : never
  : never;

/** The words of one language. */
export interface Phrases {
  /** BCP 47 tag of the phrases found. */
  readonly language: string;
  readonly say: <Key extends PhraseKey>(key: Key, ...given: Given<Key>) => string;
  /** With `{count}` as a number of the language, in the plural form that goes with it. */
  readonly count: (key: CountedKey, count: number, parameters?: Readonly<Record<string, string>>) => string;
  /** A number as the language writes it, at most two decimals. */
  readonly number: (value: number) => string;
  /** `a, b and c`. */
  readonly and: (items: readonly string[]) => string;
  /** `a, b or c`. */
  readonly or: (items: readonly string[]) => string;
  /** The text with a capital to begin with. */
  readonly sentence: (text: string) => string;
}

/** Phrases of a template folder for a language, and what they lack. */
export interface FoundPhrases {
  readonly phrases: Phrases;
  /** The tag whose phrases were taken; null where no file fits and English stands in. */
  readonly fits: string | null;
  /** Keys that the language's file does not have; English stands in for each. */
  readonly missing: readonly PhraseKey[];
}

const FALLBACK = 'en';

/** The phrases for a BCP 47 tag: the file of the tag, or of the tag without its last parts (RFC 4647, look-up). */
export function findPhrases(tag: string, templates: string): FoundPhrases {
  const fits = bestFit(tag, listPhraseLanguages(templates));
  const language = fits ?? FALLBACK;
  const own = readPhrases(language, templates);
  const missing = PHRASE_KEYS.filter(key => (own.get(key) ?? '') === '');
  const english = missing.length === 0 ? own : readPhrases(FALLBACK, templates);
  const texts = new Map(PHRASE_KEYS.map(key => [key as string, own.get(key) || (english.get(key) ?? key)]));
  return { phrases: createPhrases(language, texts), fits, missing };
}

function bestFit(tag: string, languages: readonly string[]): string | null {
  const parts = tag.toLowerCase().split('-');
  for (let length = parts.length; length > 0; length -= 1) {
    const wanted = parts.slice(0, length).join('-');
    const found = languages.find(language => language.toLowerCase() === wanted);
    if (found !== undefined) return found;
  }
  return null;
}

function readPhrases(language: string, templates: string): ReadonlyMap<string, string> {
  return readPairs(readTemplate(templates, ['phrases', `${language}.md`]));
}

function createPhrases(language: string, texts: ReadonlyMap<string, string>): Phrases {
  const plural = new Intl.PluralRules(language);
  const numbers = new Intl.NumberFormat(language, { maximumFractionDigits: 2 });
  const conjunction = new Intl.ListFormat(language, { type: 'conjunction' });
  const disjunction = new Intl.ListFormat(language, { type: 'disjunction' });
  const text = (key: string) => texts.get(key) ?? key;
  const fill = (key: string, parameters: Values) =>
    fillText(text(key), withLowerAction(parameters, language));
  return {
    language,
    say: (key, ...given) => fill(key, given[0] ?? {}),
    count: (key, count, parameters) =>
      fill(`${key} (${plural.select(count) === 'one' ? 'one' : 'other'})`, {
        ...parameters,
        count: numbers.format(count),
      }),
    number: value => numbers.format(value),
    and: items => conjunction.format(items),
    or: items => disjunction.format(items),
    sentence: words => words.slice(0, 1).toLocaleUpperCase(language) + words.slice(1),
  };
}

/** `{action}`: as `{Action}`, but within a sentence: without its capital, unless the word is all capitals. */
function withLowerAction(parameters: Values, language: string): Values {
  const { Action: action } = parameters;
  if (typeof action !== 'string') return parameters;
  const isWord = /^\p{Lu}(?!\p{Lu})/u.test(action);
  const lower = isWord ? action.slice(0, 1).toLocaleLowerCase(language) + action.slice(1) : action;
  return { ...parameters, action: lower };
}

/**
 * Reports the phrases that the manual's language lacks; English stands in for them. The built-in files are known
 * to be complete and are not read for this.
 */
export function checkPhrases(scheme: Scheme, templates: string, report: Report): void {
  const { value: language, at } = scheme.game.language;
  const fits = bestFit(language, listPhraseLanguages(templates));
  if (fits === null) {
    report('missing-phrase', at, { lack: 'have no phrases', language });
    return;
  }
  if (!isOwnTemplate(templates, ['phrases', `${fits}.md`])) return;
  const { missing } = findPhrases(fits, templates);
  if (missing.length === 0) return;
  const names = missing.map(key => `“${key}”`).join(', ');
  report('missing-phrase', at, { lack: `have no phrase for ${names}`, language: fits });
}
