import type { Rule } from '../rule.js';

export const LANGUAGE_RULES = {
  'unknown-heading': {
    severity: 'error',
    message: '“{heading}” is not a heading of the language.',
    effect: 'Everything under it would be ignored, so the game would lack it.',
    waysOut: ['Use one of the headings of the language, or turn the section into `## Manual: {heading}`.'],
    explanation:
      'Everything the compiler acts on stands under a fixed level-2 heading. A heading it does not know is reported, so that no part of a scheme is ignored in silence.',
    example: '## Acctions\n\n| Action | Say it as |\n| --- | --- |\n| Jump | Jump over the fence |',
  },
} as const satisfies Readonly<Record<string, Rule>>;
