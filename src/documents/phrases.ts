import type { Report } from '../findings/report.js';
import type { Scheme } from '../language/model.js';
import { readPairs } from './page/markdown-table.js';
import { isOwnTemplate, listPhraseLanguages, readTemplate } from './page/templates.js';
import { createPhrases, type Phrases } from './phrase-book.js';
import { PHRASE_KEYS, type PhraseKey } from './phrase-keys.js';

export type { Phrases } from './phrase-book.js';

/** Phrases of a template folder for a language, and what they lack. */
export interface FoundPhrases {
  readonly phrases: Phrases;
  /** The same as texts, by key. */
  readonly texts: ReadonlyMap<string, string>;
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
  return { phrases: createPhrases(language, texts), texts, fits, missing };
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
