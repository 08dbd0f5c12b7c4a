import { describe, expect, test } from 'vitest';
import { createBits, writeBits } from '../../../src/documents/bits/write.js';
import { outsideReferences, parsePage } from '../report/parsed-page.js';
import { DYE_WORKS, inputOf } from './support.js';

const html = writeBits(inputOf(DYE_WORKS));

describe('bits.html', () => {
  test('is well formed by the HTML standard (parse5) and refers to nothing outside itself', () => {
    expect(parsePage(html).errors).toEqual([]);
    expect(outsideReferences(html)).toEqual([]);
  });

  test('names a source for every part of the machine it tells of', () => {
    const { text } = parsePage(html);
    for (const source of [
      'section PIA 4.1',
      'section PIA 5.3',
      'section PIA 5.5',
      'section TIA 12.1',
      'programming manual',
      'BT.1700',
      'from memory',
      'common practice',
    ]) {
      expect(text).toContain(source);
    }
  });

  test('links lead to places that are there, and no place is there twice', () => {
    const { elements } = parsePage(html);
    const attribute = (name: string) =>
      elements.flatMap(({ attrs }) => attrs.filter(each => each.name === name).map(({ value }) => value));
    const ids = attribute('id');
    expect(new Set(ids).size).toBe(ids.length);
    expect(attribute('href').length).toBeGreaterThan(10);
    expect(attribute('href').filter(href => !ids.includes(href.slice(1)))).toEqual([]);
  });

  test('every row of a table has as many columns as its head', () => {
    const widths = tableWidths(html);
    expect(widths.length).toBeGreaterThan(10);
    for (const { head, rows } of widths) for (const width of rows) expect(width).toBe(head);
  });

  test('tells where the INPT registers answer as well (common practice, no source)', () => {
    expect(parsePage(html).text).toContain('INPT0 to INPT5 answer at $0030 to $0035');
  });

  test('is the same each time', () => {
    expect(writeBits(inputOf(DYE_WORKS))).toBe(html);
  });

  test('prints on the scheme’s sheet paper', () => {
    expect(html).toContain('size:215.9mm 279.4mm');
    expect(writeBits(inputOf(DYE_WORKS.replace('| letter ', '| A4 ')))).toContain('size:210mm 297mm');
  });

  test('shows the generated routine’s own figures where it is given them', () => {
    const input = inputOf(DYE_WORKS);
    const byte = { offset: 0, name: 'DYE__FIRED0', holds: 'what fired', bits: [] };
    const given = createBits(input, {
      vectorsGuide: ['Run the build read by read.'],
      ram: { about: 'Measured.', shared: [byte], modes: [], total: 77 },
      costs: [{ mode: 'Work', seats: 'Turning', cycles: 123, bytes: 45 }],
    }).html;
    const { text } = parsePage(given);
    expect(text).toContain('at most 123 cycles a read and 45 bytes');
    expect(text).toContain('77 of 128 bytes');
    expect(text).toContain('DYE__FIRED0');
    expect(text).toContain('Run the build read by read.');
  });
});

test('a scheme’s text stays text', () => {
  const bait = '&lt;img src=x onerror=alert(1)&gt;';
  const nasty = DYE_WORKS.replace('# Dye Works', `# Dye ${bait} \\<script> </style>"' Works`).replace(
    '| 0.9 ',
    '| 0.9 \\<b>" } ',
  );
  const page = writeBits(inputOf(nasty));
  expect(parsePage(page).errors).toEqual([]);
  expect(outsideReferences(page)).toEqual([]);
  const { elements, text } = parsePage(page);
  expect(elements.filter(({ tagName }) => ['img', 'script', 'b'].includes(tagName))).toEqual([]);
  expect(elements.filter(({ tagName }) => tagName === 'style')).toHaveLength(1);
  expect(text).toContain('<img src=x onerror=alert(1)> <script> </style>"\' Works');
});

/** Columns of each table: of its head's last row, and of every body row with what spans into it counted. */
function tableWidths(page: string): readonly { head: number; rows: readonly number[] }[] {
  const { elements } = parsePage(page);
  const childrenOf = (element: (typeof elements)[number], ...names: readonly string[]) =>
    element.childNodes.filter(
      (node): node is (typeof elements)[number] => 'tagName' in node && names.includes(node.tagName),
    );
  const span = (element: (typeof elements)[number], name: string) =>
    Number(element.attrs.find(attr => attr.name === name)?.value ?? 1);
  return elements
    .filter(({ tagName }) => tagName === 'table')
    .flatMap(table => {
      const headRow = childrenOf(table, 'thead')
        .flatMap(head => childrenOf(head, 'tr'))
        .at(-1);
      if (headRow === undefined) return [];
      const head = childrenOf(headRow, 'th', 'td').reduce((sum, cell) => sum + span(cell, 'colspan'), 0);
      const rows = childrenOf(table, 'tbody').flatMap(body => {
        const open: number[] = [];
        return childrenOf(body, 'tr').map((row, index) => {
          const cells = childrenOf(row, 'th', 'td');
          const inherited = open[index] ?? 0;
          for (const cell of cells) {
            for (let below = 1; below < span(cell, 'rowspan'); below++)
              open[index + below] = (open[index + below] ?? 0) + span(cell, 'colspan');
          }
          return inherited + cells.reduce((sum, cell) => sum + span(cell, 'colspan'), 0);
        });
      });
      return [{ head, rows }];
    });
}
