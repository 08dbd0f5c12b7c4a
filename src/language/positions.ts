import { type Position, SWITCH_NAMES, SWITCHES, type SwitchName } from '../hardware/switches.js';
import { badValue, type Spot } from './faults.js';
import { listWords, nearest, normal, tidy } from './spelling.js';
import type { Words } from './words.js';

export const POSITIONS: readonly Position[] = [
  ...new Set(SWITCH_NAMES.flatMap(name => SWITCHES[name].positions.map(position => position.name))),
];

export function findPosition(text: string): Position | undefined {
  return POSITIONS.find(position => normal(position) === normal(text));
}

export function findSwitch(text: string): SwitchName | undefined {
  const wanted = normal(text);
  return SWITCH_NAMES.find(name => normal(name) === wanted);
}

/** Other words for the positions of TV type, as they are printed on consoles and said by people. */
const ALSO_CALLED: ReadonlyMap<string, Position> = new Map([
  ['colour', 'COLOR'],
  ['b&w', 'B-W'],
  ['black and white', 'B-W'],
  ['black-and-white', 'B-W'],
  ['grey', 'B-W'],
  ['gray', 'B-W'],
]);

/**
 * A finding for words that are no position of the switch.
 *
 * @param otherWays where no position is near
 */
export function noSuchPosition(
  spot: Spot,
  words: Words,
  column: string,
  name: SwitchName,
  otherWays: readonly string[] = [],
): void {
  const positions = positionsOf(name);
  const called = ALSO_CALLED.get(normal(words.text));
  const meant = positions.find(position => position === called) ?? nearest(words.text, positions);
  badValue(spot, words, column, `${name} has no position “${tidy(words.text)}”`, [
    ...(meant !== null ? [`Write “${meant}”.`] : [`Write ${listWords(positions)}.`, ...otherWays]),
  ]);
}

export function positionsOf(name: SwitchName): readonly Position[] {
  return SWITCHES[name].positions.map(position => position.name);
}
