import type { Element, ElementContent, Root } from 'hast';
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
  /** For a page that is more than paper. */
  readonly scripts?: PageScripts;
}

export interface PageScripts {
  /** JSON that the program finds in the element `data`. */
  readonly data: string;
  /** JavaScript. */
  readonly program: string;
  /** SHA-256 of the program, base64: the only script that the page allows. */
  readonly programHash: string;
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
          ...(page.scripts === undefined ? [] : [policyOf(page.scripts)]),
          h('title', page.title),
          h('style', styleText(css)),
        ]),
        h('body', { class: page.kind }, [
          ...page.body,
          ...(page.scripts === undefined ? [] : scriptsOf(page.scripts)),
        ]),
      ]),
    ],
  };
  return `${toHtml(root)}\n`;
}

/** Nothing is fetched, and no script runs but the page's own. */
function policyOf({ programHash }: PageScripts): Element {
  const content = [
    "default-src 'none'",
    `script-src 'sha256-${programHash}'`,
    "style-src 'unsafe-inline'",
    'font-src data:',
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return h('meta', { httpEquiv: 'Content-Security-Policy', content });
}

/** `<` is written so that no text of a scheme can end the element. */
function scriptsOf({ data, program }: PageScripts): readonly Element[] {
  const safe = data.replaceAll('<', '\\u003c');
  return [h('script', { type: 'application/json', id: 'data' }, safe), h('script', program)];
}
