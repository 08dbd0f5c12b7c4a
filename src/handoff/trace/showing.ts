import type { WitnessedFinding } from '../../documents/tryout/page-data.js';
import { createPlay, type Play } from '../../gestures/play.js';
import type { Scheme } from '../../language/model.js';
import { type Beginning, findBeginning } from '../vectors/witness.js';

/** Where a witness can be seen, and what is read there. */
export interface Showing extends Beginning {
  readonly play: Play;
}

/**
 * A play in which the witness of a finding does what the finding says. It begins in the mode that the finding names,
 * or in another that leads there; null where there is none.
 */
export function findShowing(scheme: Scheme, finding: WitnessedFinding): Showing | null {
  const { witness, mode: named } = finding;
  const standard = scheme.standards.find(({ name }) => name === witness?.standard);
  if (witness === undefined || standard === undefined) return null;
  const modes = [
    ...scheme.modes.filter(({ name }) => name === named),
    ...scheme.modes.filter(({ name }) => name !== named),
  ];
  for (const profile of scheme.consoles.filter(({ name }) => finding.consoles?.includes(name) ?? true)) {
    for (const seats of scheme.seats.filter(({ name }) => finding.seats?.includes(name) ?? true)) {
      const play = createPlay({ scheme, seats, profile, standard });
      for (const mode of modes) {
        const found = play.engines.has(mode) ? findBeginning(play, mode, finding) : null;
        if (found !== null) return { play, ...found };
      }
    }
  }
  return null;
}
