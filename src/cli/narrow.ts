import type { Compiled } from '../compile.js';
import type { Finding } from '../findings/finding.js';
import { normal } from '../language/spelling.js';
import { CliError } from './errors.js';

/** The part of the question that is asked: names as the scheme writes them, without regard to case. */
export interface Narrowing {
  readonly console?: string;
  readonly seats?: string;
  readonly standard?: string;
}

type Chosen = { readonly [Key in keyof Narrowing]-?: string | null };

/**
 * What concerns the console, seats row and TV standard asked for. A finding that names none of a kind concerns
 * them all. Throws CliError for a name that the scheme does not have.
 */
export function narrow(compiled: Compiled, narrowing: Narrowing): Compiled {
  if (Object.values(narrowing).every(name => name === undefined)) return compiled;
  const { scheme, coverage } = compiled;
  if (scheme === null) return compiled;
  const chosen: Chosen = {
    console: choose('console', narrowing.console, scheme.consoles),
    seats: choose('seats row', narrowing.seats, scheme.seats),
    standard: choose('TV standard', narrowing.standard, scheme.standards),
  };
  const isChosen = (cell: Cell) =>
    (chosen.console === null || cell.console.name === chosen.console) &&
    (chosen.seats === null || cell.seats.name === chosen.seats) &&
    (chosen.standard === null || cell.standard.name === chosen.standard);
  return {
    ...compiled,
    findings: compiled.findings.flatMap(finding => narrowFinding(finding, chosen)),
    coverage: coverage && {
      cells: coverage.cells.filter(isChosen),
      variations: coverage.variations.filter(isChosen),
    },
  };
}

interface Named {
  readonly name: string;
}

interface Cell {
  readonly console: Named;
  readonly seats: Named;
  readonly standard: Named;
}

function choose(kind: string, wanted: string | undefined, things: readonly Named[]): string | null {
  if (wanted === undefined) return null;
  const found = things.find(({ name }) => normal(name) === normal(wanted));
  if (found !== undefined) return found.name;
  const names = things.map(({ name }) => `“${name}”`).join(', ');
  throw new CliError(`The scheme has no ${kind} “${wanted}”: it has ${names}.`);
}

function narrowFinding(finding: Finding, chosen: Chosen): readonly Finding[] {
  const where = finding.where?.filter(
    ([console, seats, standard]) =>
      isAsked(console, chosen.console) && isAsked(seats, chosen.seats) && isAsked(standard, chosen.standard),
  );
  const keep = (names: readonly string[] | undefined, wanted: string | null, at: 0 | 1 | 2) =>
    names?.filter(name => isAsked(name, wanted) && (where?.some(cell => cell[at] === name) ?? true));
  const consoles = keep(finding.consoles, chosen.console, 0);
  const seats = keep(finding.seats, chosen.seats, 1);
  const standards = keep(finding.standards, chosen.standard, 2);
  const isGone = (before: readonly unknown[] | undefined, after: readonly unknown[] | undefined) =>
    before !== undefined && before.length > 0 && after?.length === 0;
  if (isGone(finding.where, where) || isGone(finding.consoles, consoles)) return [];
  if (isGone(finding.seats, seats) || isGone(finding.standards, standards)) return [];
  return [
    {
      ...finding,
      ...(consoles && { consoles }),
      ...(seats && { seats }),
      ...(standards && { standards }),
      ...(where && { where }),
    },
  ];
}

const isAsked = (name: string, wanted: string | null): boolean => wanted === null || name === wanted;
