import { cssString } from './css-text.js';
import { readPairs } from './markdown-table.js';
import { papers } from './paper.js';
import { readTemplate } from './templates.js';

/** What the texts around a page may name. */
export interface FurnitureFacts {
  readonly title: string;
  readonly version: string;
  readonly document: string;
}

export type Furniture = ReadonlyMap<string, string>;

export function readFurniture(templates: string): Furniture {
  return readPairs(readTemplate(templates, ['furniture.md']));
}

/** Page size, margins, running heads and page numbers of the manual, as CSS. The first page is a cover. */
export function manualPageRules(
  paper: 'A5' | 'half letter' | 'A4' | 'letter',
  furniture: Furniture,
  facts: FurnitureFacts,
): string {
  const text = (item: string) => contentOf(item, furniture, facts);
  const { inner, outer, top, foot } = manualMargins[paper];
  return [
    `@page{${sizeOf(paper)};margin:${top}mm ${outer}mm ${foot}mm ${inner}mm;${box('bottom-right', text('Manual, foot'))}${box('top-right', text('Manual, right page head'))}}`,
    `@page :left{margin:${top}mm ${inner}mm ${foot}mm ${outer}mm;${box('bottom-left', text('Manual, foot'))}${box('bottom-right', 'none')}${box('top-left', text('Manual, left page head'))}${box('top-right', 'none')}}`,
    `@page :first{${['top-left', 'top-right', 'bottom-left', 'bottom-right'].map(at => box(at, 'none')).join('')}}`,
  ].join('\n');
}

/** Margins of a manual page, mm. Inner is at the fold; equal sides keep a page alike on screen and on paper. */
export const manualMargins = {
  A5: { inner: 16, outer: 13, top: 18, foot: 17 },
  'half letter': { inner: 15, outer: 12, top: 18, foot: 17 },
  A4: { inner: 24, outer: 24, top: 24, foot: 22 },
  letter: { inner: 26, outer: 26, top: 24, foot: 22 },
} as const;

/** The same for loose sheets: the bit appendix and the report. */
export function sheetPageRules(
  paper: 'A4' | 'letter',
  furniture: Furniture,
  facts: FurnitureFacts,
  turned = false,
): string {
  const text = (item: string) => contentOf(item, furniture, facts);
  const boxes = [
    box('top-left', text('Sheets, left head')),
    box('top-right', text('Sheets, right head')),
    box('bottom-left', text('Sheets, left foot')),
    box('bottom-right', text('Sheets, right foot')),
  ];
  return `@page{${sizeOf(paper, turned)};margin:20mm 15mm 18mm 15mm;${boxes.join('')}}`;
}

function sizeOf(paper: keyof typeof papers, turned = false): string {
  const { widthMm, heightMm } = papers[paper];
  return turned ? `size:${heightMm}mm ${widthMm}mm` : `size:${widthMm}mm ${heightMm}mm`;
}

const boxStyle = "font:8pt 'Leverleaf Text','Leverleaf Symbols',sans-serif;color:#3c4648;white-space:nowrap";

function box(at: string, content: string): string {
  return `@${at}{content:${content};${boxStyle}}`;
}

/** A furniture text as a CSS `content` value: strings and page counters. */
function contentOf(item: string, furniture: Furniture, facts: FurnitureFacts): string {
  const fill: Readonly<Record<string, string>> = {
    ...facts,
    publisher: furniture.get('Publisher') ?? '',
  };
  const parts = (furniture.get(item) ?? '').split(/(\{[a-z]+\})/).flatMap((part): string[] => {
    const name = /^\{([a-z]+)\}$/.exec(part)?.[1];
    if (name === 'page' || name === 'pages') return [`counter(${name})`];
    const text = name === undefined ? part : (fill[name] ?? part);
    return text.trim() === '' && name !== undefined ? [] : [cssString(text)];
  });
  return parts.length === 0 ? 'none' : parts.join(' ');
}
