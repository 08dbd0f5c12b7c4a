import { badPlace, badValue, type Spot, WRITE_ANEW } from './faults.js';
import { invisibleIn, withoutInvisible, withoutJoiners } from './invisible.js';
import { isName, tidy } from './spelling.js';
import { placeOf, type Words } from './words.js';

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
  else if (name === '') badValue(spot, words, column, 'the name is empty', ['Write a name.']);
  else if (!isName(name)) badCharacter(words, name, column, spot);
  return name;
}

function badCharacter(words: Words, name: string, column: string, spot: Spot): void {
  const invisible = invisibleIn(name);
  const seen = withoutInvisible(name);
  const strange = STRANGE.exec(withoutJoiners(seen))?.[0];
  if (strange === undefined && invisible !== null) {
    const problem = `in the name “${seen}” stands ${invisible}, which nobody can see`;
    badValue(spot, words, column, problem, [WRITE_ANEW]);
    return;
  }
  const problem =
    strange === undefined
      ? `the name “${name}” has neither a letter nor a digit`
      : `the name “${seen}” holds the character “${strange}”, which names can’t have`;
  badPlace(spot, placeOf(words), `“${column}”${spot.of}`, problem, [
    "Use letters, digits, spaces, “-”, “'” and “.” only, with at least one letter or digit.",
  ]);
}

/** What a name may not hold: a whole sign, accents and joiners included. */
const STRANGE = /[^\p{L}\p{M}\p{N}\s\-'’.]/u;

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
