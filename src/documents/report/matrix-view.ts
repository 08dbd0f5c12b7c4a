import { whereText } from '../../checks/coverage/where-text.js';
import type { Coverage, CoverageCell, Verdict } from '../../checks/coverage-model.js';
import { listText } from '../../checks/text.js';
import type { Mode, Scheme } from '../../language/model.js';

/** The coverage matrix: modes down; consoles, seats rows and standards across. */
export interface MatrixView {
  /** As many tables as it takes for each to fit its page. */
  readonly panels: readonly MatrixPanel[];
  readonly explanations: readonly Explanation[];
  readonly counts: Readonly<Record<Verdict, number>>;
}

export interface MatrixPanel {
  readonly consoles: readonly ColumnGroup[];
  readonly seats: readonly ColumnGroup[];
  readonly standards: readonly string[];
  readonly rows: readonly MatrixRow[];
}

/** A heading and how many columns it spans. */
export interface ColumnGroup {
  readonly name: string;
  readonly span: number;
}

export interface MatrixRow {
  readonly mode: string;
  readonly kind: string;
  readonly cells: readonly MatrixCell[];
}

export interface MatrixCell {
  readonly verdict: Verdict;
  /** Number of its explanation; null where it needs none. */
  readonly note: number | null;
}

/** Why some cells are what they are, in one sentence. */
export interface Explanation {
  readonly number: number;
  readonly verdict: Verdict;
  readonly text: string;
}

/** Columns that fit the page beside the names of the modes. */
const MOST_COLUMNS = 14;

export function viewMatrix(coverage: Coverage, scheme: Scheme): MatrixView {
  const { explanations, numbers } = explain(coverage.cells, scheme);
  const columns = joinStandards(columnsOf(coverage.cells));
  return {
    panels: splitColumns(columns).map(part => viewPanel(part, scheme.modes, numbers)),
    explanations,
    counts: countVerdicts(coverage.cells),
  };
}

/** The cells of one console, seats row and standard (or several that are alike: those of the first), by mode. */
interface Column {
  readonly console: string;
  readonly seats: string;
  readonly standard: string;
  readonly cells: ReadonlyMap<Mode, CoverageCell>;
}

function columnsOf(cells: readonly CoverageCell[]): readonly Column[] {
  const columns = new Map<string, Column & { readonly cells: Map<Mode, CoverageCell> }>();
  for (const cell of cells) {
    const names = { console: cell.console.name, seats: cell.seats.name, standard: cell.standard.name };
    const key = JSON.stringify(names);
    const column = columns.get(key) ?? { ...names, cells: new Map() };
    column.cells.set(cell.mode, cell);
    columns.set(key, column);
  }
  return [...columns.values()];
}

/** Standards of one console and seats row on which every mode plays alike share a column. */
function joinStandards(columns: readonly Column[]): readonly Column[] {
  const joined: Column[] = [];
  for (const column of columns) {
    const at = joined.findIndex(other => isAlike(other, column));
    const other = joined[at];
    if (other === undefined) joined.push(column);
    else joined[at] = { ...other, standard: `${other.standard}, ${column.standard}` };
  }
  return joined;
}

function isAlike(a: Column, b: Column): boolean {
  if (a.console !== b.console || a.seats !== b.seats) return false;
  return [...a.cells].every(([mode, cell]) => {
    const other = b.cells.get(mode);
    return other?.verdict === cell.verdict && other.reasons.join('\n') === cell.reasons.join('\n');
  });
}

/** Splits between consoles where it can, inside one where it must. */
function splitColumns(columns: readonly Column[]): readonly (readonly Column[])[] {
  const parts: Column[][] = [];
  for (const console of new Set(columns.map(column => column.console))) {
    const own = columns.filter(column => column.console === console);
    const last = parts.at(-1);
    if (last !== undefined && last.length + own.length <= MOST_COLUMNS) {
      last.push(...own);
      continue;
    }
    for (let start = 0; start < own.length; start += MOST_COLUMNS) {
      parts.push(own.slice(start, start + MOST_COLUMNS));
    }
  }
  return parts;
}

function viewPanel(
  columns: readonly Column[],
  modes: readonly Mode[],
  numbers: ReadonlyMap<CoverageCell, number>,
): MatrixPanel {
  return {
    consoles: groupsOf(columns, ({ console }) => [console]),
    seats: groupsOf(columns, ({ console, seats }) => [console, seats]),
    standards: columns.map(({ standard }) => standard),
    rows: modes.map(mode => ({
      mode: mode.name,
      kind: mode.kind,
      cells: columns.map(({ cells }) => {
        const cell = cells.get(mode);
        return {
          verdict: cell?.verdict ?? 'not offered',
          note: (cell && numbers.get(cell)) ?? null,
        };
      }),
    })),
  };
}

function groupsOf(
  columns: readonly Column[],
  pathOf: (column: Column) => readonly string[],
): readonly ColumnGroup[] {
  const groups: { name: string; span: number; key: string }[] = [];
  for (const column of columns) {
    const path = pathOf(column);
    const key = JSON.stringify(path);
    const last = groups.at(-1);
    if (last?.key === key) last.span += 1;
    else groups.push({ name: path.at(-1) ?? '', span: 1, key });
  }
  return groups.map(({ name, span }) => ({ name, span }));
}

/** One sentence for all cells of the same verdict, reasons, and consoles, seats rows and standards. */
function explain(cells: readonly CoverageCell[], scheme: Scheme) {
  const byReason = new Map<string, CoverageCell[]>();
  for (const cell of cells) {
    if (cell.reasons.length === 0 || cell.verdict === 'plays' || cell.verdict === 'not offered') continue;
    const key = JSON.stringify([cell.verdict, cell.reasons]);
    byReason.set(key, [...(byReason.get(key) ?? []), cell]);
  }
  const explanations: Explanation[] = [];
  const numbers = new Map<CoverageCell, number>();
  for (const group of byReason.values()) {
    for (const [where, same] of byPlace(group, scheme)) {
      const number = explanations.length + 1;
      for (const cell of same) numbers.set(cell, number);
      explanations.push(writeExplanation(number, where, same));
    }
  }
  return { explanations, numbers };
}

function byPlace(
  cells: readonly CoverageCell[],
  scheme: Scheme,
): ReadonlyMap<string, readonly CoverageCell[]> {
  const places = new Map<string, CoverageCell[]>();
  for (const mode of new Set(cells.map(cell => cell.mode))) {
    const own = cells.filter(cell => cell.mode === mode);
    const where = whereText(own, scheme);
    places.set(where, [...(places.get(where) ?? []), ...own]);
  }
  return places;
}

function writeExplanation(number: number, where: string, cells: readonly CoverageCell[]): Explanation {
  const [first] = cells;
  const modes = [...new Set(cells.map(({ mode }) => mode.name))];
  const verdict = first?.verdict ?? 'plays';
  const are = modes.length === 1 ? 'is' : 'are';
  return {
    number,
    verdict,
    text: `${listText(modes)} ${are} ${verdict} ${where}: ${(first?.reasons ?? []).join('; ')}.`,
  };
}

function countVerdicts(cells: readonly CoverageCell[]): Readonly<Record<Verdict, number>> {
  const counts = { plays: 0, altered: 0, broken: 0, 'not offered': 0 };
  for (const { verdict } of cells) counts[verdict] += 1;
  return counts;
}
