/**
 * A text as lines that fit a width: broken at spaces, and inside a word only where the word alone is too wide.
 *
 * @param measure the width of a text in the unit of `width`
 */
export function breakLines(
  text: string,
  width: number,
  measure: (text: string) => number,
): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap(part => breakWord(part, width, measure))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line === '' || measure(longer) <= width) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line];
}

function breakWord(word: string, width: number, measure: (text: string) => number): readonly string[] {
  if (measure(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && measure(piece + character) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return piece === '' ? pieces : [...pieces, piece];
}
