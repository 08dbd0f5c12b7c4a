import type { Element, ElementContent } from 'hast';
import type { Finding } from '../../findings/finding.js';
import { PORTS, type Port } from '../../hardware/ports.js';
import type { Scheme } from '../../language/model.js';
import { type Drawing, picture } from '../figures/drawing.js';
import { h } from '../page/elements.js';
import { drawLiveController } from './live-controller.js';
import { drawLivePanel } from './live-panel.js';

/** The page before it is switched on; `src/tryout` finds its parts by their `data-` names and fills them. */
export function tryoutTree(scheme: Scheme, findings: readonly Finding[]): readonly ElementContent[] {
  return [
    h('header', { class: 'head' }, [
      h('div', [
        h('p', { class: 'kind' }, 'Try-out page'),
        h('h1', { lang: scheme.game.language.value }, scheme.title.value),
      ]),
      choicesTree(scheme),
    ]),
    h('noscript', h('p', { class: 'message' }, 'This page needs JavaScript to play the scheme.')),
    h('p', { class: 'message', dataPart: 'message', role: 'status', hidden: true }),
    h('main', [
      stateTree(scheme.game.language.value),
      h('div', { class: 'machine' }, [
        panelTree(scheme),
        h('div', { class: 'ports' }, ...PORTS.map(port => portTree(scheme, port))),
        h('p', { class: 'hint', dataPart: 'pads' }),
        firesTree(),
      ]),
      h('div', { class: 'screen' }, [offersTree(), sessionTree(), ...findingsTree(findings)]),
      registersTree(),
    ]),
    footTree(),
  ];
}

function choicesTree(scheme: Scheme): Element {
  return h('div', { class: 'choices', dataPart: 'choices' }, [
    choice('Console', 'console', scheme.consoles),
    choice('Seats', 'seats', scheme.seats),
    choice('TV standard', 'standard', scheme.standards),
    h('button', { type: 'button', dataDo: 'power' }, 'Switch off and on'),
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

function panelTree({ consoles }: Scheme): Element {
  return h('section', { class: 'panel', ariaLabelledBy: 'panel-title' }, [
    h('h2', { id: 'panel-title' }, 'Panel'),
    ...consoles.map((profile, index) => drawingTree(drawLivePanel(profile), { dataConsole: String(index) })),
    h('div', { class: 'keys', dataKeys: 'panel' }),
  ]);
}

function portTree({ seats }: Scheme, port: Port): Element {
  return h('section', { class: 'port', ariaLabelledBy: `${port}-title` }, [
    h('h2', { id: `${port}-title`, dataTitle: port }, `${port} port`),
    ...seats.map((row, index) => {
      const controller = row[port];
      const own = { dataSeats: String(index) };
      return controller === null
        ? h('p', { class: 'empty', ...own, hidden: true }, 'Nothing is plugged in.')
        : drawingTree(drawLiveController(controller, port), own);
    }),
    h('div', { class: 'keys', dataKeys: port }),
  ]);
}

/** For the eye and the pointer; whoever can use neither has the buttons below it. */
function drawingTree(drawing: Drawing, properties: Record<string, string>): Element {
  const svg = picture(drawing, '');
  const { width, height, viewBox } = svg.properties;
  return h(
    'div',
    { class: 'art', ...properties, hidden: true },
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

function offersTree(): Element {
  return h('section', { class: 'offers', ariaLabelledBy: 'offers-title' }, [
    h('h2', { id: 'offers-title' }, 'What can be done here'),
    h('div', { dataPart: 'offers' }),
  ]);
}

function firesTree(): Element {
  return h('section', { class: 'fires', ariaLabelledBy: 'fires-title' }, [
    h('h2', { id: 'fires-title' }, 'What fires'),
    h('ol', { dataPart: 'fires', tabIndex: 0, ariaLabelledBy: 'fires-title' }),
  ]);
}

function registersTree(): Element {
  return h('section', { class: 'registers', ariaLabelledBy: 'registers-title' }, [
    h('h2', { id: 'registers-title' }, 'Registers'),
    h('div', { class: 'scrolls', tabIndex: 0 }, h('table', { dataPart: 'registers' })),
    h('div', { class: 'scrolls', tabIndex: 0 }, h('table', { class: 'keypads', dataPart: 'keypads' })),
    h('p', { class: 'hint' }, [
      'A bit with a thick frame is engaged. ',
      'Bits that nothing is wired to are pale: mask them out.',
    ]),
  ]);
}

const SPEEDS = [
  ['1', 'full speed'],
  ['0.25', 'a quarter'],
  ['0.1', 'a tenth'],
  ['0', 'stopped'],
] as const;

function sessionTree(): Element {
  const button = (name: string, words: string) => h('button', { type: 'button', dataDo: name }, words);
  return h('section', { class: 'session', ariaLabelledBy: 'session-title' }, [
    h('h2', { id: 'session-title' }, 'Session'),
    h('p', { dataPart: 'session' }),
    h('p', { class: 'row' }, [
      h('label', [
        h('span', 'Speed'),
        h('select', { name: 'speed' }, ...SPEEDS.map(([value, words]) => h('option', { value }, words))),
      ]),
      button('step', 'One read'),
    ]),
    h('p', { class: 'row' }, [
      button('replay', 'Replay from power-on'),
      button('save', 'Save as a trace'),
      h('label', { class: 'file' }, [
        h('span', 'Open a trace'),
        h('input', { type: 'file', name: 'trace', accept: '.jsonl,.json,.csv,.txt' }),
      ]),
    ]),
  ]);
}

/** Of the findings those that presses can show, in the order of the report. */
function findingsTree(findings: readonly Finding[]): readonly Element[] {
  const shown = findings.filter(({ witness }) => witness !== undefined);
  if (shown.length === 0) return [];
  return [
    h('section', { class: 'findings', ariaLabelledBy: 'findings-title' }, [
      h('h2', { id: 'findings-title' }, 'Findings to see'),
      h(
        'ul',
        ...shown.map(({ rule, severity, message }, index) =>
          h('li', [
            h('p', [h('small', `${severity} ${rule}`), ' ', message]),
            h('button', { type: 'button', dataShow: String(index), ariaLabel: `Show: ${message}` }, 'Show'),
          ]),
        ),
      ),
    ]),
  ];
}

function footTree(): Element {
  return h('footer', [
    h(
      'p',
      'A press is read as hands can make it: at each read at most one more control becomes engaged, and one that is let go again at once counts as 50 ms long. Two that can’t be pressed together give the later one.',
    ),
    h(
      'p',
      'Rest your hands now and then, and stop when holding or pressing hurts. If flashing pictures have ever made you unwell, ask a doctor before you play.',
    ),
  ]);
}
