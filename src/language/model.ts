import type { RootContent } from 'mdast';
import type { Place, Placed } from '../findings/place.js';
import type { Fraction, TvStandard } from '../hardware/clocks.js';
import type { ConsoleProfile } from '../hardware/consoles.js';
import type { Controller, SeatLetter } from '../hardware/controllers.js';
import type { Port } from '../hardware/ports.js';
import type { Position, SwitchName, TwoPositionSwitchName } from '../hardware/switches.js';

/**
 * The typed scheme: what LANGUAGE.md's tables say, with every name resolved to the thing it names and every
 * thing keeping the place of its own words. Objects are shared and compared by identity.
 */
export interface Scheme {
  readonly title: Placed<string>;
  /** The paragraphs between the title and the first section. */
  readonly opening: readonly RootContent[];
  readonly files: readonly string[];
  readonly game: GameFacts;
  /** In the order in which the scheme lists them. */
  readonly consoles: readonly ConsoleProfile[];
  readonly standards: readonly TvStandard[];
  readonly seats: readonly SeatsRow[];
  readonly settings: readonly Setting[];
  readonly actions: readonly Action[];
  readonly modes: readonly Mode[];
  readonly startMode: Mode;
  readonly switchWords: readonly SwitchWords[];
  readonly variations: readonly Variation[];
  readonly fallbacks: readonly Fallback[];
  /** Own controllers, in order. */
  readonly controllers: readonly OwnController[];
  readonly times: readonly NamedTime[];
  readonly accepted: readonly AcceptedRow[];
  readonly overlays: readonly OverlaySize[];
  readonly chapters: readonly ManualChapter[];
  /** False when a language rule found an error: then some rows may be missing from the lists above. */
  readonly complete: boolean;
}

export type ButtonLatch = 'off' | 'cleared each read' | 'cleared on use';
export type ManualPage = 'A5' | 'half letter' | 'A4' | 'letter';
export type SheetPaper = 'A4' | 'letter';

export interface GameFacts {
  readonly at: Place;
  /** 1 to 8 letters and digits, first a letter; as written. */
  readonly shortName: Placed<string>;
  readonly version: string;
  /** Frames between two reads, at least 1. */
  readonly readEvery: Placed<number>;
  readonly latch: Placed<ButtonLatch>;
  /** BCP 47 tag. */
  readonly language: Placed<string>;
  readonly manualPage: ManualPage;
  readonly sheetPaper: SheetPaper;
}

/** One way to sit down and play. */
export interface SeatsRow {
  readonly name: string;
  readonly at: Place;
  /** The seated players, in seat order; as many as the row's Players. */
  readonly players: readonly SeatedPlayer[];
  /** What is plugged in; null where the port is empty. */
  readonly left: Controller | null;
  readonly right: Controller | null;
}

export type PlayerName = 'left' | 'right' | 'left A' | 'left B' | 'right A' | 'right B';

export interface SeatedPlayer {
  readonly name: PlayerName;
  readonly port: Port;
  readonly letter: SeatLetter;
  readonly controller: Controller;
}

export interface Setting {
  readonly name: string;
  readonly at: Place;
  /** In order; at least one. */
  readonly values: readonly string[];
  readonly startsAs: string;
  readonly setBy: SetBy;
}

export type SetBy =
  | { readonly kind: 'game' }
  | {
      readonly kind: 'switch';
      readonly name: TwoPositionSwitchName;
      /** The value for each of the switch's two positions. */
      readonly values: ReadonlyMap<Position, string>;
      readonly at: Place;
    };

export interface Action {
  readonly name: string;
  readonly at: Place;
  /** What the player reads; empty where nothing is said. */
  readonly words: string;
  readonly short: Placed<string> | null;
  readonly need: 'must' | 'nice';
}

export type ModeKind = 'menu' | 'play' | 'pause';

export interface Mode {
  readonly name: string;
  readonly at: Place;
  readonly kind: ModeKind;
  readonly seats: readonly SeatsRow[];
  readonly prose: readonly RootContent[];
  readonly rows: readonly BindingRow[];
}

/** A row of a mode's table of bindings. */
export interface BindingRow {
  readonly mode: Mode;
  /** The row's place is that of its action's words. */
  readonly at: Place;
  /** From 0, in the order of the mode's table. */
  readonly index: number;
  readonly who: Placed<Who>;
  readonly action: Action;
  /** Empty for `game` rows. */
  readonly alternatives: readonly Chord[];
  /** Null for `game` rows only. */
  readonly gesture: Placed<Gesture> | null;
  /** The `When` column; all must hold. */
  readonly conditions: readonly Condition[];
  /** The `Then` column, in order. */
  readonly effects: readonly Effect[];
  readonly insteadOf: readonly Placed<Action>[];
  readonly alongWith: readonly Placed<Action>[];
}

export type Who =
  | { readonly kind: 'player'; readonly player: PlayerName }
  | { readonly kind: 'each' }
  | { readonly kind: 'anyone' }
  | { readonly kind: 'game' };

/** Controls engaged together; one part where there is no `+`. */
export interface Chord {
  readonly parts: readonly ControlName[];
  readonly at: Place;
}

/** A control as a row names it. Which contact that is depends on the seats row. */
export type ControlName =
  | { readonly kind: 'switch'; readonly name: SwitchName; readonly at: Place }
  | {
      readonly kind: 'control';
      /** Named outright (`left button`); null where it is the player's own. */
      readonly port: Port | null;
      /** Named outright (`left A paddle`); '' where it is not. */
      readonly letter: SeatLetter;
      /** Canonical name of a control or a group: `stick up`, `stick`, `key star`, `paddle button`. */
      readonly name: string;
      readonly at: Place;
    };

export type Gesture =
  | { readonly kind: 'press' | 'release' | 'held' | 'turn' | 'flip' }
  | { readonly kind: 'hold' | 'tap' | 'double tap' | 'repeat'; readonly time: Time }
  | { readonly kind: 'at' | 'flip to'; readonly position: Position };

/** A length of time as written; `hardware/clocks` and `language/time` turn it into reads. */
export interface Time {
  readonly unit: 'seconds' | 'frames';
  /** Above 0, exact. */
  readonly amount: Fraction;
  /** As the scheme writes it: `0.5 s`, `40 frames`. */
  readonly text: string;
  /** The name of `## Timing` it was given by, if it was. */
  readonly name: string | null;
  readonly at: Place;
}

export interface NamedTime {
  readonly name: string;
  readonly at: Place;
  readonly time: Time;
}

export interface Condition {
  readonly setting: Setting;
  readonly is: boolean;
  readonly value: string;
  readonly at: Place;
}

export type Effect =
  | { readonly kind: 'go to'; readonly mode: Mode; readonly at: Place }
  | { readonly kind: 'set'; readonly setting: Setting; readonly value: string; readonly at: Place }
  /** By +1 (`next`) or −1 (`previous`); wraps around. */
  | { readonly kind: 'step'; readonly setting: Setting; readonly by: 1 | -1; readonly at: Place };

export interface SwitchWords {
  readonly at: Place;
  readonly name: SwitchName;
  /** A position of a two-position switch; null where the row speaks of the switch's use. */
  readonly position: Position | null;
  /** The cell as written. */
  readonly use: string;
  readonly words: string;
}

export interface Variation {
  readonly name: string;
  readonly at: Place;
  /** The seats rows it is offered to: all where the cell says nothing. */
  readonly seats: readonly SeatsRow[];
  /** The settings it fixes. */
  readonly values: ReadonlyMap<Setting, string>;
  readonly words: string;
}

export interface Fallback {
  readonly at: Place;
  readonly without: SwitchName;
  readonly subject:
    | { readonly kind: 'setting'; readonly setting: Setting }
    | { readonly kind: 'action'; readonly action: Action };
  readonly instead:
    | { readonly kind: 'stays'; readonly value: string }
    | {
        readonly kind: 'binding';
        readonly mode: Mode;
        readonly alternatives: readonly Chord[];
        readonly gesture: Placed<Gesture>;
        readonly at: Place;
      };
}

export interface OwnController {
  readonly controller: Controller;
  readonly at: Place;
  /** By control name. */
  readonly controlsAt: ReadonlyMap<string, Place>;
}

export interface AcceptedRow {
  readonly at: Place;
  readonly rule: string;
  /** Names of modes, actions, settings, seats rows or consoles; empty for the whole scheme. */
  readonly where: readonly AcceptedName[];
  readonly why: string;
}

export type AcceptedKind = 'mode' | 'action' | 'setting' | 'seats' | 'console';

export interface AcceptedName {
  readonly name: string;
  /**
   * The things of the scheme that have this name, each as the scheme writes it; a finding concerns it if it concerns
   * any of them.
   */
  readonly things: readonly { readonly kind: AcceptedKind; readonly name: string }[];
}

export interface OverlaySize {
  readonly item: OverlayItem;
  /** Millimetres, above 0. */
  readonly mm: number;
  readonly at: Place;
}

export const OVERLAY_ITEMS = [
  'Overlay width',
  'Overlay height',
  'Key width',
  'Key height',
  'Key column pitch',
  'Key row pitch',
  'First key from left',
  'First key from top',
  'Corner radius',
  'Strip width',
  'Strip height',
  'Card width',
  'Card height',
  'Bleed',
] as const;

export type OverlayItem = (typeof OVERLAY_ITEMS)[number];

export interface ManualChapter {
  readonly title: string;
  readonly at: Place;
  readonly content: readonly RootContent[];
}
