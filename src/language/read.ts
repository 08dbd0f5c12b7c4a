import type { Place, SourceFile } from '../findings/place.js';
import type { Report } from '../findings/report.js';
import { isSameList } from '../memory.js';
import { type Document, parseMarkdown, proseOf, readDocument } from './document.js';
import { badPlace, badValue, createSpot, duplicateName } from './faults.js';
import { checkInsteadOf } from './instead-of.js';
import { createKeeper, type Keeper, type SectionReading, type Watched, watch } from './keep.js';
import { headingText, LAYOUTS, SECTION_KINDS, type SectionKind } from './layout.js';
import { readableFiles } from './limits.js';
import type { ManualChapter, Scheme } from './model.js';
import { checkOpening } from './opening.js';
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
import { adopt } from './same.js';
import type { Scope } from './scope.js';
import { readSections, type Section, type Sections } from './sections.js';
import { placeBetween } from './source-text.js';
import { tidy } from './spelling.js';
import { areStill, usesOfFallbacks } from './uses.js';
import { placeOf } from './words.js';

/** Reads the files of one scheme, in the order given, as one document. */
export type ReadScheme = (files: readonly SourceFile[], report: Report) => Scheme | null;

/**
 * Reads a scheme. Every fault of its language is reported, and what can be read is: the scheme is then not
 * `complete`. Null where there is no mode to build a scheme from.
 */
export const readScheme: ReadScheme = (files, report) => createReader()(files, report);

/**
 * A reader that keeps what it has read, so that a second reading only parses the sections that changed. What has
 * not changed are the same objects in both schemes, and they stand where the last reading found them: the schemes
 * of earlier readings must not be used any more.
 */
export function createReader(): ReadScheme {
  const keeper = createKeeper(parseMarkdown);
  return (files, report) => {
    const watched = watch(report);
    const readable = readableFiles(files, watched.report);
    const document = readDocument(readable, keeper.parse);
    const scheme = readParts(
      document,
      files,
      readable.length === files.length ? watched : { ...watched, report: withoutMissing(watched.report) },
      keeper,
    );
    keeper.finish();
    return scheme === null ? null : { ...scheme, complete: watched.isSilent() };
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
  { report, isSilent }: Watched,
  keeper: Keeper,
): Omit<Scheme, 'complete'> | null {
  const { title, opening, sections } = readSections(document, report);
  checkOpening(opening, report);
  const start = startOf(document, files);
  const titleAt = title === null || title.text === '' ? start : placeOf(title);
  const section = sectionsByKind(sections, report);
  const keep = <T>(
    kind: SectionKind,
    read: (section: Section | undefined, report: Report) => T,
    adopt: SectionReading<T>['adopt'] = () => {},
    isStill: SectionReading<T>['isStill'] = () => true,
  ): T =>
    keeper.section(kind, section(kind), {
      report,
      isStill,
      adopt,
      read: watched => read(section(kind), watched),
    });
  const times = keep('timing', readTiming, adopt);
  const { own, controls } = keep('controllers', readOwnControllers);
  const profiles = keep('consoles', readConsoles);
  const { seats } = keep(
    'seats',
    (from, watched) => ({ seats: readSeats(from, own.controllers, watched), own }),
    (before, now) => adopt(before.seats, now.seats),
    before => before.own === own,
  );
  const settings = keep('settings', readSettings, (before, now) => adopt(before.names, now.names));
  const actions = keep('actions', readActions, (before, now) =>
    adopt(before, now, ['words', 'short', 'need']),
  );
  const modes = readModes(
    sections.filter(({ kind }) => kind === 'mode'),
    seats,
    report,
    keeper,
  );
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
  const listed = keeper.steady('modes', modes.names.all());
  const { fallbacks, isClean } = keep(
    'fallbacks',
    (from, watched) => {
      const own = watch(watched);
      const used = readUsedFallbacks(from, { ...scope, report: own.report });
      return { ...used, isClean: own.isSilent(), isWhole: isSilent() };
    },
    () => {},
    ({ uses, isWhole }) => isWhole && areStill(uses, scope),
  );
  if (isClean) checkInsteadOf(modes.whole(), fallbacks, report);
  const rest = {
    switchWords: readSwitches(section('switches'), report),
    variations: keep(
      'variations',
      (from, watched) => ({
        ...readUsedVariations(from, { ...scope, report: watched }),
        isWhole: isSilent(),
      }),
      () => {},
      before => before.isWhole && areVariationsStill(before, scope),
    ).variations,
    fallbacks,
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
    consoles: keeper.steady('consoles', game.consoles),
    standards: keeper.steady('standards', game.standards),
    seats: keeper.steady('seats', seats.all()),
    settings: keeper.steady('settings', settings.names.all()),
    actions: keeper.steady('actions', actions.all()),
    modes: listed,
    startMode: game.startMode,
    controllers: own.controllers,
    times: times.all(),
    ...rest,
  };
}

/** The scheme's own controllers, and every name that a control can have with them. */
function readOwnControllers(section: Section | undefined, report: Report) {
  const own = readControllers(section, report);
  return { own, controls: controlWordsOf(own) };
}

function readUsedVariations(section: Section | undefined, scope: Scope) {
  const { settings, seats } = scope;
  return {
    variations: readVariations(section, scope),
    settings: settings.names.all(),
    seats: seats.all(),
  };
}

type UsedVariations = ReturnType<typeof readUsedVariations>;

function areVariationsStill(before: UsedVariations, { settings, seats }: Scope): boolean {
  return isSameList(before.settings, settings.names.all()) && isSameList(before.seats, seats.all());
}

function readUsedFallbacks(section: Section | undefined, scope: Scope) {
  const fallbacks = readFallbacks(section, scope);
  return { fallbacks, uses: usesOfFallbacks(fallbacks, scope) };
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
      duplicateName(createSpot(report, ''), section.heading, 'sections', placeOf(before.heading), [
        'Put its rows into the table of the first, and take this heading out.',
      ]);
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
