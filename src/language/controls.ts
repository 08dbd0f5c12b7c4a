import { CONTROLLERS, type Controller, type SeatLetter } from '../hardware/controllers.js';
import type { Port } from '../hardware/ports.js';
import { isTwoPosition, SWITCH_NAMES } from '../hardware/switches.js';
import { badValue, type Spot, unknownName } from './faults.js';
import type { Chord, ControlName } from './model.js';
import { findSwitch } from './positions.js';
import { normal, rejoined, tidy } from './spelling.js';
import { placeOf, splitWords, type Words } from './words.js';

/** What a name says, wherever it stands. */
type Meaning =
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
const ALSO_WRITTEN: ReadonlyMap<string, string> = new Map([
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

const OR = /(?:^|\s+)or(?:\s+|$)/gi;

/** The alternatives that the words name; null (and findings) where one can't be read. */
export function readAlternatives(
  words: Words,
  controls: ControlWords,
  column: string,
  spot: Spot,
): readonly Chord[] | null {
  const chords = splitWords(words, OR).map(part => readChord(part, words, controls, column, spot));
  const read = chords.filter(chord => chord !== null);
  if (read.length > 1) reportTwins(read, column, spot);
  return read.length === chords.length ? read : null;
}

/** Alternatives that are the same. */
function reportTwins(chords: readonly Chord[], column: string, spot: Spot): void {
  const seen = new Set<string>();
  for (const { parts, at } of chords) {
    const texts = parts.map(controlText);
    const key = texts.toSorted().join('+');
    if (seen.has(key))
      badValue(spot, at, column, `“${texts.join(' + ')}” is an alternative to itself`, [
        'Take one of the two out.',
      ]);
    seen.add(key);
  }
}

function readChord(
  words: Words,
  whole: Words,
  controls: ControlWords,
  column: string,
  spot: Spot,
): Chord | null {
  const parts = splitWords(words, /\+/g).map(part => {
    if (part.text !== '') return readControl(part, controls, spot);
    badValue(spot, whole, column, `a control is missing in “${tidy(whole.text)}”`, [
      'Write a control on both sides of each `+` and `or`.',
    ]);
    return null;
  });
  const read = parts.filter(part => part !== null);
  if (read.length < parts.length) return null;
  return isChord(read, controls, column, spot) ? { parts: read, at: placeOf(words) } : null;
}

function readControl(words: Words, controls: ControlWords, spot: Spot): ControlName | null {
  const meaning = controls.find(words.text);
  if (meaning !== null) return { ...meaning, at: placeOf(words) };
  if (controls.isUnclear(words.text)) return null;
  const joined = /[,;/&]/.test(words.text) ? ' Alternatives are joined by `or`, chords by `+`.' : '';
  const meant = meantControl(words.text, controls) ?? meantAlternatives(words.text, controls);
  unknownName(spot, words, 'control', controls.list, `Name it in \`## Controllers\`.${joined}`, meant);
  return null;
}

/** Controls joined by other words than `or` and `+`: `stick left, stick right`, `stick up and button`. */
function meantAlternatives(text: string, { find }: ControlWords): string | null {
  const nameOf = (part: string): string | undefined => {
    const meaning = find(part);
    return meaning === null ? undefined : textOf(meaning);
  };
  return rejoined(text, nameOf, /&|\sand\s/i.test(text) ? ' + ' : ' or ');
}

/** The control that is called by words of daily use: `fire button`, `joystick up`, `reset button`. */
function meantControl(text: string, { find }: ControlWords): string | null {
  for (const [pattern, words] of DAILY_WORDS) {
    const meaning = find(normal(text).replace(pattern, words));
    if (meaning !== null) return textOf(meaning);
  }
  return null;
}

const DAILY_WORDS: readonly (readonly [pattern: RegExp, words: string])[] = [
  [/\b(?:fire|trigger|action|joystick|stick|red)(?: button| key)?$/, 'button'],
  [/\bjoy(?:stick|pad)?\b/, 'stick'],
  [/^(up|down|left|right)$/, 'stick $1'],
  [/^((?:left|right) )?(up|down|left|right)$/, '$1stick $2'],
  [/^(?:game |console )?(.+?)(?: switch| button| key| lever)?$/, '$1'],
  [/^(?:the )?(?:colou?r|tv|b&w)(?: type| switch)?$/, 'TV type'],
  [/^(left|right) (?:diff|skill)(?: switch)?$/, '$1 difficulty'],
  [/\b(?:number|digit|keypad) (?:key )?/, 'key '],
  [/\b(?:knob|dial)\b/, 'paddle'],
];

/** Chords are made of momentary controls, with one group at most, and no control twice. */
function isChord(parts: readonly ControlName[], controls: ControlWords, column: string, spot: Spot): boolean {
  if (parts.length < 2) return true;
  const bad = (part: ControlName, problem: string, wayOut: string): false => {
    badValue(spot, part.at, column, problem, [wayOut]);
    return false;
  };
  let groups = 0;
  const seen = new Set<string>();
  for (const part of parts) {
    const text = controlText(part);
    if (part.kind === 'switch' && isTwoPosition(part.name))
      return bad(
        part,
        `the switch “${text}” is never pressed, so it can’t be part of a chord`,
        'Take it out of the chord; a setting set by the switch can stand in `When`.',
      );
    if (controls.turning.has(part.name))
      return bad(
        part,
        `“${text}” turns, so it can’t be part of a chord`,
        'Give it a row of its own with the gesture `turn`.',
      );
    if (controls.groups.has(part.name) && ++groups > 1)
      return bad(
        part,
        `“${text}” is a second group in one chord, so the direction would be unclear`,
        'Name a single direction, or use two rows.',
      );
    if (seen.has(text)) return bad(part, `“${text}” stands twice in one chord`, 'Take one of the two out.');
    seen.add(text);
  }
  return true;
}

/** `left A paddle button`, `stick up`, `RESET`. */
export const controlText = (part: ControlName): string => textOf(part);

function textOf(part: Meaning): string {
  if (part.kind === 'switch') return part.name;
  return [part.port ?? '', part.letter, part.name].filter(word => word !== '').join(' ');
}
