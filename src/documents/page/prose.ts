import type { Element, ElementContent, Root } from 'hast';
import { defaultSchema, type Schema, sanitize } from 'hast-util-sanitize';
import { h } from 'hastscript';
import type { FootnoteDefinition, FootnoteReference, Root as MarkdownRoot, RootContent } from 'mdast';
import { type Handlers, toHast } from 'mdast-util-to-hast';

/** What prose may be made of. No pictures (nothing is fetched), no classes, no raw HTML. */
const schema: Schema = {
  ...defaultSchema,
  tagNames: (defaultSchema.tagNames ?? []).filter(
    name => !['img', 'input', 'picture', 'source'].includes(name),
  ),
  attributes: { a: ['href'], ol: ['start'], th: ['align', 'scope'], td: ['align'] },
  protocols: { href: ['http', 'https', 'mailto'] },
};

/** HTML that a scheme's author wrote is printed as the characters it is; a picture as its text; notes in place. */
const handlers: Handlers = {
  html: (_state, node: { value: string }) => ({ type: 'text', value: node.value }),
  image: (_state, node: { alt?: string | null }) => ({ type: 'text', value: node.alt ?? '' }),
  footnoteReference: (_state, node: FootnoteReference) => h('sup', `[${node.label ?? node.identifier}]`),
  footnoteDefinition: (state, node: FootnoteDefinition) =>
    h('div', [h('p', `[${node.label ?? node.identifier}]`), ...state.wrap(state.all(node), true)]),
};

/**
 * A scheme's prose as a safe tree: nothing in it can run, fetch or break out.
 *
 * @param deeper added to the level of each heading: 1 makes a `###` an `h4`; levels end at 6
 */
export function proseTree(content: readonly RootContent[], deeper = 0): readonly ElementContent[] {
  const markdown: MarkdownRoot = { type: 'root', children: [...content] };
  const tree = toHast(markdown, { handlers });
  const safe = sanitize(tree, schema);
  const root: Root = safe.type === 'root' ? safe : { type: 'root', children: [safe] };
  return root.children.filter(isContent).map(node => withDeeperHeadings(node, deeper));
}

const isContent = (node: Root['children'][number]): node is ElementContent => node.type !== 'doctype';

function withDeeperHeadings(node: ElementContent, deeper: number): ElementContent {
  if (node.type !== 'element') return node;
  const level = /^h([1-6])$/.exec(node.tagName)?.[1];
  const tagName = level === undefined ? node.tagName : `h${Math.min(6, Number(level) + deeper)}`;
  const element: Element = { ...node, tagName };
  element.children = node.children.map(child => withDeeperHeadings(child, deeper));
  return element.tagName === 'th' && element.properties['scope'] === undefined
    ? { ...element, properties: { ...element.properties, scope: 'col' } }
    : element;
}
