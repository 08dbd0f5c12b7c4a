import type { Binding } from '../../gestures/bindings.js';
import { positionOf } from '../../gestures/fit.js';
import { WHEN_REASONS } from './never-fires.js';
import type { Sighting } from './sighting.js';

/** A fallback that steps a setting has no `Along with`, and its action is in no list of any. */
const meantWay = (x: Binding, y: Binding, meant: string): string =>
  isListed(x, y)
    ? `If ${meant} meant, write one under \`Along with\` in the row of the other.`
    : 'If it does no harm, list it in `## Accepted`.';

const isListed = (x: Binding, y: Binding): boolean => x.action !== null && y.action !== null;

/** Ways out of a carry-over; empty where the catalogue’s own are as good. */
export function carryOverWays({ bindings: [x, y] }: Sighting): readonly string[] {
  if (y === undefined) return [];
  const position = positionOf(y.gesture);
  if (position === null && isListed(x, y)) return [];
  if (position === null)
    return [
      `Let “${x.actionName}” be a \`release\` or a \`tap\`, so that its control is let go when ${y.mode.name} begins.`,
      `Let “${y.actionName}” be a \`press\`: what was engaged when the mode began must be let go first.`,
      meantWay(x, y, 'it is'),
    ];
  return [
    `Make “${y.actionName}” \`flip to ${position}\`: then it happens when the switch is moved, not because it stands there.`,
    `Give “${y.actionName}” a \`When\` that does not hold yet when ${y.mode.name} begins.`,
    meantWay(x, y, 'it is'),
  ];
}

/** Ways out of a knock-on; empty where the catalogue’s own are as good. */
export function knockOnWays({ bindings: [x, y] }: Sighting): readonly string[] {
  if (y === undefined || (y.gesture.kind !== 'press' && isListed(x, y))) return [];
  return [
    y.gesture.kind !== 'press'
      ? `Let “${y.actionName}” be a \`press\`, so that the control must be let go and pressed again.`
      : `Make “${x.actionName}” a \`release\`: then what the two share has been let go before “${y.actionName}” can be done.`,
    'Give one of the two another control.',
    meantWay(x, y, 'both are'),
  ];
}

/** Ways out of a setting that runs away by something that is no button; empty for one that is held. */
export function runawayWays({ bindings: [x] }: Sighting): readonly string[] {
  if (x.gesture.kind === 'turn')
    return ['Step it with the `press` of a button: what turns moves at nearly every read.'];
  const position = positionOf(x.gesture);
  return position === null
    ? []
    : [`Use \`flip to ${position}\`: then it steps once, when the switch is moved there.`];
}

/** Ways out of a `When` that contradicts itself; empty where the row is held back. */
export function neverFiresWays({ extra }: Sighting): readonly string[] {
  const reason = extra?.['reason'];
  if (reason !== WHEN_REASONS.values && reason !== WHEN_REASONS.move) return [];
  return [
    reason === WHEN_REASONS.move
      ? 'Take that out of its `When`, or ask for what the switch gives in its other position: a `When` is judged as it was before the move.'
      : 'Ask in its `When` for values that the settings can have together.',
    'Take the row (or this alternative) out.',
  ];
}
