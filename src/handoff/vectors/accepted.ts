import type { Finding } from '../../findings/finding.js';
import { contactType } from '../../gestures/contacts.js';
import { type Play, stepPlay } from '../../gestures/play.js';
import type { Mode } from '../../language/model.js';
import type { Unit } from '../units.js';
import { inputOf, type Levels, type Situation } from './situation.js';
import { type Beginning, findBeginning } from './witness.js';

interface AcceptedReads {
  readonly situation: Situation;
  readonly reads: readonly Levels[];
}

/** The witness of each accepted overlap of a unit, as levels; of one that leads into the mode, what comes then. */
export function acceptedReads(
  play: Play,
  unit: Unit,
  findings: readonly Finding[],
): readonly AcceptedReads[] {
  return findings.flatMap(finding => {
    if (finding.severity !== 'accepted' || !concerns(finding, play, unit)) return [];
    const here = findBeginning(play, unit.mode, finding);
    if (here !== null) return fromRest(play, here);
    const others = play.scheme.modes.filter(mode => mode !== unit.mode && play.engines.has(mode));
    for (const mode of others) {
      const elsewhere = findBeginning(play, mode, finding);
      if (elsewhere !== null) return fromEntry(play, elsewhere, unit.mode) ?? [];
    }
    return [];
  });
}

function fromRest(play: Play, { state, reads }: Beginning): AcceptedReads {
  const { mode, values, levels } = state;
  return { situation: { mode, values, before: standAs(play, reads[0] ?? levels, levels) }, reads };
}

/** Played until the mode is entered; null where it is not, or where nothing comes after it. */
function fromEntry(play: Play, beginning: Beginning, mode: Mode): AcceptedReads | null {
  let { state } = beginning;
  for (const [index, levels] of beginning.reads.entries()) {
    state = stepPlay(play, state, inputOf(play, levels)).state;
    const reads = beginning.reads.slice(index + 1);
    if (state.mode === mode && reads.length > 0)
      return { situation: { mode, values: state.values, before: state.levels }, reads };
  }
  return null;
}

/** The levels with switches and what turns as at the first read, before which nothing was moved. */
function standAs({ contacts }: Play, first: Levels, levels: Levels): Levels {
  return levels.map((level, index) => {
    const contact = contacts[index];
    return contact === undefined || contactType(contact) === 'momentary' ? level : (first[index] ?? level);
  });
}

function concerns(finding: Finding, { profile, standard }: Play, unit: Unit): boolean {
  return (
    finding.mode === unit.mode.name &&
    (finding.seats === undefined || finding.seats.includes(unit.seats.name)) &&
    (finding.consoles === undefined || finding.consoles.includes(profile.name)) &&
    finding.witness?.standard === standard.name
  );
}
