import { fillText } from '../findings/rule.js';
import type { PHRASES, PhraseKey } from './phrase-keys.js';

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

/** The words of a language from its phrases by key; what is missing is its key. */
export function createPhrases(language: string, texts: ReadonlyMap<string, string>): Phrases {
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
