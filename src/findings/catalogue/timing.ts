import type { Rule } from '../rule.js';

export const TIMING_RULES = {} as const satisfies Readonly<Record<string, Rule>>;
