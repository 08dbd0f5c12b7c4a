import fc from 'fast-check';
import type { RootContent } from 'mdast';
import { describe, expect, it } from 'vitest';
import { cutParts } from '../../src/language/cut.js';
import { parseMarkdown, proseOf, readDocument } from '../../src/language/document.js';
import { createKeeper } from '../../src/language/keep.js';
import { EVERYTHING, goodSchemes } from './fixture.js';

/** Lines that open, close, hold or look like every kind of block of CommonMark and GFM. */
const LINES = [
  '## One',
  '## Two',
  '##',
  '## ',
  '##\tTab',
  '##Three',
  ' ## Four',
  '### Deep',
  '# Top',
  'Under',
  '-----',
  '=====',
  '```',
  '```js',
  '````',
  '~~~',
  '~~~~ x',
  '  ```',
  '   ~~~',
  '    ```',
  '``` a`b',
  'text',
  'text with `code`',
  '',
  '',
  '- item',
  '  - deeper',
  '  ## in the item',
  '1. first',
  '   text',
  '> quote',
  '> ## in the quote',
  '> ```',
  '| a | b |',
  '| - | - |',
  '<!-- one line -->',
  '<!-- open',
  '-->',
  '<div>',
  '</div>',
  '<b>word</b>',
  '<pre>',
  '</pre>',
  '<?php',
  '?>',
  '<!X',
  '<![CDATA[',
  ']]>',
  '[a]: http://example.com',
  '[a]',
  '[^1]',
  '[^1]: note',
  '    code',
  '\t## tab',
  '***',
  '\\## no heading',
  'a\u2028## b',
  'two  ',
  'a\\',
];

const documents = fc
  .array(fc.tuple(fc.constantFrom(...LINES), fc.constantFrom('\n', '\n', '\n', '\r\n', '\r')), {
    maxLength: 14,
  })
  .map(lines => lines.map(([line, end]) => line + end).join(''));

/** What the parts say together, and what the whole says. */
function bothWays(text: string): [readonly RootContent[], readonly RootContent[]] {
  const { blocks } = readDocument([{ path: 'a.md', text }], createKeeper(parseMarkdown).parse);
  return [blocks.flatMap(block => proseOf([block])), blocks.length === 0 ? [] : proseOfWhole(text)];
}

function proseOfWhole(text: string): readonly RootContent[] {
  const source = { path: 'a.md', text, lineStarts: [0] };
  return parseMarkdown(text).flatMap(node => proseOf([{ node, part: { source, base: 0 } }]));
}

describe('cutting a document before its level-2 headings', () => {
  it('gives the same content and places as parsing it whole', () => {
    fc.assert(
      fc.property(documents, text => {
        const [parts, whole] = bothWays(text);
        expect(parts).toEqual(whole);
      }),
      { numRuns: 1000 },
    );
  });

  it('cuts the schemes, so that a change in one section leaves the others as they are', () => {
    for (const { text } of goodSchemes()) {
      const headings = text.match(/^## /gm)?.length ?? 0;
      expect(cutParts(text, 0)).toHaveLength(headings + 1);
      const [parts, whole] = bothWays(text);
      expect(parts).toEqual(whole);
    }
  });

  it.each([
    ['fenced code', '# A\n\n```\n## B\n```\n\n## C\n', 2],
    ['a comment of several lines', '# A\n\n<!--\n## B\n-->\n\n## C\n', 1],
    ['a definition that other parts use', '# A\n\n[b]\n\n## B\n\n[b]: http://example.com\n', 1],
    ['a comment on one line', '# A\n\n<!-- note -->\n\n## B\n', 2],
  ])('knows %s', (_, text, parts) => {
    expect(cutParts(text, 0)).toHaveLength(parts);
  });

  it('counts from after a byte order mark', () => {
    const [first, second] = cutParts(`\uFEFF${EVERYTHING}`, 1);
    expect(first).toBe(1);
    expect(EVERYTHING.slice((second ?? 0) - 1)).toMatch(/^## Game/);
  });
});
