import { relatedTo } from '../../findings/finding.js';
import type { Place } from '../../findings/place.js';
import type { Report } from '../../findings/report.js';
import type { Controller } from '../../hardware/controllers.js';
import type { Port, PortLine } from '../../hardware/ports.js';
import type { Scheme, SeatsRow } from '../../language/model.js';
import type { CheckedRow } from '../checked-row.js';
import { detailsOf, unique } from '../text.js';

/** An own controller's control where a row uses it. */
interface Use {
  readonly row: CheckedRow;
  readonly seats: SeatsRow;
  readonly port: Port;
  readonly controller: Controller;
  readonly control: string;
  readonly line: PortLine;
  readonly at: Place;
}

/** A pair of controls of one controller, both used in one mode and seats row, that come out on one line. */
interface Clash {
  readonly first: Use;
  readonly second: Use;
  readonly seats: string[];
}

/** `shared-line`: one finding for each mode and pair of controls. */
export function checkLines(scheme: Scheme, rows: readonly CheckedRow[], report: Report): void {
  if (scheme.controllers.length === 0) return;
  for (const mode of scheme.modes) {
    const uses = rows.filter(row => row.mode === mode).flatMap(usesOf);
    for (const clash of clashesIn(uses)) reportClash(scheme, clash, report);
  }
}

function usesOf(row: CheckedRow): readonly Use[] {
  return [...row.bindings].flatMap(([seats, bindings]) =>
    bindings.flatMap(({ parts, alternative }) =>
      parts.flatMap((part, index) => {
        if (part.kind !== 'control' || !part.controller.own || part.control.wiring.kind !== 'contact')
          return [];
        const at = row.alternatives[alternative]?.parts[index]?.at ?? row.at;
        const { port, controller, control } = part;
        return [{ row, seats, port, controller, control: control.name, line: part.control.wiring.line, at }];
      }),
    ),
  );
}

function clashesIn(uses: readonly Use[]): readonly Clash[] {
  const clashes = new Map<string, Clash>();
  uses.forEach((second, index) => {
    for (const first of uses.slice(0, index)) {
      if (!isClash(first, second)) continue;
      const key = [second.controller.name, ...[first.control, second.control].sort()].join('\n');
      const clash = clashes.get(key) ?? { first, second, seats: [] };
      clash.seats.push(second.seats.name);
      clashes.set(key, clash);
    }
  });
  return [...clashes.values()];
}

function isClash(first: Use, second: Use): boolean {
  return (
    first.seats === second.seats &&
    first.port === second.port &&
    first.line === second.line &&
    first.control !== second.control
  );
}

function reportClash(scheme: Scheme, { first, second, seats }: Clash, report: Report): void {
  const { controller, line } = second;
  const own = scheme.controllers.find(candidate => candidate.controller === controller);
  const related = [first.control, second.control].flatMap(control => {
    const at = own?.controlsAt.get(control);
    return at === undefined ? [] : [relatedTo(at, `${control} is wired to ${line} here`)];
  });
  report(
    'shared-line',
    second.at,
    {
      first: first.control,
      second: second.control,
      controller: controller.name,
      mode: second.row.mode.name,
      line,
    },
    {
      ...detailsOf(second.row),
      seats: unique(seats),
      actions: unique([first.row.actionName, second.row.actionName]),
      controls: [first.control, second.control],
      related,
    },
  );
}
