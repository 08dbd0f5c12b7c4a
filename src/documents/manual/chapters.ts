import type { Element, ElementContent } from 'hast';
import { picture } from '../figures/drawing.js';
import { drawPanel } from '../figures/panel.js';
import { drawSeating } from '../figures/seating.js';
import { box, figure, h, table } from '../page/elements.js';
import { proseTree } from '../page/prose.js';
import type { Phrases } from '../phrases.js';
import type { ConsoleView } from './console.js';
import type { ModeGroup, ModeRow, ModeView } from './modes.js';
import type { NeedsView } from './needs.js';
import type { SettingsView } from './settings.js';
import type { Goal, StartView } from './start.js';

/** Two drawings side by side leave this much between them, mm. */
const PAIR_GAP = 6;

export function needsTree(
  { intro, rows, notes, before }: NeedsView,
  width: number,
  phrases: Phrases,
): readonly ElementContent[] {
  const half = (width - PAIR_GAP) / 2;
  return [
    h('p', { class: 'lead' }, intro),
    table({
      className: 'seats',
      captionHidden: true,
      caption: phrases.say('section needs'),
      head: [
        phrases.say('column seats'),
        phrases.say('column players'),
        phrases.say('column left port'),
        phrases.say('column right port'),
      ],
      rows: rows.map(({ seats, players, who, left, right }) => [
        seats,
        [players, ...who.map(line => h('div', { class: 'note' }, line))],
        left,
        right,
      ]),
    }),
    h(
      'div',
      { class: 'pair' },
      ...rows.map(({ figure: view }) =>
        figure(picture(drawSeating(view, half), view.text), view.caption, 'seating'),
      ),
    ),
    h('p', { class: 'before' }, h('strong', before)),
    ...notes.map(note => h('p', { class: 'note' }, note)),
  ];
}

export function consoleTree(view: ConsoleView, width: number): readonly ElementContent[] {
  const half = (width - PAIR_GAP) / 2;
  const panels = view.panels.map(panel =>
    figure(picture(drawPanel(panel, half), panel.text), panel.caption, 'panel'),
  );
  const figures =
    view.calls.length === 0
      ? []
      : [h('div', { class: 'whole-panels' }, h('div', { class: 'pair' }, ...panels), callList(view))];
  return [
    h('div', { class: 'whole-console' }, [
      h('p', { class: 'lead' }, view.intro),
      ...figures,
      ...view.rearNotes.map(note => h('p', note)),
      ...view.boxes.map(({ title, lines }) => box(title, [h('ul', ...lines.map(line => h('li', line)))])),
    ]),
  ];
}

function callList({ calls }: ConsoleView): Element {
  return h(
    'ol',
    { class: 'calls' },
    ...calls.map(({ label, lines }) => h('li', [h('strong', label), ...lines.map(line => h('div', line))])),
  );
}

export function modeTree(
  { name, kind, prose, notes, groups }: ModeView,
  phrases: Phrases,
  id: string,
): readonly ElementContent[] {
  const done = groups.filter(({ rows }) => rows.some(({ how }) => how.length > 0));
  return [
    h('h3', { id }, [name, ' ', h('span', { class: 'kind' }, kind)]),
    ...(prose.length === 0 ? [] : [h('div', { class: 'mode-prose' }, ...proseTree(prose, 1))]),
    ...notes.map(note => h('p', { class: 'note lead' }, note)),
    ...(done.length === 0 ? [] : [groupsTable(name, done, phrases)]),
    ...groups.filter(group => !done.includes(group)).map(byItself),
  ];
}

/** One table for the mode; each group of rows is headed by who does them. */
function groupsTable(name: string, groups: readonly ModeGroup[], phrases: Phrases): Element {
  return h('table', { class: 'mode' }, [
    h('caption', { class: 'read-only' }, name),
    h(
      'thead',
      h('tr', [
        h('th', { scope: 'col' }, phrases.say('column do')),
        h('th', { scope: 'col' }, phrases.say('column happens')),
      ]),
    ),
    ...groups.map(({ who, rows }) =>
      h('tbody', [
        h('tr', { class: 'who' }, h('th', { scope: 'rowgroup', colSpan: 2 }, who)),
        ...rows.map(row =>
          h('tr', [h('th', { scope: 'row' }, ...ways(row, phrases)), h('td', ...happens(row))]),
        ),
      ]),
    ),
  ]);
}

/** What the game does by itself. */
function byItself({ who, rows }: ModeGroup): Element {
  return h('div', { class: 'by-itself' }, [
    h('p', { class: 'who' }, who),
    h('ul', ...rows.map(row => h('li', ...happens(row)))),
  ]);
}

/** The ways to do it, `or` between them. */
function ways({ how }: ModeRow, phrases: Phrases): readonly ElementContent[] {
  return how.map((sentence, index) =>
    h('div', index === 0 ? [sentence] : [h('span', { class: 'or' }, phrases.say('or')), ' ', sentence]),
  );
}

function happens({ words, notes }: ModeRow): readonly ElementContent[] {
  return [h('div', words), ...(notes.length === 0 ? [] : [h('div', { class: 'note' }, notes.join(' '))])];
}

export function startTree({ intro, modes, games }: StartView, phrases: Phrases): readonly ElementContent[] {
  return [
    h('p', { class: 'lead' }, intro),
    goalTable(modes, 'section start', phrases),
    ...(games.length === 0 ? [] : [h('h3', phrases.say('games')), goalTable(games, 'games', phrases)]),
  ];
}

function goalTable(goals: readonly Goal[], caption: 'section start' | 'games', phrases: Phrases): Element {
  return table({
    className: caption === 'games' ? 'goals told' : 'goals',
    caption: phrases.say(caption),
    captionHidden: true,
    head: [phrases.say('column goal'), phrases.say('column steps')],
    rows: goals.map(({ name, words, values, seats, ways: each }) => [
      [
        name,
        ...(words === '' ? [] : [' ', h('span', { class: 'what' }, words)]),
        ...[values.join(', '), seats].filter(Boolean).map(note => h('div', { class: 'note' }, note)),
      ],
      each.flatMap(({ where, steps }) => [
        ...(where === '' ? [] : [h('p', { class: 'note way' }, where)]),
        steps.length === 1
          ? h('div', ...steps)
          : h('ol', { class: 'steps' }, ...steps.map(step => h('li', step))),
      ]),
    ]),
  });
}

export function settingsTree({ settings, games }: SettingsView, phrases: Phrases): readonly ElementContent[] {
  const settingsTable = table({
    className: 'settings',
    caption: phrases.say('section settings'),
    captionHidden: true,
    head: [
      phrases.say('column setting'),
      phrases.say('column values'),
      phrases.say('column start'),
      phrases.say('column changed'),
    ],
    rows: settings.map(({ name, values, startsAs, how }) => [
      name,
      values,
      startsAs,
      how.map(line => h('div', line)),
    ]),
  });
  const forSome = games.some(({ seats }) => seats !== '');
  const gamesTable = table({
    className: 'games',
    caption: phrases.say('games'),
    captionHidden: true,
    head: [
      phrases.say('column game'),
      phrases.say('column what'),
      ...(forSome ? [phrases.say('column for')] : []),
      phrases.say('column game settings'),
    ],
    rows: games.map(({ name, words, seats, values }) => [
      name,
      words,
      ...(forSome ? [seats] : []),
      values.join(', '),
    ]),
  });
  return [
    ...(settings.length === 0 ? [] : [settingsTable]),
    ...(games.length === 0 ? [] : [h('h3', phrases.say('games')), gamesTable]),
  ];
}

export function cautionsTree(cautions: readonly string[]): readonly ElementContent[] {
  return [h('ul', { class: 'cautions' }, ...cautions.map(caution => h('li', caution)))];
}
