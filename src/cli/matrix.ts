import {
  type MatrixColumn,
  type MatrixRow,
  type MatrixView,
  viewCoverageMatrix,
} from '../checks/coverage/matrix.js';
import type { Coverage } from '../checks/coverage-model.js';
import { visibleText, wrapText } from '../findings/formats/terminal-text.js';
import type { Terminal } from './terminal.js';

/**
 * The coverage matrix for people: modes down, the places in which a game is played across by letter, what the
 * letters stand for, and each cell that is not as designed in a sentence. Told by sign, and by word where there is room.
 */
export function writeMatrix(coverage: Coverage | null, terminal: Terminal): string {
  if (coverage === null) return 'Coverage can’t be told before the errors of the scheme are mended.\n';
  const view = viewCoverageMatrix(coverage);
  return `${[
    tableLines(view, terminal).join('\n'),
    view.key.map(({ symbol, word }) => `${symbol} ${word}`).join('   '),
    view.columns.map((column, index) => placeText(letterOf(index), column)).join('\n'),
    explanations(view, terminal).join('\n'),
  ]
    .filter(part => part !== '')
    .join('\n\n')}\n`;
}

const GAP = 2;

function tableLines({ rows, columns, key }: MatrixView, { width, colours }: Terminal): readonly string[] {
  const first = Math.max(4, ...rows.map(({ mode }) => visibleText(mode).length)) + GAP;
  const words = Math.max(...key.map(({ symbol, word }) => symbol.length + 1 + word.length)) + GAP;
  const hasRoom = first + columns.length * words <= width;
  const cellWidth = hasRoom ? words : Math.max(...columns.map((_, index) => letterOf(index).length)) + GAP;
  const head = columns.map((_, index) => letterOf(index).padEnd(cellWidth)).join('');
  const line = ({ mode, cells }: MatrixRow) =>
    visibleText(mode).padEnd(first) +
    cells.map(({ symbol, word }) => (hasRoom ? `${symbol} ${word}` : symbol).padEnd(cellWidth)).join('');
  return [colours.bold(`${''.padEnd(first)}${head}`.trimEnd()), ...rows.map(row => line(row).trimEnd())];
}

/** A, B … Z, AA, AB … */
function letterOf(index: number): string {
  const letter = String.fromCharCode('A'.charCodeAt(0) + (index % 26));
  return index < 26 ? letter : `${letterOf(Math.floor(index / 26) - 1)}${letter}`;
}

function placeText(letter: string, { consoles, seats, standards }: MatrixColumn): string {
  return visibleText(`${letter}  ${consoles.join(', ')}; ${seats.join(', ')}; ${standards.join(', ')}`);
}

/** A sentence for each kind of fault of a mode, with the places that have it. */
function explanations({ rows }: MatrixView, { width }: Terminal): readonly string[] {
  return rows.flatMap(({ mode, cells }) => {
    const places = new Map<string, string[]>();
    for (const [index, { sentence }] of cells.entries()) {
      if (sentence === '') continue;
      const letters = places.get(sentence) ?? [];
      letters.push(letterOf(index));
      places.set(sentence, letters);
    }
    return [...places].flatMap(([sentence, letters]) =>
      wrapText(visibleText(`${mode}, ${letters.join(' ')}: ${sentence}`), width - GAP).map(
        (line, index) => (index === 0 ? '' : ' '.repeat(GAP)) + line,
      ),
    );
  });
}
