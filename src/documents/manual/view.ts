import type { RootContent } from 'mdast';
import type { DocumentInput } from '../document.js';
import { findPhrases, type Phrases } from '../phrases.js';
import type { Speech } from '../wording/gestures.js';
import { viewCautions } from './cautions.js';
import { type ConsoleView, viewConsole } from './console.js';
import { type ControllerView, viewControllers } from './controllers.js';
import { type ModeView, viewModes } from './modes.js';
import { type NeedsView, viewNeeds } from './needs.js';
import { type QuickView, viewQuick } from './quick.js';
import { type SettingsView, viewSettings } from './settings.js';
import { type StartView, viewStart } from './start.js';

/** Everything the manual says, in the order of its chapters: plain data, all wording done. */
export interface ManualView {
  readonly title: string;
  /** What the manual calls itself: `How to play`. */
  readonly name: string;
  /** `Version 0.3`; empty where the scheme says none. */
  readonly version: string;
  readonly opening: readonly RootContent[];
  readonly needs: NeedsView;
  readonly console: ConsoleView;
  readonly controllers: readonly ControllerView[];
  readonly modes: readonly ModeView[];
  /** Null where coverage could not be explored. */
  readonly start: StartView | null;
  readonly settings: SettingsView;
  readonly chapters: readonly { readonly title: string; readonly content: readonly RootContent[] }[];
  readonly cautions: readonly string[];
  readonly quick: QuickView;
}

export function speechFor({ scheme, templates }: Pick<DocumentInput, 'scheme' | 'templates'>): Speech {
  const { phrases } = findPhrases(scheme.game.language.value, templates);
  return { phrases, standards: scheme.standards };
}

export function viewManual({ scheme, coverage }: DocumentInput, speech: Speech): ManualView {
  const start = coverage === null ? null : viewStart(scheme, coverage, speech);
  const games = new Set(start?.games.map(({ name }) => name));
  return {
    title: scheme.title.value,
    name: speech.phrases.say('manual name'),
    version: versionWords(scheme.game.version, speech.phrases),
    opening: scheme.opening,
    needs: viewNeeds(scheme, speech),
    console: viewConsole(scheme, speech),
    controllers: viewControllers(scheme, speech),
    modes: viewModes(scheme, speech),
    start,
    settings: viewSettings(scheme, games, speech),
    chapters: scheme.chapters.map(({ title, content }) => ({ title, content })),
    cautions: viewCautions(scheme, speech),
    quick: viewQuick(scheme, speech),
  };
}

export function versionWords(version: string, phrases: Phrases): string {
  return version === '' ? '' : phrases.say('version', { version });
}
