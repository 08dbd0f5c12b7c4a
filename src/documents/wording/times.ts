import type { TvStandard } from '../../hardware/clocks.js';
import type { Time } from '../../language/model.js';
import { secondsOf } from '../../language/time.js';
import type { Phrases } from '../phrase-book.js';

/** `2 seconds`; `about 0.7 to 0.8 seconds` for a time in frames, which lasts longer on some televisions. */
export function timeWords(time: Time, standards: readonly TvStandard[], phrases: Phrases): string {
  const { low, high } = range(time, standards);
  const said = low === high ? phrases.count('seconds', low) : rangeWords(low, high, phrases);
  return time.unit === 'seconds' ? said : phrases.say('about', { time: said });
}

/** `2 s`, for where there is little room. */
export function shortTime(time: Time, standards: readonly TvStandard[], phrases: Phrases): string {
  return phrases.say('short seconds', { count: phrases.number(range(time, standards).high) });
}

function rangeWords(low: number, high: number, phrases: Phrases): string {
  const both = phrases.say('from to', { low: phrases.number(low), high: phrases.number(high) });
  return phrases.count('seconds', high).replace(phrases.number(high), () => both);
}

/** Seconds, to the hundredth where given in seconds and to the tenth where given in frames. */
function range(
  time: Time,
  standards: readonly TvStandard[],
): { readonly low: number; readonly high: number } {
  const step = time.unit === 'seconds' ? 100 : 10;
  const seconds = standards.map(standard => Math.max(1, Math.round(secondsOf(time, standard) * step)) / step);
  return { low: Math.min(...seconds), high: Math.max(...seconds) };
}
