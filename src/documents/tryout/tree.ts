import type { Element, ElementContent } from 'hast';
import type { Finding } from '../../findings/finding.js';
import type { Controller } from '../../hardware/controllers.js';
import { PORTS, type Port } from '../../hardware/ports.js';
import type { Scheme } from '../../language/model.js';
import { type Drawing, picture } from '../figures/drawing.js';
import { h } from '../page/elements.js';
import type { Phrases } from '../phrases.js';
import { panelWords } from '../wording/machine.js';
import { drawLiveController } from './live-controller.js';
import { drawLivePanel, NARROW_PANEL, WIDE_PANEL } from './live-panel.js';

type Say = Phrases['say'];

/** The page before it is switched on; `src/tryout` finds its parts by their `data-` names and fills them. */
export function tryoutTree(
  scheme: Scheme,
  findings: readonly Finding[],
  phrases: Phrases,
): readonly ElementContent[] {
  const { say } = phrases;
  return [
    h('header', { class: 'head' }, [
      h('div', [
        h('p', { class: 'kind' }, say('try name')),
        h('h1', { lang: scheme.game.language.value }, scheme.title.value),
      ]),
      choicesTree(scheme, phrases),
    ]),
    h('noscript', h('p', { class: 'message' }, say('try script'))),
    answerTree('message'),
    h('main', [
      stateTree(scheme.game.language.value),
      h('div', { class: 'machine' }, [
        panelTree(scheme, phrases),
        h('div', { class: 'ports' }, ...PORTS.map(port => portTree(scheme, port, say))),
        answerTree('standing'),
        h('p', { class: 'hint', dataPart: 'pads' }),
        h('p', { class: 'last', dataPart: 'last', ariaHidden: 'true' }),
        firesTree(say),
      ]),
      h('div', { class: 'screen' }, [offersTree(say), sessionTree(say), ...findingsTree(findings, phrases)]),
      registersTree(scheme, say),
    ]),
    footTree(say),
  ];
}

/** Where the program says something; empty until then. */
const answerTree = (part: string): Element => h('p', { class: 'message', dataPart: part, role: 'status' });

function choicesTree(scheme: Scheme, phrases: Phrases): Element {
  const { say } = phrases;
  return h('div', { class: 'choices', dataPart: 'choices' }, [
    choice(
      say('try console'),
      'console',
      scheme.consoles.map(({ name }) => ({ name: panelWords(name, phrases) })),
    ),
    choice(say('try seats'), 'seats', scheme.seats),
    choice(say('try standard'), 'standard', scheme.standards),
    h('button', { type: 'button', dataDo: 'power' }, say('try power')),
  ]);
}

function choice(words: string, name: string, options: readonly { readonly name: string }[]): Element {
  return h('label', [
    h('span', words),
    h(
      'select',
      { name },
      ...options.map((option, index) => h('option', { value: String(index) }, option.name)),
    ),
  ]);
}

/** Of each console’s two drawings the styles show the one for which there is room. */
const LAYOUTS = [
  ['wide', WIDE_PANEL],
  ['narrow', NARROW_PANEL],
] as const;

function panelTree({ consoles }: Scheme, phrases: Phrases): Element {
  return h('section', { class: 'panel', ariaLabelledBy: 'panel-title' }, [
    h('h2', { id: 'panel-title' }, phrases.say('try panel')),
    ...consoles.flatMap((profile, index) =>
      LAYOUTS.map(([name, layout]) =>
        drawingTree(drawLivePanel(profile, phrases, layout), { dataConsole: String(index) }, name),
      ),
    ),
    h('div', { class: 'keys', dataKeys: 'panel' }),
  ]);
}

function portTree({ seats }: Scheme, port: Port, say: Say): Element {
  return h('section', { class: 'port', ariaLabelledBy: `${port}-title` }, [
    h('h2', { id: `${port}-title`, dataTitle: port }, say(`port ${port}`)),
    ...seats.map((row, index) => {
      const controller = row[port];
      const own = { dataSeats: String(index) };
      return controller === null
        ? h('p', { class: 'empty', ...own, hidden: true }, say('try nothing plugged'))
        : drawingTree(drawLiveController(controller, port), own);
    }),
    h('div', { class: 'keys', dataKeys: port }),
  ]);
}

/** For the eye and the pointer; whoever can use neither has the buttons below it. */
function drawingTree(drawing: Drawing, properties: Record<string, string>, name = ''): Element {
  const svg = picture(drawing, '');
  const { width, height, viewBox } = svg.properties;
  return h(
    'div',
    { class: ['art', ...(name === '' ? [] : [name])], ...properties, hidden: true },
    {
      ...svg,
      properties: {
        className: ['drawing', 'live'],
        viewBox,
        style: `--wide:${width};--high:${height}`,
        ariaHidden: 'true',
      },
    },
  );
}

/** @param language of the scheme’s own words */
function stateTree(language: string): Element {
  return h('section', { class: 'state', ariaLabelledBy: 'mode-title' }, [
    h('h2', { id: 'mode-title' }, [
      h('span', { class: 'kind', dataPart: 'mode-kind' }),
      ' ',
      h('span', { dataPart: 'mode', ariaLive: 'polite', lang: language }),
    ]),
    h('dl', { class: 'settings', dataPart: 'settings' }),
  ]);
}

function offersTree(say: Say): Element {
  return h('section', { class: 'offers', ariaLabelledBy: 'offers-title' }, [
    h('h2', { id: 'offers-title' }, say('try offers')),
    h('div', { dataPart: 'offers' }),
  ]);
}

function firesTree(say: Say): Element {
  return h('section', { class: 'fires', ariaLabelledBy: 'fires-title' }, [
    h('h2', { id: 'fires-title' }, say('try fires')),
    h('ol', { dataPart: 'fires', dataEmpty: say('try nothing'), tabIndex: 0, ariaLabelledBy: 'fires-title' }),
  ]);
}

const isKeypad = (controller: Controller | null): boolean =>
  controller?.controls.some(({ wiring }) => wiring.kind === 'matrix') ?? false;

function registersTree({ seats }: Scheme, say: Say): Element {
  const hasKeypads = seats.some(row => PORTS.some(port => isKeypad(row[port])));
  const scroller = (words: string, table: Element) =>
    h('div', { class: 'scrolls', tabIndex: 0, role: 'region', ariaLabel: words }, table);
  return h('section', { class: 'registers', ariaLabelledBy: 'registers-title' }, [
    h('h2', { id: 'registers-title' }, say('try registers')),
    scroller(say('try bit by bit'), h('table', { dataPart: 'registers' })),
    scroller(say('try keypads'), h('table', { class: 'keypads', dataPart: 'keypads' })),
    h('p', { class: 'hint' }, hasKeypads ? `${say('try bits')} ${say('try corners')}` : say('try bits')),
  ]);
}

const SPEEDS = [
  ['1', 'try speed full'],
  ['0.25', 'try speed quarter'],
  ['0.1', 'try speed tenth'],
  ['0', 'try speed none'],
] as const;

function sessionTree(say: Say): Element {
  const button = (name: string, words: string) => h('button', { type: 'button', dataDo: name }, words);
  return h('section', { class: 'session', ariaLabelledBy: 'session-title' }, [
    h('h2', { id: 'session-title' }, say('try session')),
    h('p', { dataPart: 'session' }),
    h('p', { class: 'row' }, [
      h('label', [
        h('span', say('try speed')),
        h('select', { name: 'speed' }, ...SPEEDS.map(([value, key]) => h('option', { value }, say(key)))),
      ]),
      button('step', say('try one read')),
    ]),
    h('p', { class: 'row' }, [
      button('replay', say('try replay')),
      button('save', say('try save')),
      h('label', { class: 'file' }, [
        h('span', say('try open')),
        h('input', { type: 'file', name: 'trace', accept: '.jsonl,.json,.csv,.txt' }),
      ]),
    ]),
    answerTree('answer'),
  ]);
}

/** Of the findings those that presses can show, in the order of the report. */
function findingsTree(findings: readonly Finding[], { say }: Phrases): readonly Element[] {
  const shown = findings.filter(({ witness }) => witness !== undefined);
  if (shown.length === 0) return [];
  return [
    h('section', { class: 'findings', ariaLabelledBy: 'findings-title' }, [
      h('h2', { id: 'findings-title' }, say('try findings')),
      h(
        'ul',
        ...shown.map(({ rule, severity, message }, index) =>
          h('li', [
            h('p', { id: `finding-${index}`, lang: 'en' }, [h('small', `${severity} ${rule}`), ' ', message]),
            h(
              'button',
              {
                type: 'button',
                id: `show-${index}`,
                dataShow: String(index),
                ariaLabelledBy: `show-${index} finding-${index}`,
              },
              say('try show'),
            ),
          ]),
        ),
      ),
      answerTree('unshown'),
    ]),
  ];
}

function footTree(say: Say): Element {
  return h('footer', [
    h('p', say('try hands')),
    h('p', `${say('caution hands')} ${say('caution flashes')} ${say('caution rules')}`),
  ]);
}
