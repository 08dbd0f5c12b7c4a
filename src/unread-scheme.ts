import type { Place } from './findings/place.js';
import type { Mode, Scheme } from './language/model.js';

/** Stands in a report for a scheme of which nothing could be read: no mode, no seats, nothing else. */
export function unreadScheme(files: readonly string[]): Scheme {
  const point = { line: 1, column: 1, offset: 0 };
  const at: Place = { file: files[0] ?? '', range: { start: point, end: point } };
  const startMode: Mode = { name: '', at, kind: 'play', seats: [], prose: [], rows: [] };
  return {
    title: { value: '', at },
    opening: [],
    files,
    game: {
      at,
      shortName: { value: 'X', at },
      version: '',
      readEvery: { value: 1, at },
      latch: { value: 'off', at },
      language: { value: 'en', at },
      manualPage: 'A5',
      sheetPaper: 'A4',
    },
    consoles: [],
    standards: [],
    seats: [],
    settings: [],
    actions: [],
    modes: [],
    startMode,
    switchWords: [],
    variations: [],
    fallbacks: [],
    controllers: [],
    times: [],
    accepted: [],
    overlays: [],
    chapters: [],
    complete: false,
  };
}
