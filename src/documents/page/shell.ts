import type { ElementContent, Root } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { toString as textOf } from 'mdast-util-to-string';
import { styleText } from './css-text.js';
import { fontFaceCss } from './fonts.js';

/** A whole document, ready to be written. */
export interface PageShell {
  readonly title: string;
  /** BCP 47 tag. */
  readonly language: string;
  /** Style sheets, later ones win; fonts come first by themselves. */
  readonly styles: readonly string[];
  /** The children of `body`. */
  readonly body: readonly ElementContent[];
  /** One word for the style sheets to tell documents apart: `manual`. */
  readonly kind: string;
  /** Text that only style sheets print (running heads), so that its characters get their font. */
  readonly extraText?: string;
}

/** The document as HTML: self-contained, fonts inside, nothing fetched. */
export function writePage(page: PageShell): string {
  const words = textOf({ type: 'root', children: [...page.body] }) + page.title + (page.extraText ?? '');
  const css = [fontFaceCss(words), ...page.styles].join('\n');
  const root: Root = {
    type: 'root',
    children: [
      { type: 'doctype' },
      h('html', { lang: page.language }, [
        h('head', [
          h('meta', { charSet: 'utf-8' }),
          h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
          h('title', page.title),
          h('style', styleText(css)),
        ]),
        h('body', { class: page.kind }, [...page.body]),
      ]),
    ],
  };
  return `${toHtml(root)}\n`;
}
