import type { Element, ElementContent } from 'hast';
import type { DocumentInput, PrintableDocument } from '../document.js';
import { shorten } from '../figures/text-block.js';
import { h } from '../page/elements.js';
import { manualMargins, manualPageRules, readFurniture } from '../page/furniture.js';
import { keepTogether } from '../page/keep-together.js';
import { papers } from '../page/paper.js';
import { proseTree } from '../page/prose.js';
import { writePage } from '../page/shell.js';
import { readStyles } from '../page/templates.js';
import type { Phrases } from '../phrases.js';
import type { Speech } from '../wording/gestures.js';
import { type Chapter, chapterTree } from './chapter.js';
import { cautionsTree, consoleTree, modeTree, needsTree, settingsTree, startTree } from './chapters.js';
import { contentsTree, fillContents } from './contents.js';
import { controllerTree } from './controllers-tree.js';
import { coverArt, coverText, coverTree } from './cover.js';
import { quickTree } from './quick-tree.js';
import { type ManualView, speechFor, viewManual } from './view.js';

/** The manual as a document to read and to print. */
export function createManual(input: DocumentInput): PrintableDocument {
  const { scheme, templates } = input;
  const speech = speechFor(input);
  const view = viewManual(input, speech);
  const paper = scheme.game.manualPage;
  const area = textArea(paper);
  const furniture = readFurniture(templates);
  const chapters = listChapters(view, area, speech);
  const controllers = view.controllers.map(({ controller }) => controller);
  const publisher = furniture.get('Publisher') ?? '';
  const cover = coverTree(
    view,
    publisher,
    coverArt(controllers, area, coverText(view, chapters.length, area.width)),
    contentsTree(chapters, speech.phrases),
  );
  const head = { sizePt: 8 } as const;
  const facts = {
    title: shorten(view.title, area.width * 0.9, head),
    version: view.version,
    document: view.name,
  };
  const html = writePage({
    title: `${view.title}: ${view.name}`,
    language: speech.phrases.language,
    kind: 'manual',
    styles: [
      readStyles(templates, ['base', 'drawings', 'manual']),
      `:root{--page-width:${area.width}mm;--page-height:${area.height}mm}`,
      manualPageRules(paper, furniture, facts),
    ],
    body: keepTogether([cover, h('main', ...chapters.map(chapterTree))]),
    extraText: `${view.title}${view.version}${view.name}`,
  });
  return {
    name: 'manual',
    html,
    revise: ({ pages, count }) => fillContents(html, pages, count),
    title: `${view.title}: ${view.name}`,
    subject: view.name,
    language: speech.phrases.language,
  };
}

interface Area {
  readonly width: number;
  readonly height: number;
}

/** The text area of a page, mm. */
function textArea(paper: keyof typeof manualMargins): Area {
  const { inner, outer, top, foot } = manualMargins[paper];
  const { widthMm, heightMm } = papers[paper];
  return { width: widthMm - inner - outer, height: heightMm - top - foot };
}

type Draft = Omit<Chapter, 'number'>;

/** The chapters that have something to say, numbered. */
function listChapters(view: ManualView, area: Area, speech: Speech): readonly Chapter[] {
  const { phrases } = speech;
  const drafts: readonly Draft[] = [
    ...machineChapters(view, area, speech),
    ...gameChapters(view, phrases),
    ...view.chapters.map(({ title, content }, index) => ({
      id: `chapter-${index + 1}`,
      title,
      content: proseTree(content, 0),
    })),
    { id: 'cautions', title: phrases.say('section cautions'), content: cautionsTree(view.cautions) },
    {
      id: 'quick',
      title: phrases.say('section quick'),
      // The heading and the note that something is left out take their part of the page.
      content: quickTree(view.quick, { width: area.width, height: area.height - 22 }, phrases),
      className: 'quick-page',
    },
  ];
  return drafts.map((draft, index) => ({ ...draft, number: index + 1 }));
}

/** What to plug in, where the switches are, what the controllers do. */
function machineChapters(view: ManualView, area: Area, speech: Speech): readonly Draft[] {
  const { phrases } = speech;
  return [
    {
      id: 'needs',
      title: phrases.say('section needs'),
      content: needsTree(view.needs, area.width, phrases),
    },
    {
      id: 'console',
      title: phrases.say('section console'),
      content: consoleTree(view.console, area.width),
    },
    {
      id: 'controllers',
      title: phrases.say('section controllers'),
      content: controllersContent(view, area, speech),
    },
  ];
}

/** The modes, how to reach them, and the settings. */
function gameChapters({ modes, start, settings }: ManualView, phrases: Phrases): readonly Draft[] {
  const hasGames = settings.games.length > 0;
  const hasSettings = settings.settings.length > 0 || hasGames;
  const settingsTitle = phrases.say(hasGames ? 'section settings and games' : 'section settings');
  return [
    {
      id: 'modes',
      title: phrases.say('section modes'),
      content: modes.flatMap((mode, index) => modeTree(mode, phrases, `mode-${index + 1}`)),
    },
    ...(start === null
      ? []
      : [{ id: 'start', title: phrases.say('section start'), content: startTree(start, phrases) }]),
    ...(hasSettings
      ? [{ id: 'settings', title: settingsTitle, content: settingsTree(settings, phrases) }]
      : []),
  ];
}

function controllersContent(view: ManualView, area: Area, speech: Speech): readonly ElementContent[] {
  const room = { width: area.width, height: area.height * 0.62 };
  const drawn: readonly ElementContent[] = view.controllers.flatMap(each =>
    controllerTree(each, room, speech),
  );
  const none: Element = h('p', speech.phrases.say('controllers none'));
  return drawn.length === 0 ? [none] : drawn;
}
