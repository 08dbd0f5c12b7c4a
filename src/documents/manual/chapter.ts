import type { Element, ElementContent } from 'hast';
import { h, SCROLLS } from '../page/elements.js';

/** A chapter of the manual: its number and title make the heading; `id` is what the contents list points at. */
export interface Chapter {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly content: readonly ElementContent[];
  readonly className?: string;
}

export function chapterTree({ id, number, title, content, className }: Chapter): Element {
  return h('section', { class: ['chapter', ...(className === undefined ? [] : [className])], ...SCROLLS }, [
    h('h2', { id }, [h('span', { class: 'number' }, `${number}`), ' ', title]),
    ...content,
  ]);
}
