import type { Binding } from '../../gestures/bindings.js';
import { createEngine, startEngine } from '../../gestures/engine.js';
import { doHold } from '../../gestures/values.js';
import type { Setting } from '../../language/model.js';
import { gestureReads, type TimedCell } from './cells.js';
import { type NamedLevels, replay, stepNamed, valueIn } from './replay.js';
import { areUnrelated, type Sighting, sightingIn } from './sighting.js';
import { type Assignment, assignmentsOf } from './worlds.js';

/** Rule 11: between the longest tap and the shortest hold of one control, an engagement does nothing. */
export function findDeadZones(timed: TimedCell, live: readonly Binding[]): readonly Sighting[] {
  const holds = live.filter(({ gesture }) => gesture.kind === 'hold');
  const onControl = new Map<string, Binding[]>();
  for (const hold of holds) {
    const key = controlKey(hold);
    onControl.set(key, [...(onControl.get(key) ?? []), hold]);
  }
  return live
    .filter(({ gesture }) => gesture.kind === 'tap')
    .flatMap(tap => (onControl.get(controlKey(tap)) ?? []).map(hold => [tap, hold] as const))
    .filter(([tap, hold]) => isOnePlayer(tap, hold) && isMeant(tap, hold))
    .flatMap(([tap, hold]) => sight(timed, live, tap, hold));
}

const controlKey = ({ parts }: Binding): string =>
  parts.length === 1
    ? (parts[0]?.id ?? '')
    : parts
        .map(({ id }) => id)
        .sort()
        .join('+');

const isOnePlayer = (x: Binding, y: Binding): boolean =>
  x.player === y.player || x.player === 'anyone' || y.player === 'anyone';

/** `Along with` says that the two belong together; two rows of one action are never that far. */
const isMeant = (tap: Binding, hold: Binding): boolean =>
  tap.action === hold.action || areUnrelated(tap, hold);

function sight(timed: TimedCell, live: readonly Binding[], tap: Binding, hold: Binding): readonly Sighting[] {
  const from = gestureReads(tap, timed);
  const to = gestureReads(hold, timed) - 1;
  if (from > to) return [];
  const others = live.filter(other => other !== tap && other !== hold && isWithin(other, hold));
  const silent = assignmentsWith(timed, tap, hold, others).find(({ values }) =>
    isSilent(timed, [tap, hold, ...others], from, to, values),
  );
  if (silent === undefined) return [];
  const path = engagement(tap, from);
  return [
    sightingIn(timed, 'dead-zone', [tap, hold], {
      length: path.length,
      witness: () => replay(timed, path, () => silent.values),
      extra: { reads: from === to ? from : `${from} to ${to}` },
    }),
  ];
}

/** Only what is made of the control's own parts can fire while nothing else is engaged. */
const isWithin = (other: Binding, { parts }: Binding): boolean =>
  other.parts.every(({ id }) => parts.some(part => part.id === id));

/** Values under which both are live, told apart by the `When` of the others. */
function assignmentsWith(
  { cell }: TimedCell,
  tap: Binding,
  hold: Binding,
  others: readonly Binding[],
): readonly Assignment[] {
  const must = [...tap.conditions, ...hold.conditions];
  const all = [...must, ...others.flatMap(({ conditions }) => conditions)];
  return assignmentsOf(all, cell.sourceOf, new Set()).filter(({ values }) =>
    doHold(must, setting => values.get(setting)),
  );
}

/**
 * Whether nothing fires, for any number of reads from `from` to `to`. A chord's parts are engaged one a read, in
 * the order in which the scheme names them, and let go together.
 */
function isSilent(
  timed: TimedCell,
  bindings: readonly Binding[],
  from: number,
  to: number,
  values: ReadonlyMap<Setting, string>,
): boolean {
  const { cell } = timed;
  const [tap] = bindings;
  if (tap === undefined) return true;
  const engine = createEngine(bindings, timed.readsOf);
  const valueOfSetting = valueIn(cell, values);
  const whole = engagement(tap, to);
  const released = whole.at(-1) ?? new Map<string, number>();
  let state = startEngine(engine);
  for (const [index, levels] of whole.slice(0, -1).entries()) {
    const step = stepNamed(cell, engine, state, levels, valueOfSetting);
    if (step.fired.length > 0) return false;
    state = step.state;
    const run = index + 2 - tap.parts.length;
    if (run >= from && stepNamed(cell, engine, state, released, valueOfSetting).fired.length > 0)
      return false;
  }
  return true;
}

/** A control engaged for some reads, then let go. */
function engagement({ parts }: Binding, reads: number): readonly NamedLevels[] {
  const engaged = (count: number): NamedLevels =>
    new Map(parts.map(({ id }, index) => [id, index < count ? 1 : 0]));
  const growing = parts.slice(1).map((_, index) => engaged(index + 1));
  return [...growing, ...Array.from({ length: reads }, () => engaged(parts.length)), engaged(0)];
}
