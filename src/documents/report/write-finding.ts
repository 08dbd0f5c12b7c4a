import type { Element } from 'hast';
import { h } from '../page/elements.js';
import type { Excerpt } from './excerpt.js';
import type { FindingView } from './finding-view.js';
import { withCode } from './inline-code.js';
import { severityShape } from './shapes.js';
import { timingFigures } from './timing-figure.js';
import type { TimingView } from './timing-view.js';

/** One finding: what, where, what it does, the witness, and the ways out. */
export function findingCard(view: FindingView): Element {
  const { number, rule, severity, message, effect, excerpt, where, why } = view;
  return h('article', { class: `finding is-${severity}`, id: `finding-${number}` }, [
    h('h3', [
      severityShape(severity),
      h('span', { class: 'number' }, `${number}`),
      ' ',
      ...withCode(message),
    ]),
    h('p', { class: 'rule' }, [`${severity} · `, h('code', rule), ` · ${where}`]),
    ...(excerpt === null ? [] : [excerptBlock(excerpt)]),
    ...(why === null ? [] : [h('p', [h('strong', 'Kept because: '), why])]),
    h('p', { class: 'effect' }, [h('strong', 'For the player: '), ...withCode(effect)]),
    ...relatedBlocks(view),
    ...(view.timing === null ? [] : [timingBlock(view.timing)]),
    ...(why === null ? [waysOut(view)] : []),
    ...concerns(view),
  ]);
}

function excerptBlock({ lines, more }: Excerpt): Element {
  return h('div', { class: 'excerpt' }, [
    ...lines.map(({ number, before, marked, after }) =>
      h('div', { class: 'line' }, [
        h('span', { class: 'line-number' }, String(number)),
        h('code', [before, h('mark', marked), after]),
      ]),
    ),
    ...(more === 0 ? [] : [h('div', { class: 'more' }, `and ${more} more ${more === 1 ? 'line' : 'lines'}`)]),
  ]);
}

function relatedBlocks({ related }: FindingView): readonly Element[] {
  return related.map(({ message, where, excerpt }) =>
    h('div', { class: 'related' }, [
      h('p', [h('strong', 'See also: '), ...withCode(message), h('span', { class: 'where' }, ` ${where}`)]),
      ...(excerpt === null ? [] : [excerptBlock(excerpt)]),
    ]),
  );
}

function timingBlock(view: TimingView): Element {
  return h('figure', { class: 'witness' }, [
    ...timingFigures(view),
    h(
      'figcaption',
      `The shortest way to see it, on ${view.standard}. Raised: the control is engaged. Diamond: the action fires.`,
    ),
  ]);
}

function waysOut({ waysOut: ways }: FindingView): Element {
  return h('div', { class: 'ways' }, [
    h('p', h('strong', ways.length === 1 ? 'A way out' : 'Ways out')),
    h(
      'ul',
      ways.map(text => h('li', [...withCode(text)])),
    ),
  ]);
}

function concerns({ concerns: lists }: FindingView): readonly Element[] {
  if (lists.length === 0) return [];
  return [
    h(
      'dl',
      { class: 'concerns' },
      lists.map(([name, values]) => h('div', [h('dt', name), h('dd', values)])),
    ),
  ];
}
