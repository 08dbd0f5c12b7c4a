import type { Element } from 'hast';
import { h } from '../page/elements.js';
import type { Phrases } from '../phrases.js';
import type { Chapter } from './chapter.js';

/** A manual with more pages than this has a contents list. */
export const PAGES_WITHOUT_CONTENTS = 6;

/**
 * The contents list, its page numbers still to come: they are known when the manual has been printed once.
 * It stands on the cover, whose size does not depend on it, so that it moves no page.
 */
export function contentsTree(chapters: readonly Chapter[], phrases: Phrases): Element {
  return h('nav', { class: 'contents', ariaLabelledBy: 'contents' }, [
    h('h2', { id: 'contents' }, phrases.say('contents')),
    h(
      'ol',
      ...chapters.map(({ id, title }) =>
        h(
          'li',
          h('a', { href: `#${id}` }, [
            h('span', { class: 'entry' }, title),
            h('span', { class: 'page', dataPageOf: id }),
          ]),
        ),
      ),
    ),
  ]);
}

/**
 * The manual's HTML after its first print: with the pages its chapters came to stand on, or without a contents
 * list where it is short enough to do without. Printed again, all stands where it stood.
 *
 * @param pages page numbers from 1 of the anchors in the document, by id
 * @param count pages in all
 */
export function fillContents(html: string, pages: ReadonlyMap<string, number>, count: number): string {
  if (count <= PAGES_WITHOUT_CONTENTS) return html.replace(/<nav class="contents"[\s\S]*?<\/nav>/, '');
  return html.replace(
    /(<span class="page" data-page-of="([a-z0-9-]+)">)(<\/span>)/g,
    (_all, start, id, end) => {
      return `${start}${pages.get(id) ?? ''}${end}`;
    },
  );
}
