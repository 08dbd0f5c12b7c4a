import { isTwoPosition } from '../hardware/switches.js';
import { type ControlWords, controlText } from './control-words.js';
import { badValue, type Spot } from './faults.js';
import { unknownControl } from './meant-control.js';
import type { Chord, ControlName } from './model.js';
import { tidy } from './spelling.js';
import { placeOf, splitWords, type Words } from './words.js';

export { controlText };

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
  unknownControl(words, controls, spot);
  return null;
}

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
