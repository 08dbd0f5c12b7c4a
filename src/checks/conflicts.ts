import { type FindingDetails, relatedTo, type Witness } from '../findings/finding.js';
import { type Report, recordReports } from '../findings/report.js';
import type { Mode, Scheme } from '../language/model.js';
import { createMemory } from '../memory.js';
import { type ConflictMemory, findConflicts, groundsOf } from './conflicts/find.js';
import { clearest, groupSightings, type Sighting, type SightingGroup } from './conflicts/sighting.js';
import { createIsUsable } from './conflicts/usable.js';
import { waysOutOf } from './conflicts/ways-out.js';
import { doingText, messageParameters } from './conflicts/wording.js';
import type { IsUsable } from './coverage/offers.js';
import { checkGestureFit } from './gesture-fit.js';
import { unique } from './text.js';

/**
 * Reports every press that means two things, and every gesture that can’t be made.
 *
 * @returns for coverage: whether a binding fires at all; null where all do
 */
export function checkConflicts(scheme: Scheme, report: Report): IsUsable | null {
  const memory = memories([scheme.modes], () => ({ pairs: new Map(), knockOns: new Map() }));
  const found = scheme.modes.map(mode =>
    remembered(groundsOf(scheme, mode), () => checkMode(scheme, mode, memory)),
  );
  for (const { tell } of found) tell(report);
  return createIsUsable(found.flatMap(({ dead }) => dead));
}

/** The conflicts of a mode: worked out again only where something that they depend on is not what it was. */
interface ModeConflicts {
  readonly tell: (report: Report) => void;
  /** Those of `never-fires`. */
  readonly dead: readonly Sighting[];
}

const remembered = createMemory<ModeConflicts>(1);
const memories = createMemory<ConflictMemory>();

function checkMode(scheme: Scheme, mode: Mode, memory: ConflictMemory): ModeConflicts {
  const sightings = findConflicts(scheme, mode, memory);
  return {
    tell: recordReports(report => {
      checkGestureFit(scheme, mode, report);
      for (const group of groupSightings(sightings)) reportGroup(scheme, group, report);
    }),
    dead: sightings.filter(({ rule }) => rule === 'never-fires'),
  };
}

function reportGroup(scheme: Scheme, group: SightingGroup, report: Report): void {
  const shown = clearest(group);
  const [x, y] = shown.bindings;
  const steps = shown.witness?.();
  const witness: Witness | undefined =
    steps === undefined ? undefined : { standard: shown.standard.name, steps };
  const waysOut = waysOutOf(shown);
  // Each finding points at the row named first; a mode that is entered shows its own row.
  const [at, other] = shown.rule === 'carry-over' && y !== undefined ? [y, x] : [x, y];
  report(shown.rule, at.at, messageParameters(shown), {
    ...detailsOf(scheme, group),
    mode: shown.mode.name,
    actions: unique(shown.bindings.map(({ actionName }) => actionName)),
    ...settingsOf(shown),
    ...(other === undefined
      ? {}
      : { related: [relatedTo(other.at, `“${other.actionName}” (${doingText(other)})`)] }),
    ...(witness === undefined ? {} : { witness }),
    ...(waysOut.length === 0 ? {} : { waysOut }),
  });
}

/** The settings that a finding is about: those that a fallback steps, and one that runs away. */
function settingsOf({ bindings, extra }: Sighting): FindingDetails {
  const stepped = bindings.flatMap(({ origin }) =>
    origin.kind === 'fallback' && origin.fallback.subject.kind === 'setting'
      ? [origin.fallback.subject.setting.name]
      : [],
  );
  const runaway = extra?.['setting'];
  const settings = unique([...stepped, ...(runaway === undefined ? [] : [String(runaway)])]);
  return settings.length === 0 ? {} : { settings };
}

const PLAYERS = ['left', 'left A', 'left B', 'right', 'right A', 'right B'] as const;

/** Where a finding holds and what it concerns, in the scheme’s own order. Consoles are named where not all have it. */
function detailsOf(scheme: Scheme, group: SightingGroup): FindingDetails {
  const bindings = group.flatMap(sighting => sighting.bindings);
  const seats = scheme.seats.filter(row => group.some(sighting => sighting.seats === row));
  const standards = scheme.standards.filter(item => group.some(({ standard }) => standard === item));
  const consoles = scheme.consoles.filter(item => group.some(({ profiles }) => profiles.includes(item)));
  const isFallback = bindings.some(({ origin }) => origin.kind === 'fallback');
  const players = PLAYERS.filter(name => bindings.some(({ player }) => player === name));
  return {
    seats: seats.map(({ name }) => name),
    standards: standards.map(({ name }) => name),
    ...(isFallback || consoles.length < scheme.consoles.length
      ? { consoles: consoles.map(({ name }) => name) }
      : {}),
    ...(players.length === 0 ? {} : { players }),
    controls: unique(bindings.flatMap(({ parts }) => parts.map(({ id }) => id))),
  };
}
