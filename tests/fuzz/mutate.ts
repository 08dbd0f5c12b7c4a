import type { Random } from '../support/random.js';
import { HOSTILE_CELLS, HOSTILE_PIECES } from './hostile-text.js';

/** A change to a text; it may leave it as it is. */
type Change = (text: string, random: Random) => string;

/** What the fuzzer does to a scheme, 1 to `most` times. */
export function mutate(text: string, random: Random, most = 6): string {
  let changed = text;
  for (let count = 1 + random.below(most); count > 0; count--)
    changed = random.pick(CHANGES)(changed, random);
  return changed;
}

/** Changes one section only: what stands between two level-2 headings. */
export function mutateSection(text: string, random: Random): string {
  const sections = text.split(/^(?=## )/m);
  const at = random.below(sections.length);
  return sections.map((section, index) => (index === at ? mutate(section, random, 2) : section)).join('');
}

/** Puts hostile text wherever the language takes any words: sentences, reasons, the version, prose. */
export function withHostileWords(scheme: string, random: Random): string {
  let column = -1;
  const lines = scheme.split('\n').map(line => {
    if (!line.startsWith('|')) {
      column = -1;
      const isProse = /^[A-Z][a-z]/.test(line);
      return isProse && random.chance(0.5) ? `${line} ${random.pick(HOSTILE_CELLS).text}` : line;
    }
    const cells = line.split('|');
    const words = cells.findIndex(cell => FREE_WORDS.test(cell));
    if (words >= 0) {
      column = words;
      return line;
    }
    if (column < 0 || /^[|\s:-]*$/.test(line) || random.chance(0.5)) return line;
    return cells.with(Math.min(column, cells.length - 2), ` ${random.pick(HOSTILE_CELLS).text} `).join('|');
  });
  return lines.join('\n');
}

/** Heads of columns that hold any words. */
const FREE_WORDS = /^\s*(?:Say it as|Why)\s*$/;

const CHANGES: readonly Change[] = [
  onLines((lines, at) => lines.toSpliced(at, 1)),
  onLines((lines, at) => lines.toSpliced(at, 0, lines[at] ?? '')),
  onLines((lines, at, random) => swapped(lines, at, random.below(lines.length))),
  onLines((lines, at, random) => lines.toSpliced(at, 0, random.pick(HOSTILE_PIECES))),
  onCells((cells, at) => cells.toSpliced(at, 1)),
  onCells((cells, at) => cells.toSpliced(at, 0, cells[at] ?? '')),
  onCells((cells, at, random) => swapped(cells, at, random.below(cells.length))),
  onCells((cells, at, random) => cells.toSpliced(at, 1, random.pick(HOSTILE_CELLS).text)),
  onCells((cells, at, random) => cells.toSpliced(at, 1, random.pick(HOSTILE_CELLS).text)),
  onCells((cells, at, random) => cells.toSpliced(at, 1, `${cells[at]}${random.pick(HOSTILE_CELLS).text}`)),
  swapCellsOfRows,
  swapCellsOfRows,
  atPlace((text, at) => text.slice(0, at) + text.slice(at + 1)),
  atPlace((text, at) => text.slice(0, at) + text.charAt(at) + text.slice(at)),
  atPlace((text, at, random) => text.slice(0, at) + random.pick(HOSTILE_PIECES) + text.slice(at)),
  atPlace((text, at, random) => swapped([...text], at, random.below(text.length)).join('')),
  swapWords,
  swapSections,
  (text, random) => (random.chance(0.1) ? text.slice(0, random.below(text.length + 1)) : text),
  (text, random) => (random.chance(0.2) ? `\ufeff${text}` : text),
];

function swapped<T>(list: readonly T[], one: number, other: number): readonly T[] {
  const changed = [...list];
  const [first, second] = [list[one], list[other]];
  if (first === undefined || second === undefined) return list;
  changed[one] = second;
  changed[other] = first;
  return changed;
}

function onLines(
  change: (lines: readonly string[], at: number, random: Random) => readonly string[],
): Change {
  return (text, random) => {
    const lines = text.split('\n');
    return change(lines, random.below(lines.length), random).join('\n');
  };
}

/** Of one row of a table. */
function onCells(
  change: (cells: readonly string[], at: number, random: Random) => readonly string[],
): Change {
  return onLines((lines, _, random) => {
    const rows = lines.flatMap((line, index) => (line.startsWith('|') ? [index] : []));
    if (rows.length === 0) return lines;
    const at = random.pick(rows);
    const cells = (lines[at] ?? '').split('|').slice(1, -1);
    if (cells.length === 0) return lines;
    const changed = change(cells, random.below(cells.length), random);
    return lines.toSpliced(at, 1, `|${changed.join('|')}|`);
  });
}

/** What one row says in a column, another now says. */
function swapCellsOfRows(text: string, random: Random): string {
  const lines = text.split('\n');
  const rows = lines.flatMap((line, index) => (line.startsWith('| ') ? [index] : []));
  if (rows.length < 2) return text;
  const place = random.below(rows.length - 1);
  const [one = 0, other = 0] = [rows[place], rows[place + 1]];
  const [mine, theirs] = [(lines[one] ?? '').split('|'), (lines[other] ?? '').split('|')];
  const column = 1 + random.below(Math.max(1, Math.min(mine.length, theirs.length) - 2));
  const [mineNow, theirsNow] = [
    mine.with(column, theirs[column] ?? ''),
    theirs.with(column, mine[column] ?? ''),
  ];
  return lines.with(one, mineNow.join('|')).with(other, theirsNow.join('|')).join('\n');
}

function atPlace(change: (text: string, at: number, random: Random) => string): Change {
  return (text, random) => change(text, random.below(text.length), random);
}

function swapWords(text: string, random: Random): string {
  const words = text.split(/(\s+)/);
  return swapped(words, random.below(words.length), random.below(words.length)).join('');
}

function swapSections(text: string, random: Random): string {
  const sections = text.split(/^(?=## )/m);
  return swapped(sections, random.below(sections.length), random.below(sections.length)).join('');
}
