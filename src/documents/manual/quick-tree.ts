import type { Element, ElementContent } from 'hast';
import { h } from '../page/elements.js';
import type { Phrases } from '../phrases.js';
import type { QuickMode, QuickView } from './quick.js';
import { type Column, layOutQuick } from './quick-layout.js';

/** The reference as columns of small tables, set so that all of it stands on one page. */
export function quickTree(
  { modes }: QuickView,
  area: { readonly width: number; readonly height: number },
  phrases: Phrases,
): readonly ElementContent[] {
  const { sizePt, columns, column: width, isComplete } = layOutQuick(modes, area);
  const more = phrases.say('quick more', { section: phrases.say('section modes') });
  return [
    h(
      'div',
      { class: 'quick-columns', style: `font-size:${sizePt}pt` },
      ...columns.map(column =>
        h(
          'div',
          { class: 'quick-column', style: `--column:${width.width}mm` },
          ...column.map(mode => modeTable(mode, width)),
        ),
      ),
    ),
    ...(isComplete ? [] : [h('p', { class: 'note' }, more)]),
  ];
}

function modeTable({ name, lines }: QuickMode, { width, controlWidth }: Column): Element {
  const share = (part: number) => h('col', { style: `width:${(part / width) * 100}%` });
  return h('table', { class: 'quick' }, [
    h('caption', name),
    h('colgroup', [share(controlWidth), share(width - controlWidth)]),
    h(
      'tbody',
      ...lines.map(({ control, action }) => h('tr', [h('th', { scope: 'row' }, control), h('td', action)])),
    ),
  ]);
}
