import type { Element, ElementContent } from 'hast';
import { h } from '../page/elements.js';
import type { Phrases } from '../phrases.js';
import type { QuickMode, QuickView } from './quick.js';
import { layOutQuick, QUICK } from './quick-layout.js';

/** The reference as columns of small tables, set so that all of it stands on one page. */
export function quickTree(
  { modes }: QuickView,
  area: { readonly width: number; readonly height: number },
  phrases: Phrases,
): readonly ElementContent[] {
  const { sizePt, columns, columnWidth, isComplete } = layOutQuick(modes, area);
  const more = phrases.say('quick more', { section: phrases.say('section modes') });
  return [
    h(
      'div',
      { class: 'quick-columns', style: `font-size:${sizePt}pt` },
      ...columns.map(column =>
        h('div', { class: 'quick-column', style: `width:${columnWidth}mm` }, ...column.map(modeTable)),
      ),
    ),
    ...(isComplete ? [] : [h('p', { class: 'note' }, more)]),
  ];
}

function modeTable({ name, lines }: QuickMode): Element {
  return h('table', { class: 'quick' }, [
    h('caption', name),
    h('colgroup', [
      h('col', { style: `width:${QUICK.controlShare * 100}%` }),
      h('col', { style: `width:${(1 - QUICK.controlShare) * 100}%` }),
    ]),
    h(
      'tbody',
      ...lines.map(({ control, action }) => h('tr', [h('th', { scope: 'row' }, control), h('td', action)])),
    ),
  ]);
}
