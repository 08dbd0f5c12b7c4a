import { type DefaultTreeAdapterMap, parse } from 'parse5';

type Node = DefaultTreeAdapterMap['node'];
type Element = DefaultTreeAdapterMap['element'];

/** What a page is made of, as parse5 (which follows the WHATWG HTML standard) reads it. */
export interface ParsedPage {
  /** Codes of the parse errors of the standard; none in a well-formed page. */
  readonly errors: readonly string[];
  readonly elements: readonly Element[];
  readonly text: string;
}

export function parsePage(html: string): ParsedPage {
  const errors: string[] = [];
  const document = parse(html, {
    onParseError: ({ code, startLine }) => errors.push(`${code} (line ${startLine})`),
  });
  const elements: Element[] = [];
  const texts: string[] = [];
  const walk = (node: Node): void => {
    if ('value' in node) texts.push(node.value);
    if ('tagName' in node) elements.push(node);
    if (!('childNodes' in node) || ('tagName' in node && node.tagName === 'style')) return;
    for (const child of node.childNodes) walk(child);
  };
  walk(document);
  return { errors, elements, text: texts.join(' ').replace(/\s+/g, ' ') };
}

/** Everything in a page that would fetch, run or lead outside; empty in a self-contained one. */
export function outsideReferences(html: string): readonly string[] {
  const { elements } = parsePage(html);
  const bad = elements.filter(({ tagName }) =>
    ['script', 'link', 'iframe', 'object', 'embed', 'base', 'form'].includes(tagName),
  );
  const attributes = elements.flatMap(({ attrs }) =>
    attrs.filter(
      ({ name, value }) =>
        /^on/.test(name) ||
        (['href', 'src', 'action', 'xlink:href'].includes(name) && !/^(#|data:)/.test(value)),
    ),
  );
  const urls = [...html.matchAll(/url\(\s*(['"]?)(?!data:)[^)]*\)/g)].map(([url]) => url);
  const imports = [...html.matchAll(/@import[^;]*/g)].map(([rule]) => rule);
  return [
    ...bad.map(({ tagName }) => `<${tagName}>`),
    ...attributes.map(({ name, value }) => `${name}=${value}`),
    ...urls,
    ...imports,
  ];
}
