import { CONTROLLERS, type Controller, type SeatLetter } from '../hardware/controllers.js';
import type { Port } from '../hardware/ports.js';
import { SWITCH_NAMES } from '../hardware/switches.js';
import { findSwitch } from './positions.js';
import { normal } from './spelling.js';

/** What a name says, wherever it stands. */
export type Meaning =
  | { readonly kind: 'switch'; readonly name: (typeof SWITCH_NAMES)[number] }
  | {
      readonly kind: 'control';
      readonly port: Port | null;
      readonly letter: SeatLetter;
      readonly name: string;
    };

/** Every control name there is: those of the built-in and of the scheme's own controllers, and the switches. */
export interface ControlWords {
  readonly find: (text: string) => Meaning | null;
  readonly list: readonly string[];
  /** Named, but on no line that is known: its uses are left out without another finding. */
  readonly isUnclear: (text: string) => boolean;
  /** Names of groups: `stick`, `stick left/right`, `stick up/down`. */
  readonly groups: ReadonlySet<string>;
  /** Names that only belong to controls that turn: `paddle`, `wheel`. */
  readonly turning: ReadonlySet<string>;
}

/** Other ways to write a control. */
export const ALSO_WRITTEN: ReadonlyMap<string, string> = new Map([
  ['key *', 'key star'],
  ['key #', 'key hash'],
]);

const PREFIX = /^(left|right) (.+)$/;
const LETTER = /^([ab]) (.+)$/;

/** @param unclear names of own controls that could not be read */
export function createControlWords(own: readonly Controller[], unclear: readonly string[]): ControlWords {
  const controllers = [...CONTROLLERS, ...own];
  const names = new Map<string, string>();
  for (const { controls, groups } of controllers)
    for (const { name } of [...controls, ...groups])
      if (!names.has(normal(name))) names.set(normal(name), name);
  const known = new Map<string, Meaning | null>();
  const find = (text: string): Meaning | null => {
    const wanted = normal(text);
    const before = known.get(wanted);
    if (before !== undefined) return before;
    const meaning = findMeaning(wanted, names);
    known.set(wanted, meaning);
    return meaning;
  };
  const controls = controllers.flatMap(controller => controller.controls);
  const turns = (name: string): boolean =>
    controls.every(control => control.name !== name || ['pot', 'gray'].includes(control.wiring.kind));
  const unclearNames = new Set(unclear.map(normal));
  const isUnclear = (text: string): boolean => {
    const wanted = normal(text);
    const rest = PREFIX.exec(wanted)?.[2] ?? '';
    return [wanted, rest, LETTER.exec(rest)?.[2] ?? ''].some(name => unclearNames.has(name));
  };
  return {
    find,
    isUnclear,
    list: [...SWITCH_NAMES, ...names.values()],
    groups: new Set(controllers.flatMap(controller => controller.groups.map(group => group.name))),
    turning: new Set(controls.map(control => control.name).filter(turns)),
  };
}

function findMeaning(wanted: string, names: ReadonlyMap<string, string>): Meaning | null {
  const panel = findSwitch(wanted);
  if (panel !== undefined) return { kind: 'switch', name: panel };
  const nameOf = (text: string): string | undefined => names.get(ALSO_WRITTEN.get(text) ?? text);
  const bare = nameOf(wanted);
  if (bare !== undefined) return { kind: 'control', port: null, letter: '', name: bare };
  const [, side, rest = ''] = PREFIX.exec(wanted) ?? [];
  const port = side === 'left' ? 'left' : 'right';
  const whole = nameOf(rest);
  if (whole !== undefined) return { kind: 'control', port, letter: '', name: whole };
  const [, letter, inner = ''] = LETTER.exec(rest) ?? [];
  const name = nameOf(inner);
  return name === undefined ? null : { kind: 'control', port, letter: letterOf(letter), name };
}

const letterOf = (text: string | undefined): SeatLetter => (text === 'a' ? 'A' : text === 'b' ? 'B' : '');

/** `left A paddle button`, `stick up`, `RESET`. */
export function controlText(part: Meaning): string {
  if (part.kind === 'switch') return part.name;
  return [part.port ?? '', part.letter, part.name].filter(word => word !== '').join(' ');
}
