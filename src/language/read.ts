import type { RootContent } from 'mdast';
import type { Place, SourceFile } from '../findings/place.js';
import type { Report } from '../findings/report.js';
import { type Document, parseMarkdown, proseOf, readDocument } from './document.js';
import { badPlace, badValue, createSpot, duplicateName } from './faults.js';
import { headingText, LAYOUTS, SECTION_KINDS, type SectionKind } from './layout.js';
import { readableFiles } from './limits.js';
import type { ManualChapter, Scheme } from './model.js';
import { readAccepted } from './read-accepted.js';
import { readActions } from './read-actions.js';
import { readConsoles } from './read-consoles.js';
import { controlWordsOf, readControllers } from './read-controllers.js';
import { readFallbacks } from './read-fallbacks.js';
import { type Game, readGame } from './read-game.js';
import { type Modes, readModes } from './read-modes.js';
import { readOverlays } from './read-overlays.js';
import { readSeats } from './read-seats.js';
import { readSettings } from './read-settings.js';
import { readSwitches } from './read-switches.js';
import { readTiming } from './read-timing.js';
import { readVariations } from './read-variations.js';
import type { Scope } from './scope.js';
import { readSections, type Section, type Sections } from './sections.js';
import { placeBetween } from './source-text.js';
import { tidy } from './spelling.js';
import { placeOf } from './words.js';

/** Reads the files of one scheme, in the order given, as one document. */
export type ReadScheme = (files: readonly SourceFile[], report: Report) => Scheme | null;

/**
 * Reads a scheme. Every fault of its language is reported, and what can be read is: the scheme is then not
 * `complete`. Null where there is no mode to build a scheme from.
 */
export const readScheme: ReadScheme = (files, report) => createReader()(files, report);

/** A reader that keeps what it has parsed, so that a second reading only parses the sections that changed. */
export function createReader(): ReadScheme {
  let kept: ReadonlyMap<string, readonly RootContent[]> = new Map();
  return (files, report) => {
    const used = new Map<string, readonly RootContent[]>();
    const parse = (text: string): readonly RootContent[] => {
      const content = used.get(text) ?? kept.get(text) ?? parseMarkdown(text);
      used.set(text, content);
      return content;
    };
    let complete = true;
    const watch: Report = (...finding) => {
      complete = false;
      report(...finding);
    };
    const readable = readableFiles(files, watch);
    const document = readDocument(readable, parse);
    kept = used;
    const scheme = readParts(
      document,
      files,
      readable.length === files.length ? watch : withoutMissing(watch),
    );
    return scheme === null ? null : { ...scheme, complete };
  };
}

/** What seems to be missing may stand in a file that was not read. */
function withoutMissing(report: Report): Report {
  return (rule, ...rest) => {
    if (rule !== 'missing-section') report(rule, ...rest);
  };
}

function readParts(
  document: Document,
  files: readonly SourceFile[],
  report: Report,
): Omit<Scheme, 'complete'> | null {
  const { title, opening, sections } = readSections(document, report);
  const start = startOf(document, files);
  const titleAt = title === null || title.text === '' ? start : placeOf(title);
  const section = sectionsByKind(sections, report);
  const times = readTiming(section('timing'), report);
  const own = readControllers(section('controllers'), report);
  const profiles = readConsoles(section('consoles'), report);
  const seats = readSeats(section('seats'), own.controllers, report);
  const settings = readSettings(section('settings'), report);
  const actions = readActions(section('actions'), report);
  const modes = readModes(
    sections.filter(({ kind }) => kind === 'mode'),
    seats,
    report,
  );
  const controls = controlWordsOf(own);
  const scope: Scope = { report, seats, settings, actions, modes: modes.names, times, controls };
  const gameSection = section('game');
  const game = readGame(
    gameSection,
    gameSection === undefined ? titleAt : placeOf(gameSection.heading),
    profiles,
    modes.names,
    report,
  );
  modes.fill(scope);
  const rest = {
    switchWords: readSwitches(section('switches'), report),
    variations: readVariations(section('variations'), scope),
    fallbacks: readFallbacks(section('fallbacks'), scope),
    accepted: readAccepted(section('accepted'), scope, game.consoles),
    overlays: readOverlays(section('overlays'), report),
    chapters: readChapters(sections, report),
  };
  reportMissing({ title, opening, sections }, titleAt, report);
  if (game.startMode === undefined) return null;
  checkStart(game, modes, scope, report);
  return {
    title: { value: tidy(title?.text ?? ''), at: titleAt },
    opening: proseOf(opening),
    files: files.map(({ path }) => path),
    game: game.facts,
    consoles: game.consoles,
    standards: game.standards,
    seats: seats.all(),
    settings: settings.names.all(),
    actions: actions.all(),
    modes: modes.names.all(),
    startMode: game.startMode,
    controllers: own.controllers,
    times: times.all(),
    ...rest,
  };
}

/** The beginning of the first file that there is. */
function startOf(document: Document, files: readonly SourceFile[]): Place {
  const [source] = document.files;
  if (source !== undefined) return placeBetween(source, source.lineStarts[0] ?? 0, source.lineStarts[0] ?? 0);
  const point = { line: 1, column: 1, offset: 0 };
  return { file: files[0]?.path ?? '', range: { start: point, end: point } };
}

/** The first section of each kind; a finding for a second where there can be only one. */
function sectionsByKind(
  sections: readonly Section[],
  report: Report,
): (kind: SectionKind) => Section | undefined {
  const first = new Map<SectionKind, Section>();
  for (const section of sections) {
    const before = first.get(section.kind);
    if (before === undefined) first.set(section.kind, section);
    else if (LAYOUTS[section.kind].title === 'none')
      duplicateName(createSpot(report, ''), section.heading, 'sections', placeOf(before.heading));
  }
  return kind => first.get(kind);
}

function reportMissing({ title, sections }: Sections, at: Place, report: Report): void {
  if (title === null) report('missing-section', at, { section: 'title (`# TITLE`)' });
  else if (title.text === '')
    badPlace(createSpot(report, ''), at, 'The title', 'the game has no name', [
      'Write its name after the `#`.',
    ]);
  for (const kind of SECTION_KINDS) {
    if (!LAYOUTS[kind].needed || sections.some(section => section.kind === kind)) continue;
    report('missing-section', at, { section: `section \`${headingText(kind)}\`` });
  }
}

function readChapters(sections: readonly Section[], report: Report): readonly ManualChapter[] {
  const chapters = sections.filter(({ kind }) => kind === 'manual');
  return chapters.map(({ title, heading, blocks }) => {
    if (title.text === '')
      badPlace(createSpot(report, ''), heading, '`## Manual`', 'the chapter has no title', [
        'Write `## Manual: TITLE`.',
      ]);
    return {
      title: tidy(title.text),
      at: placeOf(title.text === '' ? heading : title),
      content: proseOf(blocks),
    };
  });
}

/** Whoever sits down begins in the start mode. */
function checkStart({ startMode, startModeAt }: Game, modes: Modes, scope: Scope, report: Report): void {
  if (startMode === undefined) return;
  const left = scope.seats.all().filter(row => !startMode.seats.includes(row));
  if (left.length === 0) return;
  const names = left.map(({ name }) => `“${name}”`).join(', ');
  badValue(
    createSpot(report, '', { mode: startMode.name, seats: left.map(({ name }) => name) }),
    startModeAt ?? modes.seatsAt(startMode) ?? startMode.at,
    'Starts in',
    `the game starts in “${startMode.name}”, which ${names} can’t be played in`,
    [`List every seats row in “${startMode.name}”, or leave its fact Seats out.`, 'Start in another mode.'],
  );
}
