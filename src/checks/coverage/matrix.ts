import type { Coverage, CoverageCell, Verdict } from '../coverage-model.js';

/** The coverage matrix as plain data: modes down; consoles, seats rows and standards across. */
export interface MatrixView {
  readonly columns: readonly MatrixColumn[];
  readonly rows: readonly MatrixRow[];
  /** Every verdict that occurs, for a key beneath the matrix. */
  readonly key: readonly VerdictMark[];
}

/** Neighbouring situations that do not differ in any row; one situation where nothing is merged. */
export interface MatrixColumn {
  readonly covers: readonly { readonly console: string; readonly seats: string; readonly standard: string }[];
  /** In the scheme's order; those of `covers`. */
  readonly consoles: readonly string[];
  readonly seats: readonly string[];
  readonly standards: readonly string[];
}

export interface MatrixRow {
  readonly mode: string;
  /** One for each column. */
  readonly cells: readonly MatrixCell[];
}

export interface MatrixCell extends VerdictMark {
  /** One sentence; empty where the mode plays or is not offered. */
  readonly sentence: string;
}

/** A verdict told by shape and by word, so that it needs no colour. */
export interface VerdictMark {
  readonly verdict: Verdict;
  readonly symbol: string;
  readonly word: string;
}

export const VERDICT_MARKS: Readonly<Record<Verdict, VerdictMark>> = {
  plays: { verdict: 'plays', symbol: '●', word: 'plays' },
  altered: { verdict: 'altered', symbol: '◐', word: 'altered' },
  broken: { verdict: 'broken', symbol: '✕', word: 'broken' },
  'not offered': { verdict: 'not offered', symbol: '–', word: 'not offered' },
};

export interface MatrixOptions {
  /** Whether neighbouring columns that say the same become one. On if left out. */
  readonly merge?: boolean;
}

export function viewCoverageMatrix({ cells }: Coverage, { merge = true }: MatrixOptions = {}): MatrixView {
  const columns = columnsOf(cells);
  const merged = merge ? mergeAlike(columns) : columns.map(column => [column] as const);
  const modes = [...new Set(cells.map(({ mode }) => mode))];
  const occurring = new Set(cells.map(({ verdict }) => verdict));
  return {
    columns: merged.map(viewColumn),
    rows: modes.map(mode => ({
      mode: mode.name,
      cells: merged.flatMap(([first = []]) => first.filter(cell => cell.mode === mode).map(viewCell)),
    })),
    key: Object.values(VERDICT_MARKS).filter(({ verdict }) => occurring.has(verdict)),
  };
}

/** The cells of one situation, in the order of the modes. */
type Column = readonly CoverageCell[];

function columnsOf(cells: readonly CoverageCell[]): readonly Column[] {
  const columns: CoverageCell[][] = [];
  for (const cell of cells) {
    const last = columns.at(-1);
    const isSame =
      last?.[0]?.console === cell.console &&
      last[0].seats === cell.seats &&
      last[0].standard === cell.standard;
    if (last !== undefined && isSame) last.push(cell);
    else columns.push([cell]);
  }
  return columns;
}

function mergeAlike(columns: readonly Column[]): readonly (readonly Column[])[] {
  const runs: Column[][] = [];
  for (const column of columns) {
    const last = runs.at(-1);
    if (last?.[0] !== undefined && isAlike(last[0], column)) last.push(column);
    else runs.push([column]);
  }
  return runs;
}

const isAlike = (one: Column, other: Column): boolean =>
  one.every((cell, index) => {
    const its = other[index];
    return its !== undefined && cell.verdict === its.verdict && sentenceOf(cell) === sentenceOf(its);
  });

function viewColumn(run: readonly Column[]): MatrixColumn {
  const covers = run.flatMap(column =>
    column.slice(0, 1).map(({ console, seats, standard }) => ({
      console: console.name,
      seats: seats.name,
      standard: standard.name,
    })),
  );
  return {
    covers,
    consoles: [...new Set(covers.map(({ console }) => console))],
    seats: [...new Set(covers.map(({ seats }) => seats))],
    standards: [...new Set(covers.map(({ standard }) => standard))],
  };
}

const viewCell = (cell: CoverageCell): MatrixCell => ({
  ...VERDICT_MARKS[cell.verdict],
  sentence: sentenceOf(cell),
});

/** `Can’t be reached; “Wind” stays “mild”.` */
function sentenceOf({ reasons }: CoverageCell): string {
  const text = reasons.join('; ');
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
