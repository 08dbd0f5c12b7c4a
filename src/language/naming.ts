import { badValue, type Spot } from './faults.js';
import { isName, tidy } from './spelling.js';
import type { Words } from './words.js';

/** Words that join conditions and alternatives, so that names of settings, values and controls can't hold them. */
const JOINING = /(?:^|\s)(is|not|and|or)(?:\s|$)/i;

/** Longest name, in UTF-16 code units. */
const LONGEST_NAME = 80;

/** The name as it is kept; a finding where it holds what a name may not. */
export function readName(words: Words, column: string, spot: Spot): string {
  const name = tidy(words.text);
  const shown = name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME)}…` : name;
  if (name.length > LONGEST_NAME)
    badValue(spot, words, column, `the name “${shown}” is longer than ${LONGEST_NAME} characters`, [
      'Choose a shorter name; the whole sentence can stand in `Say it as`.',
    ]);
  else if (!isName(name))
    badValue(spot, words, column, `the name “${shown}” holds a character that names can’t have`, [
      "Use letters, digits, spaces, “-”, “'” and “.” only, with at least one letter or digit.",
    ]);
  return name;
}

/** As `readName`, for a setting, a value or a control. */
export function readPlainName(words: Words, column: string, spot: Spot): string {
  const name = readName(words, column, spot);
  const word = JOINING.exec(name)?.[1];
  if (word !== undefined)
    badValue(
      spot,
      words,
      column,
      `the name “${name}” holds the word “${word}”, which joins words in a scheme`,
      ['Choose a name without the words “is”, “not”, “and” and “or”.'],
    );
  return name;
}
