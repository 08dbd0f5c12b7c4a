import type { Finding, WitnessStep } from '../../findings/finding.js';
import { type Contact, contactType } from '../../gestures/contacts.js';
import type { Play } from '../../gestures/play.js';
import { SWITCHES } from '../../hardware/switches.js';
import type { Unit } from '../units.js';
import { findSituation, type Levels, restLevels, type Situation } from './situation.js';

/** The witness of each accepted overlap of a unit, as levels. */
export function acceptedReads(
  play: Play,
  unit: Unit,
  findings: readonly Finding[],
): readonly { readonly situation: Situation; readonly reads: readonly Levels[] }[] {
  return findings.flatMap(finding => {
    const { witness } = finding;
    if (finding.severity !== 'accepted' || witness === undefined || !concerns(finding, play, unit)) return [];
    const conditions = unit.bindings
      .filter(({ actionName }) => finding.actions?.includes(actionName) === true)
      .flatMap(binding => binding.conditions);
    const situation = findSituation(play, unit.mode, conditions) ?? findSituation(play, unit.mode, []);
    const reads = levelsOfSteps(play, witness.steps, situation?.before ?? restLevels(play));
    return situation === null || reads === null ? [] : [{ situation, reads }];
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

/** Null where the witness names a control that is not there. */
export function levelsOfSteps(
  { contacts }: Play,
  steps: readonly WitnessStep[],
  before: Levels,
): readonly Levels[] | null {
  const reads: Levels[] = [];
  let levels = before;
  for (const { engaged } of steps) {
    if (!engaged.every(name => contacts.some(({ id }) => name === id || name.startsWith(`${id} `))))
      return null;
    levels = contacts.map((contact, index) => levelIn(contact, engaged, levels[index] ?? 0));
    reads.push(levels);
  }
  return reads;
}

/** What a step of a witness makes of a contact: a switch and what turns stay where they were unless it names them. */
function levelIn(contact: Contact, engaged: readonly string[], before: number): number {
  switch (contactType(contact)) {
    case 'momentary':
      return engaged.includes(contact.id) ? 1 : 0;
    case 'turning':
      return engaged.some(name => name.startsWith(contact.id)) ? before + 1 : before;
    default: {
      if (contact.kind !== 'switch') return before;
      const { positions } = SWITCHES[contact.name];
      const moved = positions.findIndex(({ name }) => engaged.includes(`${contact.id} ${name}`));
      return moved < 0 ? before : moved;
    }
  }
}
