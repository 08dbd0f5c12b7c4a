import type { RootContent } from 'mdast';
import type { Place } from '../findings/place.js';
import type { Report } from '../findings/report.js';
import { isSameList } from '../memory.js';
import { AMOUNTS, withinAmount } from './amounts.js';
import { type Block, proseOf } from './document.js';
import { isFactList, readFacts } from './facts.js';
import { badPlace, createSpot, notOneOf, type Spot } from './faults.js';
import type { Keeper } from './keep.js';
import { type ModeRows, readModeRows } from './mode-rows.js';
import type { BindingRow, Mode, ModeKind, SeatsRow } from './model.js';
import { createNames, type Names } from './names.js';
import { readName } from './naming.js';
import { readSeatsList } from './read-seats.js';
import type { Scope } from './scope.js';
import type { Section } from './sections.js';
import { normal, tidy } from './spelling.js';
import { placeOf, type Words } from './words.js';

export const MODE_KEYS = ['Seats', 'Kind'];
const KINDS: readonly ModeKind[] = ['menu', 'play', 'pause'];

/** A mode whose rows are still to be read: they can name modes that come later. */
interface ModeBeingFilled {
  readonly kept: KeptMode;
  readonly section: Section;
  readonly spot: Spot;
  /** Where `Seats` is said; null where it is left out. */
  readonly seatsAt: Place | null;
}

/** A mode goes from one reading to the next as the same object, as rows of other modes lead to it. */
interface KeptMode {
  readonly mode: MovingMode;
  /** Sets what the mode's prose is made of, when someone asks for it. */
  readonly setProse: (blocks: readonly Block[]) => void;
  rows: ModeRows | null;
}

type MovingMode = Mode & { at: Place; rows: readonly BindingRow[] };

export interface Modes {
  readonly names: Names<Mode>;
  /** Reads every mode's table of bindings. */
  readonly fill: (scope: Scope) => void;
  /** The modes whose rows could all be read. */
  readonly whole: () => readonly Mode[];
  /** Where the mode's `Seats` is said; null where it is left out. */
  readonly seatsAt: (mode: Mode) => Place | null;
}

export function readModes(
  sections: readonly Section[],
  seats: Names<SeatsRow>,
  report: Report,
  keeper: Keeper,
): Modes {
  const names = createNames<Mode>('mode', 'modes');
  const begun: ModeBeingFilled[] = [];
  const plain = createSpot(report, '');
  const amount = { most: AMOUNTS.modes, what: 'modes', where: 'The scheme', wayOut: SPLIT };
  for (const section of withinAmount(sections, amount, plain, ({ title }) => placeOf(title))) {
    const name = readName(section.title, 'Mode', plain);
    const read = readMode(section, name, seats, report, keeper);
    if (!names.add(name, read.kept.mode, section.title, plain)) continue;
    begun.push(read);
    keeper.put(`mode ${name}`, read.kept);
  }
  for (const { title } of sections.slice(AMOUNTS.modes)) names.addUnclear(tidy(title.text));
  return {
    names,
    fill(scope) {
      let left: number = AMOUNTS.bindings;
      for (const { kept, section, spot } of begun) {
        const { mode } = kept;
        kept.rows = readModeRows(mode, section, spot, scope, kept.rows);
        const { count, rows } = kept.rows ?? { count: 0, rows: [] };
        if (count > left && left >= 0) tooManyBindings(mode, spot);
        left -= count;
        mode.rows = left >= 0 ? rows : [];
      }
    },
    whole: () => begun.filter(({ kept }) => kept.rows?.isClean === true).map(({ kept }) => kept.mode),
    seatsAt: wanted => begun.find(({ kept }) => kept.mode === wanted)?.seatsAt ?? null,
  };
}

const SPLIT = 'Split the game into several schemes.';

function tooManyBindings({ at }: Mode, spot: Spot): void {
  const problem = `the modes have more than ${AMOUNTS.bindings} rows together, which is the limit: from this mode on they are not read`;
  badPlace(spot, at, 'The scheme', problem, [SPLIT]);
}

function readMode(
  section: Section,
  name: string,
  seats: Names<SeatsRow>,
  report: Report,
  keeper: Keeper,
): ModeBeingFilled {
  const spot = createSpot(report, ` of “${name}”`, { mode: name });
  const facts = readFacts(section.blocks, MODE_KEYS, spot);
  const listed = facts.get('Seats');
  const rows = listed === undefined ? null : readSeatsList(listed, seats, 'Seats', spot);
  const kind = readKind(facts.get('Kind'), spot);
  const seated = rows ?? seats.all();
  const before = keeper.take<KeptMode>(`mode ${name}`);
  const isStill = before !== undefined && before.mode.kind === kind && isSameList(before.mode.seats, seated);
  const kept = isStill ? before : createKeptMode(name, kind, seated, placeOf(section.title));
  kept.mode.at = placeOf(section.title);
  kept.setProse(section.blocks.filter(({ node }) => !isRead(node)));
  return { kept, section, spot, seatsAt: listed === undefined ? null : placeOf(listed) };
}

function createKeptMode(name: string, kind: ModeKind, seats: readonly SeatsRow[], at: Place): KeptMode {
  let blocks: readonly Block[] = [];
  let prose: readonly RootContent[] | null = null;
  const mode: MovingMode = {
    name,
    at,
    kind,
    seats,
    get prose() {
      prose ??= proseOf(blocks);
      return prose;
    },
    rows: [],
  };
  return {
    mode,
    setProse(changed) {
      blocks = changed;
      prose = null;
    },
    rows: null,
  };
}

/** Acted on by the compiler; everything else in a mode is prose. */
function isRead(node: RootContent): boolean {
  return node.type === 'table' || (node.type === 'list' && isFactList(node, MODE_KEYS));
}

function readKind(words: Words | undefined, spot: Spot): ModeKind {
  if (words === undefined) return 'play';
  const kind = KINDS.find(candidate => candidate === normal(words.text));
  if (kind === undefined) notOneOf(spot, words, 'Kind', KINDS);
  return kind ?? 'play';
}
