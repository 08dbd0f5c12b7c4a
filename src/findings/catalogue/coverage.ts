import type { Rule } from '../rule.js';

export const COVERAGE_RULES = {} as const satisfies Readonly<Record<string, Rule>>;
