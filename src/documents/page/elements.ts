import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';

export { h };

/** What can stand in an element: a tree, text, or a list of them. Text never becomes markup. */
export type Content = ElementContent | string | readonly (ElementContent | string)[];

/** For what may be wider than a small screen and then scrolls: the keyboard can get there too. */
export const SCROLLS = { tabIndex: 0 } as const;

export interface TableParts {
  readonly className?: string;
  /** Printed above the table; read out in any case where `hidden`. */
  readonly caption?: string;
  readonly captionHidden?: boolean;
  readonly head: readonly Content[];
  /** The first cell of a row is its header. */
  readonly rows: readonly (readonly Content[])[];
}

/** A table with column and row headers that a reader program can follow. */
export function table({ className, caption, captionHidden, head, rows }: TableParts): Element {
  return h('table', className === undefined ? {} : { class: className }, [
    ...(caption === undefined ? [] : [h('caption', captionHidden ? { class: 'read-only' } : {}, caption)]),
    h('thead', h('tr', ...head.map(cell => h('th', { scope: 'col' }, ...children(cell))))),
    h('tbody', ...rows.map(tableRow)),
  ]);
}

function tableRow(cells: readonly Content[]): Element {
  return h(
    'tr',
    ...cells.map((cell, index) =>
      index === 0 ? h('th', { scope: 'row' }, ...children(cell)) : h('td', ...children(cell)),
    ),
  );
}

/** A figure with its caption; the drawing brings its own text for those who can't see it. */
export function figure(drawing: Element, caption: Content, className = ''): Element {
  return h('figure', className === '' ? {} : { class: className }, [
    drawing,
    h('figcaption', ...children(caption)),
  ]);
}

/** A box set apart from the text. */
export function box(title: Content, content: readonly ElementContent[], className = 'box'): Element {
  return h('div', { class: className }, [h('p', { class: 'box-title' }, ...children(title)), ...content]);
}

export function children(content: Content): readonly (ElementContent | string)[] {
  if (typeof content === 'string') return [content];
  return 'type' in content ? [content] : content;
}
