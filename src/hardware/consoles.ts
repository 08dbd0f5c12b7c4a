import { fromSource, type Source } from './source.js';
import type { Position, SwitchName } from './switches.js';

/** How a console has a panel switch. `fixed`: not there, its line always reads that position. */
export type SwitchState =
  | { readonly kind: 'front' }
  | { readonly kind: 'rear' }
  | { readonly kind: 'fixed'; readonly position: Position }
  | { readonly kind: 'absent' };

export interface ConsoleProfile {
  readonly name: string;
  readonly switches: Readonly<Record<SwitchName, SwitchState>>;
  readonly source: Source;
}

const front: SwitchState = { kind: 'front' };
const rear: SwitchState = { kind: 'rear' };
const fixedB: SwitchState = { kind: 'fixed', position: 'B' };

const profile = (name: string, difficulty: SwitchState): ConsoleProfile => ({
  name,
  switches: {
    'TV type': front,
    'left difficulty': difficulty,
    'right difficulty': difficulty,
    SELECT: front,
    RESET: front,
  },
  source: fromSource('P'),
});

export const CONSOLES: readonly ConsoleProfile[] = [
  profile('six-switch', front),
  profile('four-switch', rear),
  profile('no-difficulty', fixedB),
];
