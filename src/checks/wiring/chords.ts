import type { Report } from '../../findings/report.js';
import type { Binding } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import type { Chord, SeatsRow } from '../../language/model.js';
import type { CheckedRow } from '../checked-row.js';
import { detailsOfBindings, listText, unique } from '../text.js';

interface FoundChord<Fault> {
  readonly seats: SeatsRow;
  readonly binding: Binding;
  readonly fault: Fault;
}

/** `impossible-chord` and `ghost-chord`: one finding for each chord of a row. */
export function checkChords(rows: readonly CheckedRow[], report: Report): void {
  for (const row of rows) {
    row.alternatives.forEach((chord, alternative) => {
      if (chord.parts.length < 2) return;
      reportOpposites(row, chord, findFaults(row, alternative, oppositesIn), report);
      reportGhosts(row, chord, findFaults(row, alternative, ghostOf), report);
    });
  }
}

function findFaults<Fault>(
  row: CheckedRow,
  alternative: number,
  find: (parts: readonly Contact[]) => Fault | null,
): readonly FoundChord<Fault>[] {
  return [...row.bindings].flatMap(([seats, bindings]) =>
    bindings
      .filter(binding => binding.alternative === alternative)
      .flatMap(binding => {
        const fault = find(binding.parts);
        return fault === null ? [] : [{ seats, binding, fault }];
      }),
  );
}

type Opposites = readonly [first: string, second: string];

function oppositesIn(parts: readonly Contact[]): Opposites | null {
  const controls = parts.flatMap(part => (part.kind === 'control' ? [part] : []));
  for (const { port, controller } of controls) {
    const has = (name: string) => controls.some(part => part.port === port && part.control.name === name);
    const found = controller.opposites.find(([one, other]) => has(one) && has(other));
    if (found !== undefined) return found;
  }
  return null;
}

function reportOpposites(
  row: CheckedRow,
  chord: Chord,
  found: readonly FoundChord<Opposites>[],
  report: Report,
): void {
  if (found[0] === undefined) return;
  const [first, second] = found[0].fault;
  report(
    'impossible-chord',
    chord.at,
    { action: row.actionName, mode: row.mode.name, first, second },
    { ...detailsOfBindings(row, found), controls: [first, second] },
  );
}

interface Ghost {
  /** The three corners, by name. */
  readonly keys: readonly string[];
  readonly ghost: string;
}

/** The first three keys of one keypad that make three corners of a rectangle, and the fourth. */
function ghostOf(parts: readonly Contact[]): Ghost | null {
  const keys = parts.flatMap(part =>
    part.kind === 'control' && part.control.wiring.kind === 'matrix'
      ? [{ part, row: part.control.wiring.row, column: part.control.wiring.column }]
      : [],
  );
  for (const corner of keys) {
    const onPort = keys.filter(({ part }) => part.port === corner.part.port);
    const beside = onPort.find(key => key.row === corner.row && key.column !== corner.column);
    const below = onPort.find(key => key.column === corner.column && key.row !== corner.row);
    if (beside === undefined || below === undefined) continue;
    const ghost = corner.part.controller.controls.find(
      ({ wiring }) => wiring.kind === 'matrix' && wiring.row === below.row && wiring.column === beside.column,
    );
    const corners = onPort.filter(key => key === corner || key === beside || key === below);
    if (ghost !== undefined) return { keys: corners.map(({ part }) => part.control.name), ghost: ghost.name };
  }
  return null;
}

function reportGhosts(
  row: CheckedRow,
  chord: Chord,
  found: readonly FoundChord<Ghost>[],
  report: Report,
): void {
  if (found[0] === undefined) return;
  const { keys, ghost } = found[0].fault;
  report(
    'ghost-chord',
    chord.at,
    { action: row.actionName, mode: row.mode.name, keys: listText(keys), ghost },
    { ...detailsOfBindings(row, found), controls: unique([...keys, ghost]) },
  );
}
