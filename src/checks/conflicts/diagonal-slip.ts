import type { Binding } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import { setUp } from './build.js';
import type { Cell, TimedCell } from './cells.js';
import { areUnrelated, type Sighting, sightingIn } from './sighting.js';

/**
 * Rule 10: two bindings on directions of one stick that lie at a right angle. A stick is what has opposites; a
 * binding is on a direction if that is the only direction among the parts of its control. `anyone` goes with
 * every player.
 */
export function findDiagonalSlips(timed: TimedCell, live: readonly Binding[]): readonly Sighting[] {
  const { cell } = timed;
  const onSticks = live.flatMap(binding => {
    const direction = directionOf(binding, cell);
    return direction === null ? [] : [{ binding, direction }];
  });
  return onSticks.flatMap((first, index) =>
    onSticks.slice(index + 1).flatMap(({ binding, direction }): readonly Sighting[] => {
      const bindings = [first.binding, binding] as const;
      if (!isPerpendicular(first.direction, direction, cell) || !isSlip(timed, ...bindings)) return [];
      return [sightingIn(timed, 'diagonal-slip', bindings)];
    }),
  );
}

function isSlip(timed: TimedCell, x: Binding, y: Binding): boolean {
  const isOnePlayer = x.player === y.player || x.player === 'anyone' || y.player === 'anyone';
  const isSteering = (binding: Binding) => binding.gesture.kind === 'held' || binding.direction !== null;
  if (!isOnePlayer || !areUnrelated(x, y) || (isSteering(x) && isSteering(y))) return false;
  return setUp(timed.cell, x, y).worlds.length > 0;
}

function directionOf({ parts }: Binding, { opposites }: Cell): Contact | null {
  const directions = parts.filter(({ id }) => opposites.has(id));
  return directions.length === 1 ? (directions[0] ?? null) : null;
}

function isPerpendicular(a: Contact, b: Contact, { opposites }: Cell): boolean {
  const isOneStick = a.kind === 'control' && b.kind === 'control' && a.port === b.port;
  return isOneStick && a.id !== b.id && opposites.get(a.id) !== b.id;
}
