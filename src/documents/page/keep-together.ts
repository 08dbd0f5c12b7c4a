import type { ElementContent } from 'hast';
import { h } from './elements.js';

/** Words that must not be broken at their hyphen. */
const WHOLE = /(B-W)/;

/** The tree with such words in a span that keeps them on one line. Drawings stay as they are. */
export function keepTogether(nodes: readonly ElementContent[]): readonly ElementContent[] {
  return nodes.flatMap((node): readonly ElementContent[] => {
    if (node.type === 'element' && node.tagName !== 'svg')
      return [{ ...node, children: [...keepTogether(node.children)] }];
    if (node.type !== 'text' || !WHOLE.test(node.value)) return [node];
    return node.value
      .split(WHOLE)
      .filter(part => part !== '')
      .map(part => (WHOLE.test(part) ? h('span', { class: 'whole' }, part) : { type: 'text', value: part }));
  });
}
