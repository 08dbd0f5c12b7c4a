import { fromSource, type Source } from './source.js';

export type MomentarySwitchName = 'RESET' | 'SELECT';
export type TwoPositionSwitchName = 'TV type' | 'left difficulty' | 'right difficulty';
export type SwitchName = MomentarySwitchName | TwoPositionSwitchName;
export type Position = 'COLOR' | 'B-W' | 'A' | 'B';

/** A panel switch and its bit of SWCHB. */
export interface PanelSwitch {
  readonly name: SwitchName;
  /** Bit of SWCHB, 0 to 7. */
  readonly bit: number;
  /** Two-position switches: what the bit reads in each position, the one at rest first. */
  readonly positions: readonly { readonly name: Position; readonly reads: 0 | 1 }[];
  readonly source: Source;
}

const source = fromSource('G', 'PIA 4.1');
const difficulty = (name: TwoPositionSwitchName, bit: number): PanelSwitch => ({
  name,
  bit,
  positions: [
    { name: 'B', reads: 0 },
    { name: 'A', reads: 1 },
  ],
  source,
});

/** In the order of the panel. A momentary switch reads 0 when pressed. */
export const SWITCHES: Readonly<Record<SwitchName, PanelSwitch>> = {
  'TV type': {
    name: 'TV type',
    bit: 3,
    positions: [
      { name: 'COLOR', reads: 1 },
      { name: 'B-W', reads: 0 },
    ],
    source,
  },
  'left difficulty': difficulty('left difficulty', 6),
  'right difficulty': difficulty('right difficulty', 7),
  SELECT: { name: 'SELECT', bit: 1, positions: [], source },
  RESET: { name: 'RESET', bit: 0, positions: [], source },
};

export const SWITCH_NAMES = Object.keys(SWITCHES) as readonly SwitchName[];

/** Bits of SWCHB that read as nothing in particular and must be masked out. */
export const SWCHB_UNUSED_MASK = 0b0011_0100;

export function isTwoPosition(name: SwitchName): name is TwoPositionSwitchName {
  return SWITCHES[name].positions.length > 0;
}
