import type { Element, ElementContent } from 'hast';
import type { DocumentInput, PrintableDocument } from '../document.js';
import { h, SCROLLS, table } from '../page/elements.js';
import { readFurniture, sheetPageRules } from '../page/furniture.js';
import { writePage } from '../page/shell.js';
import { readStyles, readTemplate } from '../page/templates.js';
import { type BitsView, type RoutineFacts, viewBits } from './view.js';
import { gestureSection, howToRead } from './write-legend.js';
import { modeSection, seatsText } from './write-mode.js';
import { procedureSection } from './write-procedure.js';
import { ramSection } from './write-ram.js';
import { seatsSection } from './write-seats.js';
import { consoleSection, setupSection, sourcesSection } from './write-tables.js';

const TITLE = 'Bit-level appendix';

/** The bit-level appendix: all that a programmer must know to read this scheme's inputs. */
export function createBits(input: DocumentInput, routine?: RoutineFacts): PrintableDocument {
  const { scheme, templates } = input;
  const view = viewBits(scheme, routine);
  const facts = { title: view.title, version: view.version, document: TITLE };
  const furniture = readFurniture(templates);
  const html = writePage({
    title: `${view.title}: ${TITLE}`,
    language: 'en',
    kind: 'bits',
    styles: [
      readStyles(templates, ['base', 'sheets']),
      readTemplate(templates, ['styles', 'bits.css']),
      sheetPageRules(scheme.game.sheetPaper, furniture, facts),
    ],
    body: [h('main', [...writeBody(view)])],
    extraText: view.version,
  });
  return {
    name: 'bits',
    html,
    title: `${view.title}: ${TITLE}`,
    subject: 'Registers, bits, masks and tests of every control',
    language: 'en',
  };
}

/** The appendix as HTML. */
export function writeBits(input: DocumentInput, routine?: RoutineFacts): string {
  return createBits(input, routine).html;
}

interface Section {
  readonly id: string;
  readonly title: string;
  readonly content: readonly ElementContent[];
  /** Entries of the contents beneath it. */
  readonly parts: readonly { readonly id: string; readonly title: string }[];
}

function writeBody(view: BitsView): readonly Element[] {
  const sections = listSections(view);
  return [
    h('header', { class: 'sheet-title' }, [
      h('p', { class: 'kicker' }, TITLE),
      h('h1', view.title),
      ...(view.version === '' ? [] : [h('p', { class: 'version' }, `Version ${view.version}`)]),
    ]),
    factsList(view),
    standardsTable(view),
    contents(sections),
    ...sections.map(({ id, title, content }, index) =>
      h('section', { id, class: 'chapter', ...SCROLLS }, [h('h2', `${index + 1}  ${title}`), ...content]),
    ),
  ];
}

function listSections(view: BitsView): readonly Section[] {
  const modes = view.modes.map((table, index) => ({
    id: `mode-${index + 1}`,
    title: `${table.mode.name}, ${seatsText(table)}`,
  }));
  const seats = view.seats.map(({ row }, index) => ({ id: `seats-${index + 1}`, title: row.name }));
  const all: readonly Section[] = [
    {
      id: 'reading',
      title: 'How to read the tables',
      content: [...howToRead(), gestureSection(view)],
      parts: [],
    },
    {
      id: 'seats',
      title: 'Ports and registers',
      content: view.seats.flatMap((row, index) => seatsSection(row, `seats-${index + 1}`)),
      parts: seats,
    },
    { id: 'setup', title: 'Data direction and VBLANK', content: setupSection(view), parts: [] },
    {
      id: 'modes',
      title: 'Modes',
      content: view.modes.map((table, index) => modeSection(table, `mode-${index + 1}`)),
      parts: modes,
    },
    { id: 'consoles', title: 'Consoles and settings', content: consoleSection(view), parts: [] },
    {
      id: 'procedures',
      title: 'Reading procedures',
      content: view.procedures.flatMap(procedureSection),
      parts: [],
    },
    { id: 'ram', title: 'State in RAM', content: ramSection(view), parts: [] },
    {
      id: 'vectors',
      title: 'Acceptance vectors',
      content: view.vectorsGuide.map(text => h('p', text)),
      parts: [],
    },
    { id: 'sources', title: 'Sources and cautions', content: sourcesSection(view), parts: [] },
  ];
  return all.filter(({ content }) => content.length > 0);
}

function factsList({ facts }: BitsView): Element {
  return h(
    'dl',
    { class: 'facts' },
    facts.flatMap(([name, value]) => [h('div', [h('dt', name), h('dd', value)])]),
  );
}

function standardsTable({ standards }: BitsView): Element {
  return table({
    className: 'standards',
    caption: 'Time',
    captionHidden: true,
    head: [
      'Standard',
      'CPU clock',
      'Lines in a frame',
      'Frames',
      'From read to read',
      'CPU cycles in a read',
    ],
    rows: standards.map(row => [
      row.name,
      row.cpuClock,
      row.lines,
      row.frameRate,
      row.readPeriod,
      row.cyclesPerRead,
    ]),
  });
}

function contents(sections: readonly Section[]): Element {
  return h('nav', { class: 'contents', 'aria-label': 'Contents' }, [
    h(
      'ol',
      sections.map(({ id, title, parts }) =>
        h('li', [
          h('a', { href: `#${id}` }, title),
          ...(parts.length === 0
            ? []
            : [
                h(
                  'span',
                  { class: 'parts' },
                  parts.flatMap((part, index) => [
                    index === 0 ? ' ' : ' · ',
                    h('a', { href: `#${part.id}` }, part.title),
                  ]),
                ),
              ]),
        ]),
      ),
    ),
  ]);
}
