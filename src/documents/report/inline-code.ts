import type { ElementContent } from 'hast';
import { h } from '../page/elements.js';

/** A text of the catalogue: what stands between backticks is code, all else is text. */
export function withCode(text: string): readonly (ElementContent | string)[] {
  return text
    .split(/(`[^`]+`)/)
    .filter(part => part !== '')
    .map(part => (/^`[^`]+`$/.test(part) ? h('code', part.slice(1, -1)) : part));
}
