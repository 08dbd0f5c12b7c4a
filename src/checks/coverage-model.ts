import type { Binding } from '../gestures/bindings.js';
import type { TvStandard } from '../hardware/clocks.js';
import type { ConsoleProfile } from '../hardware/consoles.js';
import type { Position, TwoPositionSwitchName } from '../hardware/switches.js';
import type { BindingRow, Mode, SeatsRow, Setting, Variation } from '../language/model.js';

/** What the coverage check found out, in the scheme's order of consoles, seats, standards, modes. */
export interface Coverage {
  readonly cells: readonly CoverageCell[];
  readonly variations: readonly VariationCell[];
}

export type Verdict = 'plays' | 'altered' | 'broken' | 'not offered';

export interface CoverageCell {
  readonly console: ConsoleProfile;
  readonly seats: SeatsRow;
  readonly standard: TvStandard;
  readonly mode: Mode;
  readonly verdict: Verdict;
  /** One short clause for each thing that makes the cell other than `plays`. */
  readonly reasons: readonly string[];
  readonly lostActions: readonly string[];
  readonly lostValues: readonly { readonly setting: Setting; readonly value: string }[];
  /** A shortest way from power-on; null where the mode can't be reached or is not offered. */
  readonly recipe: readonly RecipeStep[] | null;
}

export interface VariationCell {
  readonly variation: Variation;
  readonly console: ConsoleProfile;
  readonly seats: SeatsRow;
  readonly standard: TvStandard;
  /** Null where it can't be reached. */
  readonly recipe: readonly RecipeStep[] | null;
}

/** One step of a recipe; `mode` is the mode it is done in. */
export type RecipeStep =
  | { readonly kind: 'binding'; readonly mode: Mode; readonly binding: Binding }
  | { readonly kind: 'game'; readonly mode: Mode; readonly row: BindingRow }
  | {
      readonly kind: 'switch';
      readonly mode: Mode;
      readonly name: TwoPositionSwitchName;
      readonly position: Position;
    };
