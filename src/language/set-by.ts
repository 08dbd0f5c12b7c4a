import { isTwoPosition, type Position, type TwoPositionSwitchName } from '../hardware/switches.js';
import { badValue, type Spot, unknownName } from './faults.js';
import type { SetBy } from './model.js';
import { findPosition, findSwitch, positionsOf } from './positions.js';
import { listWords, normal, tidy } from './spelling.js';
import { findValue, noSuchValue, type ReadValues } from './values.js';
import { placeOf, sliceWords, splitWords, type Words } from './words.js';

const SETTERS = ['game', 'TV type', 'left difficulty', 'right difficulty'];

/** What the column `Set by` is about. */
interface Context {
  readonly setting: string;
  /** Null where its values can't be read: then what is said of them is not looked at. */
  readonly values: ReadValues | null;
  readonly spot: Spot;
}

/** `game`, or a two-position switch with a value for each position; null (and a finding) where it is neither. */
export function readSetBy(words: Words, context: Context): SetBy | null {
  const { spot, setting } = context;
  if (normal(words.text) === 'game') return { kind: 'game' };
  const colon = words.text.indexOf(':');
  const panel = sliceWords(words, 0, colon < 0 ? undefined : colon);
  const name = findSwitch(panel.text);
  if (name === undefined) {
    unknownName(spot, panel, 'switch', SETTERS, 'Write `game` if the game sets it.');
    return null;
  }
  if (!isTwoPosition(name)) {
    badValue(
      spot,
      panel,
      'Set by',
      `“${name}” is pressed and let go, so it has no position that could set a value`,
      [`Write \`game\`, and let a row with \`Then: ${setting}: next\` change it.`],
    );
    return null;
  }
  const pairs = colon < 0 ? [] : splitWords(sliceWords(words, colon + 1), /[,;]/g);
  const values = readPositions(pairs, name, words, context);
  return values === null ? null : { kind: 'switch', name, values, at: placeOf(words) };
}

/** `B gentle, A strong` */
function readPositions(
  pairs: readonly Words[],
  name: TwoPositionSwitchName,
  whole: Words,
  context: Context,
): ReadonlyMap<Position, string> | null {
  const positions = positionsOf(name);
  const read = new Map<Position, string>();
  let complete = true;
  for (const pair of pairs) {
    const [position, value] = readPair(pair, name, whole, context) ?? [];
    if (position === undefined || value === undefined) complete = false;
    else if (read.has(position))
      badValue(context.spot, pair, 'Set by', `position ${position} is given twice`, [
        'Take one of the two out.',
      ]);
    else read.set(position, value);
  }
  if (!complete) return null;
  const missing = positions.filter(position => !read.has(position));
  if (missing.length === 0) return read;
  badValue(context.spot, whole, 'Set by', `no value is given for position ${missing.join(' and ')}`, [
    `Write “${name}: ${positions.map(position => `${position} …`).join(', ')}”.`,
  ]);
  return null;
}

function readPair(
  pair: Words,
  name: TwoPositionSwitchName,
  whole: Words,
  { setting, values, spot }: Context,
): readonly [Position, string] | null {
  const positions = positionsOf(name);
  const word = /^\S+/.exec(pair.text)?.[0] ?? '';
  const position = findPosition(word);
  if (position === undefined || !positions.includes(position)) {
    const at = word === '' ? whole : sliceWords(pair, 0, word.length);
    const problem = word === '' ? 'a position is missing' : `“${word}” is not a position of ${name}`;
    badValue(spot, at, 'Set by', problem, [
      `Write ${listWords(positions, 'and')}, each with a value after it.`,
    ]);
    return null;
  }
  const words = sliceWords(pair, word.length);
  if (words.text === '') {
    badValue(spot, pair, 'Set by', `position ${position} has no value`, [
      `Write a value after “${position}”.`,
    ]);
    return null;
  }
  const value = findValue(values?.values ?? [], words.text);
  if (value !== undefined || values?.complete !== true) return [position, value ?? tidy(words.text)];
  noSuchValue(setting, values.values, words, 'Set by', spot);
  return null;
}
