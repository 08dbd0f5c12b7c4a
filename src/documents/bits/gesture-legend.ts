import type { Gesture, Scheme } from '../../language/model.js';

/** What the code must look for, for each kind of gesture; `c` is engaged at this read, `c'` at the one before. */
const MEANINGS: Readonly<Record<Gesture['kind'], string>> = {
  press: 'Engaged at this read and not at the one before.',
  release: 'Not engaged at this read, but at the one before.',
  held: 'At every read at which it is engaged.',
  hold: 'Once, at the read at which it has been engaged for so many reads in a row.',
  tap: 'When it is let go after at most so many reads.',
  'double tap':
    'At a press that comes at most so many reads after the press before it, which was not itself a second.',
  repeat: 'When engaged; then at most once in so many reads for as long as it stays engaged.',
  at: 'At every read at which the switch is in this position.',
  'flip to': 'In this position at this read and not at the one before; never at the first read.',
  flip: 'In another position than at the read before; never at the first read.',
  turn: 'Another count or code than at the read before; never at the first read.',
};

export interface GestureMeaning {
  readonly gesture: string;
  readonly fires: string;
}

/** The kinds of gesture that a scheme uses, each with when it fires. */
export function viewGestures(scheme: Scheme): readonly GestureMeaning[] {
  const rows = scheme.modes.flatMap(mode => mode.rows.map(({ gesture }) => gesture?.value));
  const fallbacks = scheme.fallbacks.map(({ instead }) =>
    instead.kind === 'binding' ? instead.gesture.value : undefined,
  );
  const used = new Set([...rows, ...fallbacks].map(gesture => gesture?.kind));
  return (Object.keys(MEANINGS) as Gesture['kind'][])
    .filter(kind => used.has(kind))
    .map(kind => ({ gesture: kind, fires: MEANINGS[kind] }));
}
