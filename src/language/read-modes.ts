import type { RootContent } from 'mdast';
import type { Place } from '../findings/place.js';
import type { Report } from '../findings/report.js';
import { AMOUNTS, withinAmount } from './amounts.js';
import { proseOf } from './document.js';
import { isFactList, readFacts } from './facts.js';
import { badPlace, createSpot, notOneOf, type Spot } from './faults.js';
import type { BindingRow, Mode, ModeKind, SeatsRow } from './model.js';
import { createNames, type Names } from './names.js';
import { readName } from './naming.js';
import { readBindings } from './read-bindings.js';
import { readSeatsList } from './read-seats.js';
import type { Scope } from './scope.js';
import type { Section } from './sections.js';
import { normal, tidy } from './spelling.js';
import { readTable } from './tables.js';
import { placeOf, type Words } from './words.js';

const KEYS = ['Seats', 'Kind'];
const KINDS: readonly ModeKind[] = ['menu', 'play', 'pause'];

/** A mode whose rows are still to be read: they can name modes that come later. */
interface ModeBeingFilled {
  readonly mode: Mode & { readonly rows: BindingRow[] };
  readonly at: Place;
  readonly section: Section;
  readonly spot: Spot;
  /** Where `Seats` is said; null where it is left out. */
  readonly seatsAt: Place | null;
}

export interface Modes {
  readonly names: Names<Mode>;
  /** Reads every mode's table of bindings. */
  readonly fill: (scope: Scope) => void;
  /** Where the mode's `Seats` is said; null where it is left out. */
  readonly seatsAt: (mode: Mode) => Place | null;
}

export function readModes(sections: readonly Section[], seats: Names<SeatsRow>, report: Report): Modes {
  const names = createNames<Mode>('mode', 'modes');
  const begun: ModeBeingFilled[] = [];
  const plain = createSpot(report, '');
  const amount = { most: AMOUNTS.modes, what: 'modes', where: 'The scheme', wayOut: SPLIT };
  for (const section of withinAmount(sections, amount, plain, ({ title }) => placeOf(title))) {
    const name = readName(section.title, 'Mode', plain);
    const read = readMode(section, name, seats, report);
    if (names.add(name, read.mode, section.title, plain)) begun.push(read);
  }
  for (const { title } of sections.slice(AMOUNTS.modes)) names.addUnclear(tidy(title.text));
  return {
    names,
    fill(scope) {
      let left: number = AMOUNTS.bindings;
      for (const { mode, section, spot } of begun) {
        const { rows } = readTable(section, spot);
        if (rows.length > left && left >= 0) tooManyBindings(mode, spot);
        left -= rows.length;
        if (left >= 0) mode.rows.push(...readBindings(rows, mode, scope));
      }
    },
    seatsAt: wanted => begun.find(({ mode }) => mode === wanted)?.seatsAt ?? null,
  };
}

const SPLIT = 'Split the game into several schemes.';

function tooManyBindings({ at }: Mode, spot: Spot): void {
  const problem = `the modes have more than ${AMOUNTS.bindings} rows together, which is the limit: from this mode on they are not read`;
  badPlace(spot, at, 'The scheme', problem, [SPLIT]);
}

function readMode(section: Section, name: string, seats: Names<SeatsRow>, report: Report): ModeBeingFilled {
  const spot = createSpot(report, ` of “${name}”`, { mode: name });
  const facts = readFacts(section.blocks, KEYS, spot);
  const listed = facts.get('Seats');
  const rows = listed === undefined ? null : readSeatsList(listed, seats, 'Seats', spot);
  const at = placeOf(section.title);
  const mode = {
    name,
    at,
    kind: readKind(facts.get('Kind'), spot),
    seats: rows ?? seats.all(),
    prose: proseOf(section.blocks.filter(({ node }) => !isRead(node))),
    rows: [],
  };
  return { mode, at, section, spot, seatsAt: listed === undefined ? null : placeOf(listed) };
}

/** Acted on by the compiler; everything else in a mode is prose. */
function isRead(node: RootContent): boolean {
  return node.type === 'table' || (node.type === 'list' && isFactList(node, KEYS));
}

function readKind(words: Words | undefined, spot: Spot): ModeKind {
  if (words === undefined) return 'play';
  const kind = KINDS.find(candidate => candidate === normal(words.text));
  if (kind === undefined) notOneOf(spot, words, 'Kind', KINDS);
  return kind ?? 'play';
}
