import type { Binding } from '../gestures/bindings.js';
import type { Scheme, Time } from '../language/model.js';
import { symbolOf } from '../language/symbol.js';
import { readsOf } from '../language/time.js';
import type { Names } from './names.js';
import { MOST_READS, type Unit } from './units.js';

/** A gesture's time, in reads of each standard. SECAM is timed as PAL. */
export interface TimeSymbol {
  /** Of the routine; `__NTSC` and `__PAL` behind it are those of the tables. */
  readonly symbol: string;
  readonly reads: Reads;
  /** As the scheme writes it. */
  readonly text: string;
}

export interface Reads {
  readonly ntsc: number;
  readonly pal: number;
}

export interface Times {
  readonly all: () => readonly TimeSymbol[];
  readonly of: (binding: Binding) => TimeSymbol;
  /** The largest of several, as a symbol of its own where none of them is it on both standards. */
  readonly largest: (bindings: readonly Binding[]) => TimeSymbol;
}

const WORDS: Readonly<Record<string, string>> = {
  hold: 'HOLD',
  tap: 'TAP',
  'double tap': 'DOUBLE_TAP',
  repeat: 'REPEAT',
};

export function createTimes(scheme: Scheme, names: Names, units: readonly Unit[]): Times {
  const known = new Map<string, TimeSymbol>();
  const claim = (key: string, make: () => TimeSymbol): TimeSymbol => {
    const found = known.get(key) ?? make();
    known.set(key, found);
    return found;
  };
  const of = ({ mode, actionName, gesture }: Binding): TimeSymbol => {
    if (!('time' in gesture)) throw new RangeError(`${gesture.kind} has no time`);
    const { time, kind } = gesture;
    const reads = readsOfTime(scheme, time);
    const key = JSON.stringify([mode.name, actionName, kind, reads]);
    return claim(key, () => {
      const base = symbolOf(scheme.game.shortName.value, mode.name, actionName);
      return { symbol: names.claim(`${base}__${WORDS[kind] ?? ''}`), reads, text: time.text };
    });
  };
  const largest = (bindings: readonly Binding[]): TimeSymbol => {
    const times = bindings.map(of);
    const ntsc = Math.max(...times.map(({ reads }) => reads.ntsc));
    const pal = Math.max(...times.map(({ reads }) => reads.pal));
    const found = times.find(({ reads }) => reads.ntsc === ntsc && reads.pal === pal);
    if (found !== undefined) return found;
    return claim(`${ntsc}/${pal}`, () => ({
      symbol: names.claim(`${names.prefix}LONGEST_${ntsc}_${pal}`),
      reads: { ntsc, pal },
      text: 'the longest of several',
    }));
  };
  for (const { bindings } of units)
    for (const binding of bindings) if ('time' in binding.gesture) of(binding);
  return { all: () => [...known.values()], of, largest };
}

/** How the scheme's standards count time, by the word that its symbols end in. */
export function countings({ standards }: Scheme): readonly ('NTSC' | 'PAL')[] {
  const isNtsc = standards.map(({ name }) => name === 'NTSC');
  return [
    ...(isNtsc.includes(true) ? (['NTSC'] as const) : []),
    ...(isNtsc.includes(false) ? (['PAL'] as const) : []),
  ];
}

/** Where no standard of the scheme counts that way, the reads of the other; nothing is made of them then. */
export function readsOfTime(scheme: Scheme, time: Time): Reads {
  const every = scheme.game.readEvery.value;
  const on = (isNtsc: boolean) => {
    const standard = scheme.standards.find(({ name }) => (name === 'NTSC') === isNtsc);
    return standard === undefined ? undefined : Math.min(readsOf(time, standard, every), MOST_READS + 1);
  };
  const ntsc = on(true);
  const pal = on(false);
  return { ntsc: ntsc ?? pal ?? 1, pal: pal ?? ntsc ?? 1 };
}
