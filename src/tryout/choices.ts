import { createPlay, type Play } from '../gestures/play.js';
import type { Scheme } from '../language/model.js';

export function selectOf(name: string): HTMLSelectElement {
  const found = document.querySelector<HTMLSelectElement>(`select[name="${name}"]`);
  if (found === null) throw new RangeError(`the page has no choice ${name}`);
  return found;
}

export const speed = (): number => Number(selectOf('speed').value);

/** What the lists at the head of the page say. */
export function choose(scheme: Scheme): Play {
  const chosen = <T>(name: string, list: readonly T[]): T => {
    const found = list[Number(selectOf(name).value)] ?? list[0];
    if (found === undefined) throw new RangeError(`the scheme has no ${name}`);
    return found;
  };
  return createPlay({
    scheme,
    profile: chosen('console', scheme.consoles),
    seats: chosen('seats', scheme.seats),
    standard: chosen('standard', scheme.standards),
  });
}

/** The lists say what a trace was made on. */
export function showChoice({ scheme, profile, seats, standard }: Play): void {
  selectOf('console').value = String(scheme.consoles.indexOf(profile));
  selectOf('seats').value = String(scheme.seats.indexOf(seats));
  selectOf('standard').value = String(scheme.standards.indexOf(standard));
}
