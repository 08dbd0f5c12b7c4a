import type { Rule } from '../rule.js';

export const WIRING_RULES = {} as const satisfies Readonly<Record<string, Rule>>;
