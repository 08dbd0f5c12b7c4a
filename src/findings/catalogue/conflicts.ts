import type { Rule } from '../rule.js';

export const CONFLICTS_RULES = {} as const satisfies Readonly<Record<string, Rule>>;
