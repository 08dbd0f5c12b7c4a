import type { Rule } from '../rule.js';

export const WORDS_RULES = {} as const satisfies Readonly<Record<string, Rule>>;
