import { CONFLICTS_RULES } from './catalogue/conflicts.js';
import { COVERAGE_RULES } from './catalogue/coverage.js';
import { LANGUAGE_RULES } from './catalogue/language.js';
import { TIMING_RULES } from './catalogue/timing.js';
import { WIRING_RULES } from './catalogue/wiring.js';
import { WORDS_RULES } from './catalogue/words.js';
import type { Rule, RuleFamily } from './rule.js';

/** Every rule there is, by family. Code can only report a rule that stands here. */
export const FAMILIES = {
  language: LANGUAGE_RULES,
  conflicts: CONFLICTS_RULES,
  coverage: COVERAGE_RULES,
  wiring: WIRING_RULES,
  timing: TIMING_RULES,
  words: WORDS_RULES,
} as const satisfies Readonly<Record<RuleFamily, Readonly<Record<string, Rule>>>>;

export const RULES = {
  ...LANGUAGE_RULES,
  ...CONFLICTS_RULES,
  ...COVERAGE_RULES,
  ...WIRING_RULES,
  ...TIMING_RULES,
  ...WORDS_RULES,
} as const;

export type RuleId = keyof typeof RULES;

export function isRuleId(text: string): text is RuleId {
  return Object.hasOwn(RULES, text);
}
