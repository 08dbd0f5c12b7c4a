import type { Nodes } from 'mdast';

/** Signs in these say nothing of the language: they show or point at something. */
const SHOWN: ReadonlySet<Nodes['type']> = new Set([
  'inlineCode',
  'link',
  'linkReference',
  'image',
  'imageReference',
  'footnoteReference',
]);

/** The text of a node with its code, links and images made unreadable: the signs that are left are its own. */
export function bareText(node: Nodes): string {
  if (SHOWN.has(node.type)) return '\u25a1';
  if ('children' in node) return node.children.map(bareText).join('');
  if (node.type === 'break') return '\n';
  return 'value' in node ? node.value : '';
}
