import type { Place, Placed } from '../findings/place.js';
import type { Report } from '../findings/report.js';
import { STANDARDS, type StandardName, type TvStandard } from '../hardware/clocks.js';
import { CONSOLES, type ConsoleProfile } from '../hardware/consoles.js';
import { badValue, createSpot, notOneOf, type Spot, unknownName } from './faults.js';
import { invisibleIn } from './invisible.js';
import { type Item, readItems } from './items.js';
import type { ButtonLatch, GameFacts, ManualPage, Mode, SheetPaper } from './model.js';
import { type Names, resolveName } from './names.js';
import type { Profiles } from './read-consoles.js';
import type { Section } from './sections.js';
import { findIn, normal, rejoined, tidy } from './spelling.js';
import { placed, placeOf, splitWords, type Words } from './words.js';

export const GAME_ITEMS = [
  'Short name',
  'Version',
  'Consoles',
  'TV standards',
  'Starts in',
  'Reads inputs',
  'Button latch',
  'Language',
  'Manual page',
  'Sheet paper',
] as const;

const LATCHES: readonly ButtonLatch[] = ['off', 'cleared each read', 'cleared on use'];
const MANUAL_PAGES: readonly ManualPage[] = ['A5', 'half letter', 'A4', 'letter'];
const SHEET_PAPERS: readonly SheetPaper[] = ['A4', 'letter'];
const STANDARD_NAMES = Object.keys(STANDARDS) as readonly StandardName[];

/** Most frames between two reads that the language takes. */
const SLOWEST_READ = 255;

export interface Game {
  readonly facts: GameFacts;
  readonly consoles: readonly ConsoleProfile[];
  readonly standards: readonly TvStandard[];
  readonly startMode: Mode | undefined;
  /** Where the start mode is named; null where that is left out. */
  readonly startModeAt: Place | null;
}

/** @param at where the game is named: its section's heading, or its title where there is no such section */
export function readGame(
  section: Section | undefined,
  at: Place,
  profiles: Profiles,
  modes: Names<Mode>,
  report: Report,
): Game {
  const items = section === undefined ? new Map<string, Item>() : readItems(section, GAME_ITEMS, report);
  const spot = createSpot(report, '');
  const cell = (item: (typeof GAME_ITEMS)[number]): Words | undefined => items.get(item)?.value ?? undefined;
  const starts = cell('Starts in');
  const define = 'Write a section `## Mode: NAME` for it.';
  return {
    facts: {
      at,
      shortName: readShortName(items.get('Short name'), section, at, spot),
      version: tidy(cell('Version')?.text ?? ''),
      readEvery: readEvery(cell('Reads inputs'), at, spot),
      latch: choose(cell('Button latch'), 'Button latch', LATCHES, 'off', at, spot),
      language: readLanguage(cell('Language'), at, spot),
      manualPage: choose(cell('Manual page'), 'Manual page', MANUAL_PAGES, 'A5', at, spot).value,
      sheetPaper: choose(cell('Sheet paper'), 'Sheet paper', SHEET_PAPERS, 'A4', at, spot).value,
    },
    consoles: readConsoleList(cell('Consoles'), profiles, spot),
    standards: readStandards(cell('TV standards'), spot),
    startMode: (starts === undefined ? null : resolveName(starts, modes, spot, define)) ?? modes.all()[0],
    startModeAt: starts === undefined ? null : placeOf(starts),
  };
}

function readShortName(
  item: Item | undefined,
  section: Section | undefined,
  at: Place,
  spot: Spot,
): Placed<string> {
  const words = item?.value ?? null;
  const waysOut = ['Write 1 to 8 letters (A to Z) and digits, the first a letter, for example “LH”.'];
  if (words === null) {
    if (section !== undefined)
      badValue(
        spot,
        item?.name ?? at,
        'Short name',
        'nothing is said, but every symbol begins with it',
        item === undefined ? ['Add a row `| Short name | … |` with 1 to 8 letters and digits.'] : waysOut,
      );
    return { value: '', at };
  }
  const name = words.text;
  const problem = shortNameProblem(name);
  if (problem !== null)
    badValue(spot, words, 'Short name', `“${tidy(name).slice(0, 40)}” ${problem}`, waysOut);
  return placed(name, words);
}

/** What keeps a text from being the first part of every symbol; null where it can be. */
function shortNameProblem(name: string): string | null {
  const invisible = invisibleIn(name);
  if (invisible !== null) return `holds ${invisible}, which nobody can see`;
  const strange = /[^A-Za-z0-9]/u.exec(name)?.[0];
  if (strange !== undefined)
    return strange.trim() === '' ? 'holds a space' : `holds “${strange}”, which symbols can’t have`;
  if (!/^[A-Za-z]/.test(name)) return 'begins with a digit, and symbols begin with a letter';
  return name.length > LONGEST_SHORT_NAME
    ? `has ${name.length} characters, and ${LONGEST_SHORT_NAME} is the limit`
    : null;
}

/** In characters, so that symbols stay readable in a listing. */
const LONGEST_SHORT_NAME = 8;

function readEvery(words: Words | undefined, at: Place, spot: Spot): Placed<number> {
  if (words === undefined) return { value: 1, at };
  const [whole, digits = '1'] = /^every (?:(\d{1,6}) )?frames?$/.exec(normal(words.text)) ?? [];
  const frames = Number(digits);
  const waysOut = ['Write “every frame”, or “every 2 frames” with the number you need.'];
  if (whole === undefined)
    badValue(spot, words, 'Reads inputs', `“${tidy(words.text)}” does not say how often`, waysOut);
  else if (frames < 1 || frames > SLOWEST_READ)
    badValue(
      spot,
      words,
      'Reads inputs',
      `${frames} is not a number of frames from 1 to ${SLOWEST_READ}`,
      waysOut,
    );
  return placed(whole === undefined || frames < 1 || frames > SLOWEST_READ ? 1 : frames, words);
}

function readLanguage(words: Words | undefined, at: Place, spot: Spot): Placed<string> {
  if (words === undefined) return { value: 'en', at };
  try {
    return placed(Intl.getCanonicalLocales(words.text)[0] ?? 'en', words);
  } catch {
    badValue(spot, words, 'Language', `“${tidy(words.text)}” is not a BCP 47 language tag`, [
      'Write a tag such as “en”, “de” or “pt-BR”.',
    ]);
    return placed('en', words);
  }
}

function choose<T extends string>(
  words: Words | undefined,
  item: string,
  choices: readonly T[],
  otherwise: T,
  at: Place,
  spot: Spot,
): Placed<T> {
  if (words === undefined) return { value: otherwise, at };
  const choice = choices.find(candidate => normal(candidate) === normal(words.text));
  if (choice === undefined) notOneOf(spot, words, item, choices);
  return placed(choice ?? otherwise, words);
}

function readConsoleList(
  words: Words | undefined,
  profiles: Profiles,
  spot: Spot,
): readonly ConsoleProfile[] {
  const builtIn = CONSOLES.map(({ name }) => profiles.find(name)).filter(profile => profile !== undefined);
  if (words === undefined) return builtIn;
  const listed = readList(words, 'Consoles', spot, part => {
    const profile = profiles.find(part.text);
    if (profile === undefined)
      unknownName(
        spot,
        part,
        'console',
        profiles.list,
        'Describe it in `## Consoles`, with a column for each switch.',
        rejoined(part.text, findIn(profiles.list), ', '),
      );
    return profile;
  });
  return listed.length === 0 ? builtIn : listed;
}

function readStandards(words: Words | undefined, spot: Spot): readonly TvStandard[] {
  const listed =
    words === undefined
      ? []
      : readList(words, 'TV standards', spot, part => {
          const name = STANDARD_NAMES.find(candidate => normal(candidate) === normal(part.text));
          if (name === undefined)
            notOneOf(
              spot,
              part,
              'TV standards',
              STANDARD_NAMES,
              rejoined(part.text, findIn(STANDARD_NAMES), ', '),
            );
          return name === undefined ? undefined : STANDARDS[name];
        });
  return listed.length === 0 ? [STANDARDS.NTSC] : listed;
}

/** Each thing of a list once, in the order in which it is listed. */
function readList<T>(
  words: Words,
  item: string,
  spot: Spot,
  find: (part: Words) => T | undefined,
): readonly T[] {
  const listed: T[] = [];
  for (const part of splitWords(words, /[,;]/g)) {
    if (part.text === '') {
      badValue(spot, words, item, `a name is missing in “${tidy(words.text)}”`, [
        'Take the extra comma out.',
      ]);
      continue;
    }
    const thing = find(part);
    if (thing === undefined) continue;
    if (listed.includes(thing))
      badValue(spot, part, item, `“${tidy(part.text)}” is listed twice`, ['Take one of the two out.']);
    else listed.push(thing);
  }
  return listed;
}
