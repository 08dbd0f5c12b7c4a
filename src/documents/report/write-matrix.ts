import type { Element } from 'hast';
import type { Verdict } from '../../checks/coverage-model.js';
import { h } from '../page/elements.js';
import type { ColumnGroup, Explanation, MatrixCell, MatrixPanel, MatrixView } from './matrix-view.js';
import { verdictShape } from './shapes.js';

const MEANINGS: readonly (readonly [verdict: Verdict, meaning: string])[] = [
  ['plays', 'as designed'],
  ['altered', 'plays, but not as on a full console: see its letter'],
  ['broken', 'can’t be played as it must be: see its letter'],
  ['not offered', 'the mode is not played with these seats'],
];

/** The matrix that goes on the wall, and beneath it a sentence for each cell that is not simply played. */
export function matrixSection(view: MatrixView): readonly Element[] {
  return [
    h(
      'div',
      { class: 'legend' },
      MEANINGS.map(([verdict, meaning]) =>
        h('span', { class: 'key' }, [
          verdictShape(verdict),
          h('strong', ` ${verdict}`),
          ` ${meaning} (${view.counts[verdict]})`,
        ]),
      ),
    ),
    ...view.panels.map(panelTable),
    ...(view.explanations.length === 0
      ? []
      : [h('ol', { class: 'explanations', type: 'a' }, view.explanations.map(explanationItem))]),
  ];
}

function panelTable({ consoles, seats, standards, rows }: MatrixPanel): Element {
  return h('table', { class: 'matrix' }, [
    h('caption', { class: 'read-only' }, `Coverage on ${consoles.map(({ name }) => name).join(', ')}`),
    h('thead', [
      headRow('Console', consoles),
      headRow('Seats', seats),
      headRow(
        'Standard',
        standards.map(name => ({ name, span: 1 })),
      ),
    ]),
    h(
      'tbody',
      rows.map(({ mode, kind, cells }) =>
        h('tr', [
          h('th', { scope: 'row' }, [mode, h('span', { class: 'sub' }, kind)]),
          ...cells.map((cell, index) => cellOf(cell, startsGroup(index, seats))),
        ]),
      ),
    ),
  ]);
}

function headRow(name: string, groups: readonly ColumnGroup[]): Element {
  return h('tr', [
    h('th', { scope: 'row', class: 'axis' }, name),
    ...groups.map(({ name: text, span }) =>
      h('th', { scope: 'colgroup', colSpan: span, class: 'starts' }, text),
    ),
  ]);
}

/** True for the first column of a seats row. */
function startsGroup(index: number, seats: readonly ColumnGroup[]): boolean {
  let start = 0;
  for (const { span } of seats) {
    if (start === index) return true;
    start += span;
  }
  return false;
}

function cellOf({ verdict, note }: MatrixCell, starts: boolean): Element {
  const name = verdict.replace(' ', '-');
  return h('td', { class: `${name}${starts ? ' starts' : ''}` }, [
    verdictShape(verdict),
    h('span', { class: 'word' }, [verdict, ...(note === null ? [] : [h('b', ` ${letterOf(note)}`)])]),
  ]);
}

/** As an ordered list of `type=a` counts: `a` to `z`, then `aa`. Numbers are those of the findings. */
export function letterOf(number: number): string {
  const rest = (number - 1) % 26;
  const before = (number - 1 - rest) / 26;
  return `${before === 0 ? '' : letterOf(before)}${String.fromCharCode(97 + rest)}`;
}

function explanationItem({ number, verdict, text }: Explanation): Element {
  return h('li', { value: number }, [verdictShape(verdict), ' ', text]);
}
