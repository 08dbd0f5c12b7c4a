import { describe, expect, it } from 'vitest';
import { createIndex } from '../../src/documents/index-page/index-page.js';
import { cssString } from '../../src/documents/page/css-text.js';
import { EVERYTHING } from './everything-scheme.js';
import { documentsOf, inputOf } from './inputs.js';

const ATTACK = `</style><script>alert(1)</script>"'}@page{size:1mm}<img src="http://127.0.0.1/a.png">`;
const hostile = EVERYTHING.replace('# Salt Orchard', `# ${ATTACK}`)
  .replace('| Version | 2.1 |', `| Version | ${ATTACK} |`)
  .replace('Step to the next tree', ATTACK)
  .replace('A still day', ATTACK)
  .replace(
    '- Salt keeps.',
    `- ${ATTACK} [link](javascript:alert(1)) ![picture](http://127.0.0.1/b.png) [^1] <iframe src="http://127.0.0.1/"></iframe>\n\n[^1]: A note.\n\n- Salt keeps.`,
  );

// HTML Living Standard, 13.2.5: outside of text, only `<` begins a tag; it is written as `&lt;` in text.
describe('the text of a scheme never becomes markup', () => {
  const input = inputOf(hostile);
  const pages = [
    ...documentsOf(input).map(({ name, html }) => [name, html] as const),
    ['index', String(createIndex(input, ['manual.html']).content)] as const,
  ];

  it.each(pages)('%s', (_, html) => {
    expect(html.match(/<(script|iframe|img|link|object)/gi)).toBeNull();
    expect(html.match(/<[a-z][^<>]*\s(href|src)="(?!#|manual)[^"]*/gi)).toBeNull();
    expect(html.match(/<style/g)).toHaveLength(1);
    expect(html.match(/<\/style/g)).toHaveLength(1);
    const style = /<style>([\s\S]*?)<\/style>/.exec(html)?.[1] ?? '';
    expect(style.includes('{size:1mm')).toBe(false);
    expect(html.includes('alert(1)')).toBe(true);
  });

  it('but loses none of it', () => {
    const [manual] = documentsOf(input);
    for (const words of ['picture', '[1]', 'A note.', '&#x3C;iframe'])
      expect(manual?.html.includes(words), words).toBe(true);
  });

  it('nor a way out of a CSS string', () => {
    // CSS Syntax Level 3, 4.3.5: a string ends at its quote or at a line break.
    const written = cssString(`a"b\\c\nd</style>`);
    expect(written.slice(1, -1)).not.toMatch(/["\n<]/);
    expect(written).toBe('"a\\22 b\\5c c\\a d\\3c /style\\3e "');
  });
});
