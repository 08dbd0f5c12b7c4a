import type { Spot } from './faults.js';
import { watch } from './keep.js';
import type { BindingRow, Mode } from './model.js';
import { readBindings } from './read-bindings.js';
import type { Scope } from './scope.js';
import type { Section } from './sections.js';
import type { MovingPart } from './source-text.js';
import { findTable, readRows, type TableBlock } from './tables.js';
import { areStill, type Uses, usesOf } from './uses.js';

/** The rows of a mode's table, which need not be read again while nothing they depend on changes. */
export interface ModeRows {
  readonly rows: readonly BindingRow[];
  /** Rows of the table, those that can't be read too. */
  readonly count: number;
  /**
   * False where something was reported about them, or where one was left out because of what was reported elsewhere:
   * then they must be read again.
   */
  readonly isClean: boolean;
  /** Of the table in Markdown. */
  readonly text: string;
  /** The part that their places count in: their own, so that it can be moved. */
  readonly part: MovingPart;
  /** Offset of the table in it. */
  readonly start: number;
  /** All that the rows name. */
  readonly uses: Uses;
}

/** Reads the rows of a mode, or moves those of the last reading to where they stand now. */
export function readModeRows(
  mode: Mode,
  section: Section,
  spot: Spot,
  scope: Scope,
  before: ModeRows | null,
): ModeRows | null {
  const table = findTable(section, spot);
  if (table === null) return null;
  const text = textOf(table);
  if (before?.isClean === true && before.text === text && areStill(before.uses, scope)) {
    moveTo(before, table);
    return before;
  }
  const part: MovingPart = { ...table.part };
  const watched = watch(spot.report);
  const { rows } = readRows({ ...table, part }, section, { ...spot, report: watched.report });
  const read = readBindings(rows, mode, { ...scope, report: watched.report });
  return {
    rows: read,
    count: rows.length,
    isClean: watched.isSilent() && read.length === rows.length,
    text,
    part,
    start: startOf(table),
    uses: usesOf(read, scope),
  };
}

function moveTo({ part, start }: ModeRows, table: TableBlock): void {
  part.source = table.part.source;
  part.base = table.part.base + startOf(table) - start;
}

const startOf = ({ node }: TableBlock): number => node.position?.start.offset ?? 0;

function textOf({ node, part }: TableBlock): string {
  const { source, base } = part;
  return source.text.slice(base + startOf({ node, part }), base + (node.position?.end.offset ?? 0));
}
