import type { Binding } from '../../gestures/bindings.js';
import type { SettingSource } from '../../gestures/settings.js';
import { isTwoPosition } from '../../hardware/switches.js';
import type { Setting } from '../../language/model.js';
import { buildProgram, setUp } from './build.js';
import { hasOpposites, type TimedCell, takesPart } from './cells.js';
import { canFire } from './pair.js';
import { type Sighting, sightingIn } from './sighting.js';
import { worldsOf } from './worlds.js';

/** The bindings of a timed cell that can fire, and those of which the scheme itself is why they can't. */
export interface Liveness {
  readonly live: readonly Binding[];
  readonly dead: readonly Sighting[];
}

/** Why a `When` lets its row never fire; ends a sentence. */
export const WHEN_REASONS = {
  values: 'its When asks for values that never go together',
  move: 'its When asks for what the switch gives only once it has been moved there',
} as const;

/**
 * Sorts out what never fires. What the console prevents (a switch it fixes, a setting it settles) does not fire
 * there but is no fault of this rule: coverage looks at consoles. A chord of opposite directions has a rule of its
 * own.
 */
export function findNeverFires(timed: TimedCell): Liveness {
  const live: Binding[] = [];
  const dead: Sighting[] = [];
  for (const binding of timed.cell.bindings) {
    if (!takesPart(binding, timed)) continue;
    const reason = whyNever(timed, binding);
    if (reason === null) live.push(binding);
    else if (reason !== '') dead.push(sightingIn(timed, 'never-fires', [binding], { extra: { reason } }));
  }
  return { live, dead };
}

/** Null where the binding can fire; empty where the reason is another rule’s business. */
function whyNever(timed: TimedCell, binding: Binding): string | null {
  if (hasOpposites(binding.parts, timed.cell)) return '';
  const setup = setUp(timed.cell, binding, null);
  if (setup.worlds.length === 0) return contradictsItself(binding) ? WHEN_REASONS.values : '';
  if (contradictsMove(binding)) return WHEN_REASONS.move;
  // Nothing but a switch or a hold-back can prevent it: there is no need to search.
  if (setup.holders.length === 0 && binding.parts.every(({ kind }) => kind === 'control')) return null;
  const built = setup.worlds.flatMap(world => buildProgram(timed, setup, world) ?? []);
  if (built.length === 0 || built.some(({ program }) => canFire(program))) return null;
  if (!built.some(({ program }) => canFire({ ...program, holdBacks: [] }))) return '';
  const holders = [...new Set(setup.holders.map(holder => `“${holder.binding.actionName}”`))];
  return `${holders.join(' and ')} ${holders.length === 1 ? 'holds' : 'hold'} it back every time`;
}

/** True where no values at all, on any console, meet the binding’s `When`. */
function contradictsItself({ conditions }: Binding): boolean {
  return worldsOf({ must: conditions, holders: [], watched: [], sourceOf: asWritten }).length === 0;
}

/** True for a `flip to P` whose `When` holds with the switch in P only: it is judged before the switch is there. */
function contradictsMove({ gesture, parts: [part], conditions }: Binding): boolean {
  if (gesture.kind !== 'flip to' || part?.kind !== 'switch' || !isTwoPosition(part.name)) return false;
  const { name } = part;
  const worlds = worldsOf({ must: conditions, holders: [], watched: [name], sourceOf: asWritten });
  return worlds.every(({ positions }) => positions.get(name) === gesture.position);
}

/** As the scheme says, on a console that has every switch. */
const asWritten = ({ setBy, startsAs }: Setting): SettingSource =>
  setBy.kind === 'game'
    ? { kind: 'game', startsAs }
    : { kind: 'switch', name: setBy.name, values: setBy.values };
