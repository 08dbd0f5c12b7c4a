import type { Element, ElementContent } from 'hast';
import type { BuiltFile, DocumentInput, DocumentName } from '../document.js';
import { h } from '../page/elements.js';
import { writePage } from '../page/shell.js';
import { readStyles } from '../page/templates.js';
import { findPhrases, type Phrases } from '../phrases.js';
import { type IndexView, type LinkGroup, type MatrixView, viewIndex } from './view.js';

/** A small picture of a printed page. */
export interface Thumbnail {
  readonly document: DocumentName;
  /** From 1. */
  readonly page: number;
  /** `data:` URI of a picture; anything else is left out. */
  readonly image: string;
  /** px */
  readonly width: number;
  readonly height: number;
}

/**
 * The page that a build opens with.
 *
 * @param names the other files of the set
 */
export function createIndex(
  input: DocumentInput,
  names: readonly string[],
  thumbnails: readonly Thumbnail[] = [],
): BuiltFile {
  const { phrases } = findPhrases(input.scheme.game.language.value, input.templates);
  const view = viewIndex(input, names, phrases);
  const content = writePage({
    title: view.title,
    language: phrases.language,
    kind: 'index',
    styles: [readStyles(input.templates, ['base', 'index'])],
    body: [
      headTree(view),
      h('main', [
        ...picturesTree(thumbnails, names, view, phrases),
        h('div', { class: 'groups' }, ...view.groups.map(groupTree)),
        ...(view.matrix === null ? [] : [matrixTree(view.matrix)]),
      ]),
      h('footer', h('p', view.madeFrom)),
    ],
  });
  return { name: 'index.html', content };
}

function headTree({ title, version, verdict }: IndexView): Element {
  return h('header', [
    h('h1', title),
    ...(version === '' ? [] : [h('p', { class: 'version' }, version)]),
    h('p', { class: ['verdict', verdict.kind] }, [h('strong', verdict.words), ' ', h('span', verdict.count)]),
  ]);
}

function picturesTree(
  thumbnails: readonly Thumbnail[],
  names: readonly string[],
  { groups }: IndexView,
  phrases: Phrases,
): readonly ElementContent[] {
  const safe = thumbnails.filter(({ image }) =>
    /^data:image\/(png|jpeg|webp);base64,[A-Za-z0-9+/=]+$/.test(image),
  );
  if (safe.length === 0) return [];
  const wordsOf = (file: string) =>
    groups.flatMap(({ links }) => links).find(({ files }) => files.includes(file))?.words ?? file;
  return [
    h(
      'ul',
      { class: 'pages' },
      ...safe.map(({ document, page, image, width, height }) => {
        const file =
          [`${document}.pdf`, `${document}.html`].find(name => names.includes(name)) ?? `${document}.html`;
        const alt = phrases.say('index page alt', { number: page, document: wordsOf(`${document}.html`) });
        return h('li', h('a', { href: file }, h('img', { src: image, alt, width, height })));
      }),
    ),
  ];
}

function groupTree({ title, links }: LinkGroup): Element {
  return h('section', [
    h('h2', title),
    h(
      'ul',
      ...links.map(({ words, files }) => {
        const [name = '', ...details] = words.split(/:\s+/);
        return h('li', [
          h('p', h('a', { href: files[0] ?? '' }, name)),
          ...(details.length === 0 ? [] : [h('p', { class: 'detail' }, details.join(': '))]),
          h(
            'p',
            { class: 'files' },
            ...files.flatMap((file, index) => [
              ...(index === 0 ? [] : [' · ']),
              h('a', { href: file }, file),
            ]),
          ),
        ]);
      }),
    ),
  ]);
}

function matrixTree({ title, corner, consoles, rows }: MatrixView): Element {
  return h('section', { class: 'matrix' }, [
    h('h2', title),
    h('table', [
      h('thead', h('tr', ...[corner, ...consoles].map(text => h('th', { scope: 'col' }, text)))),
      h(
        'tbody',
        ...rows.map(({ seats, cells }) =>
          h('tr', [
            h('th', { scope: 'row' }, seats),
            ...cells.map(({ verdict, words }) =>
              h('td', h('span', { class: `mark ${verdict.replace(' ', '-')}` }, words)),
            ),
          ]),
        ),
      ),
    ]),
  ]);
}
