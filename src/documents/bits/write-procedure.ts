import type { Element } from 'hast';
import { h } from '../page/elements.js';
import type { Procedure } from './procedures.js';

/** A reading procedure: steps, listing, figures, cautions. */
export function procedureSection(procedure: Procedure): readonly Element[] {
  const { title, steps, code, cost, facts, cautions, sources } = procedure;
  return [
    h('h3', title),
    h(
      'ol',
      { class: 'steps' },
      steps.map(step => h('li', step)),
    ),
    h('div', { class: 'side-by-side' }, [
      h('div', [
        h('table', { class: 'code' }, [
          h('caption', { class: 'read-only' }, `${title}: instructions and cycles`),
          h(
            'tbody',
            code.map(line => h('tr', [h('td', h('code', line.code)), h('td', line.comment)])),
          ),
        ]),
        h('p', { class: 'note' }, cost),
      ]),
      ...(facts.length === 0 ? [] : [factsList(procedure)]),
    ]),
    ...cautions.map(text => h('p', { class: 'caution' }, text)),
    h('p', { class: 'note' }, `Sources: ${sources.join('; ')}.`),
  ];
}

function factsList({ facts }: Procedure): Element {
  return h(
    'dl',
    { class: 'figures' },
    facts.flatMap(({ name, values }) => [h('dt', name), ...values.map(value => h('dd', value))]),
  );
}
