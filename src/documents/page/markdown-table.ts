import { toString as textOf } from 'mdast-util-to-string';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';

type Pairs = ReadonlyMap<string, string>;

/** The templates read last, by their text: a build asks for the same ones for each document. */
const kept = new Map<string, Pairs>();
const MOST_KEPT = 8;

/**
 * The rows of all two-column tables of a template as a map from the first cell's text to the second's. Heads
 * are left out; of two rows with one name the last counts.
 */
export function readPairs(markdown: string): Pairs {
  const known = kept.get(markdown);
  if (known !== undefined) return known;
  if (kept.size >= MOST_KEPT) kept.clear();
  const pairs = parsePairs(markdown);
  kept.set(markdown, pairs);
  return pairs;
}

function parsePairs(markdown: string): Pairs {
  const tree = unified().use(remarkParse).use(remarkGfm).parse(markdown);
  const pairs = new Map<string, string>();
  for (const node of tree.children) {
    if (node.type !== 'table') continue;
    for (const row of node.children.slice(1)) {
      const [name, value] = row.children.map(cell => textOf(cell).trim());
      if (name !== undefined && name !== '') pairs.set(name, value ?? '');
    }
  }
  return pairs;
}
