import type { Element, ElementContent } from 'hast';
import { toString as textOf } from 'mdast-util-to-string';
import type { Controller } from '../../hardware/controllers.js';
import { drawController } from '../figures/controller-art.js';
import { type Drawing, group, picture, ptToMm } from '../figures/drawing.js';
import { breakLines } from '../figures/text-block.js';
import { h } from '../page/elements.js';
import { proseTree } from '../page/prose.js';
import type { ManualView } from './view.js';

/** The first page: title, the scheme's opening words, the controllers in line art, and the contents list. */
export function coverTree(
  view: ManualView,
  publisher: string,
  art: Element | null,
  contents: ElementContent | null,
): Element {
  return h('header', { class: 'cover' }, [
    h('p', { class: 'cover-publisher' }, publisher),
    h('h1', view.title),
    h('p', { class: 'cover-name' }, view.name),
    h('div', { class: 'cover-opening' }, ...proseTree(view.opening, 1)),
    h('div', { class: 'cover-art', ariaHidden: 'true' }, ...(art === null ? [] : [art])),
    ...(contents === null ? [] : [contents]),
    h('p', { class: 'cover-version note' }, view.version),
  ]);
}

/** Sizes of the cover, as in manual.css: pt, and mm between the parts. */
const COVER = { titlePt: 27, openingPt: 10.5, entryMm: 6, around: 67, artMost: 44, artLeast: 18 } as const;

/** The height that everything on the cover but the art needs, mm; roughly, and rather too much. */
export function coverText(view: ManualView, entries: number, width: number): number {
  const title = breakLines(view.title, width, { sizePt: COVER.titlePt, bold: true }).length;
  const opening = view.opening.flatMap(node => breakLines(textOf(node), width, { sizePt: COVER.openingPt }));
  const text = ptToMm(
    title * COVER.titlePt * 1.1 + (opening.length + view.opening.length) * COVER.openingPt * 1.42,
  );
  return text + entries * COVER.entryMm + COVER.around;
}

/**
 * The controllers side by side, a picture for the eye alone; null where the words leave too little room.
 *
 * @param taken mm of the page's height
 */
export function coverArt(
  controllers: readonly Controller[],
  page: { readonly width: number; readonly height: number },
  taken: number,
): Element | null {
  const shown = controllers.slice(0, 3);
  const arts = shown.map(controller => drawController(controller));
  const room = Math.min(COVER.artMost, page.height - taken);
  if (arts.length === 0 || room < COVER.artLeast) return null;
  const gap = 12;
  const natural = arts.reduce((sum, art) => sum + art.width, gap * (arts.length - 1));
  const tallest = Math.max(...arts.map(({ height }) => height));
  const scale = Math.min((page.width * 0.8) / natural, room / tallest, 1);
  let x = (page.width - natural * scale) / 2;
  const nodes = shown.map(controller => {
    const art = drawController(controller, scale);
    const placed = group(art.nodes, { x, y: (tallest - art.height) * scale * 0.5 + 0.5 }, scale);
    x += (art.width + gap) * scale;
    return placed;
  });
  const drawing: Drawing = { width: page.width, height: tallest * scale + 1, nodes };
  return picture(drawing, '');
}
