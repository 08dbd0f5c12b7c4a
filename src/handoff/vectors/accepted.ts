import type { Finding } from '../../findings/finding.js';
import { contactType } from '../../gestures/contacts.js';
import type { Play } from '../../gestures/play.js';
import type { Unit } from '../units.js';
import type { Levels, Situation } from './situation.js';
import { findBeginning } from './witness.js';

/** The witness of each accepted overlap of a unit, as levels. */
export function acceptedReads(
  play: Play,
  unit: Unit,
  findings: readonly Finding[],
): readonly { readonly situation: Situation; readonly reads: readonly Levels[] }[] {
  return findings.flatMap(finding => {
    if (finding.severity !== 'accepted' || !concerns(finding, play, unit)) return [];
    const found = findBeginning(play, unit.mode, finding);
    if (found === null) return [];
    const { mode, values, levels } = found.state;
    const before = standAs(play, found.reads[0] ?? levels, levels);
    return [{ situation: { mode, values, before }, reads: found.reads }];
  });
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
