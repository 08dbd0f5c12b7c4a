import type { Element } from 'hast';
import { h, SCROLLS } from '../page/elements.js';
import type { ActionLines, BindingLine, ModeTable, TestCells } from './mode-view.js';
import type { WireCells } from './wire-cells.js';

const HEAD = [
  'Action',
  'Player',
  'Control',
  'Register',
  'Bit',
  'Mask',
  'Engaged',
  'Gesture',
  'Test',
  'Cycles',
  'Bytes',
];

/** `Solo, Duet`. */
export function seatsText({ seats }: ModeTable): string {
  return seats.map(({ name }) => name).join(', ');
}

/** One mode in one seats row: the table of its bindings, why the tests are as they are, and what they cost. */
export function modeSection(view: ModeTable, id: string): Element {
  return h('section', { id, class: isShort(view) ? 'mode short' : 'mode', ...SCROLLS }, [
    h('h3', [`${view.mode.name} `, h('span', { class: 'of' }, `${view.mode.kind} · ${seatsText(view)}`)]),
    view.actions.length === 0 ? h('p', 'Nothing is read in this mode.') : bindingTable(view),
    ...view.cautions.map(text => h('p', { class: 'caution' }, text)),
    ...byItself(view),
    ...reasons(view),
    ...costs(view),
  ]);
}

/** A table that is kept on one page where it can be. */
const MOST_SHORT_LINES = 6;

const isShort = ({ actions }: ModeTable): boolean =>
  actions.reduce((sum, { lines }) => sum + lines.length, 0) <= MOST_SHORT_LINES;

function bindingTable(view: ModeTable): Element {
  return h('table', { class: 'bindings' }, [
    h('caption', { class: 'read-only' }, `Bindings of ${view.mode.name}, ${seatsText(view)}`),
    h(
      'colgroup',
      HEAD.map(name => h('col', { class: `c-${name.toLowerCase()}` })),
    ),
    h(
      'thead',
      h(
        'tr',
        HEAD.map(name => h('th', { scope: 'col' }, name)),
      ),
    ),
    ...view.actions.map(actionBody),
  ]);
}

function actionBody(action: ActionLines): Element {
  const rows = action.lines.flatMap(lineRows);
  return h(
    'tbody',
    rows.map((cells, index) =>
      h('tr', [...(index === 0 ? [actionCell(action, rows.length)] : []), ...cells]),
    ),
  );
}

function actionCell({ action, notes }: ActionLines, rows: number): Element {
  return h('th', { scope: 'rowgroup', rowSpan: rows }, [
    action,
    ...notes.map(note => h('span', { class: 'sub' }, note)),
  ]);
}

/** The cells of one way to do an action: a row for each control of its chord. */
function lineRows({
  player,
  notes,
  wires,
  gesture,
  reads,
  test,
}: BindingLine): readonly (readonly Element[])[] {
  const spanning = { rowSpan: wires.length };
  const before = [h('td', spanning, player)];
  const after = [
    h('td', spanning, [gesture, ...reads.map(text => h('span', { class: 'sub' }, text))]),
    h('td', spanning, h('code', { class: 'listing' }, test.code.join('\n'))),
    h('td', { ...spanning, class: 'number' }, cyclesText(test)),
    h('td', { ...spanning, class: 'number' }, String(test.bytes)),
  ];
  return wires.map((wire, index) => {
    const own = wireRow(wire, index > 0, index === wires.length - 1 ? notes : []);
    return index === 0 ? [...before, ...own, ...after] : own;
  });
}

/** @param isMore whether it is one of the further controls of a chord */
function wireRow(wire: WireCells, isMore: boolean, notes: readonly string[]): readonly Element[] {
  const cell = (...content: readonly (Element | string)[]) =>
    h('td', isMore ? { class: 'more' } : {}, ...content);
  return [
    cell(
      `${isMore ? '+ ' : ''}${wire.control}`,
      ...[...(wire.before === null ? [] : [wire.before]), ...notes].map(note =>
        h('span', { class: 'sub' }, note),
      ),
    ),
    cell(h('code', wire.register), h('code', { class: 'sub' }, wire.address)),
    cell(h('code', wire.bit)),
    cell(h('code', wire.mask)),
    cell(h('code', { class: 'level' }, wire.engagedReads)),
  ];
}

function cyclesText({ engagedCycles, idleCycles }: TestCells): string {
  const { least, most } = idleCycles;
  return `${engagedCycles} / ${least === most ? least : `${least}–${most}`}`;
}

function byItself({ byItself: rows }: ModeTable): readonly Element[] {
  return rows.map(({ action, notes }) =>
    h('p', { class: 'note' }, [
      h('strong', 'By the game itself: '),
      `${[action, ...notes].join('. ')}. Nothing is read for it.`,
    ]),
  );
}

function reasons({ polarity }: ModeTable): readonly Element[] {
  return polarity.length === 0
    ? []
    : [h('p', { class: 'note' }, [h('strong', 'Polarity: '), polarity.join(' ')])];
}

function costs({ cost, routine, actions }: ModeTable): readonly Element[] {
  if (actions.length === 0) return [];
  const own = `${cost.tests} different tests: at most ${cost.cycles} cycles and ${cost.bytes} bytes together, gestures not counted.`;
  const generated =
    routine === null
      ? ''
      : ` The generated reading routine takes at most ${routine.cycles} cycles a read and ${routine.bytes} bytes for this mode.`;
  return [h('p', { class: 'note' }, [h('strong', 'Cost: '), own + generated])];
}
