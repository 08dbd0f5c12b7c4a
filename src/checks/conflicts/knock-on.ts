import type { Binding } from '../../gestures/bindings.js';
import { type Contact, contactType } from '../../gestures/contacts.js';
import type { Setting } from '../../language/model.js';
import { buildProgram, setUp } from './build.js';
import type { TimedCell } from './cells.js';
import { canEnable, type FollowUp, type FollowUpProblem, findFollowUp, followUpKey } from './follow-up.js';
import { unrelatedPairs } from './pairs.js';
import { namedPath, replay } from './replay.js';
import { type Sighting, sightingIn } from './sighting.js';
import { chainOf, holdsIn } from './value-chain.js';

/** Answers by problem: many pairs of a scheme are alike. */
export type KnockOnMemory = Map<string, FollowUp | null>;

/** Rule 7: x’s `Then` makes y possible, and y follows before the line they share has been let go. */
export function findKnockOns(
  timed: TimedCell,
  live: readonly Binding[],
  memory: KnockOnMemory,
): readonly Sighting[] {
  const isLive = new Set(live);
  return unrelatedPairs(timed.cell)
    .flatMap(([a, b]) => [[a, b] as const, [b, a] as const])
    .filter(([x, y]) => isLive.has(x) && isLive.has(y) && touches(x, y) && sharedLines(x, y).length > 0)
    .flatMap(([x, y]) => sight(timed, x, y, memory));
}

const sharedLines = (x: Binding, y: Binding): readonly Contact[] =>
  x.parts.filter(part => contactType(part) === 'momentary' && y.parts.some(({ id }) => id === part.id));

/** True where x stays in the mode and its `Then` sets or steps something that y’s `When` asks about. */
function touches(x: Binding, y: Binding): boolean {
  if (y.conditions.length === 0 || x.effects.some(({ kind }) => kind === 'go to')) return false;
  return x.effects.some(
    effect => effect.kind !== 'go to' && y.conditions.some(({ setting }) => setting === effect.setting),
  );
}

function sight(timed: TimedCell, x: Binding, y: Binding, memory: KnockOnMemory): readonly Sighting[] {
  const { holders } = setUp(timed.cell, x, y);
  const every = { holds: holders.map(() => true), positions: new Map(), values: new Map() };
  const built = buildProgram(timed, { x, y, holders, worlds: [every] }, every);
  const conditions = [x, y, ...holders.map(({ binding }) => binding)].flatMap(each => each.conditions);
  const chain = chainOf(conditions, x.effects, timed.cell.sourceOf);
  if (built === null) return [];
  const found = recall(memory, {
    program: built.program,
    next: chain.next,
    xHolds: holdsIn(chain, x.conditions),
    yHolds: holdsIn(chain, y.conditions),
    holderHolds: holders.map(({ binding }) => holdsIn(chain, binding.conditions)),
  });
  if (found === null) return [];
  const values = found.values.map(number => chain.values[number] ?? new Map<Setting, string>());
  const valuesAt = (read: number) => values[read] ?? new Map<Setting, string>();
  return [
    sightingIn(timed, 'knock-on', [x, y], {
      length: found.path.length,
      witness: () => replay(timed, namedPath(built.contacts, found.path), valuesAt),
    }),
  ];
}

function recall(memory: KnockOnMemory, problem: FollowUpProblem): FollowUp | null {
  if (!canEnable(problem)) return null;
  const key = followUpKey(problem);
  const known = memory.get(key);
  if (known !== undefined) return known;
  const found = findFollowUp(problem);
  memory.set(key, found);
  return found;
}
