import type { Scheme } from '../../language/model.js';
import { secondsOf } from '../../language/time.js';
import type { Speech } from '../wording/gestures.js';

/** A hold this long, or a control held down throughout a mode, tires the hand; s (from memory). */
const LONG_HOLD_S = 3;

/** Chapter 8: the usual cautions of the trade, and what this scheme adds to them. */
export function viewCautions(scheme: Scheme, { phrases }: Speech): readonly string[] {
  return [
    phrases.say('caution power'),
    phrases.say('caution hands'),
    ...(hasLongHold(scheme) ? [phrases.say('caution hold')] : []),
    phrases.say('caution flashes'),
    phrases.say('caution rules'),
  ];
}

function hasLongHold({ modes, standards }: Scheme): boolean {
  return modes.some(({ rows }) =>
    rows.some(({ gesture }) => {
      if (gesture?.value.kind !== 'hold') return false;
      const { time } = gesture.value;
      return standards.some(standard => secondsOf(time, standard) >= LONG_HOLD_S);
    }),
  );
}
