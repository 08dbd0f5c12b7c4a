import type { Gesture } from './model.js';

type TimedKind = Extract<Gesture, { readonly time: unknown }>['kind'];
type PositionKind = Extract<Gesture, { readonly position: unknown }>['kind'];
type BareKind = Exclude<Gesture['kind'], TimedKind | PositionKind>;

/** A gesture as it is written: the words before its time or position, if it has one. */
export type Form =
  | { readonly words: string; readonly takes: 'nothing'; readonly kind: BareKind }
  | { readonly words: string; readonly takes: 'T'; readonly kind: TimedKind }
  | { readonly words: string; readonly takes: 'P'; readonly kind: PositionKind };

/** Of two forms that begin alike, the longer stands first. */
export const FORMS: readonly Form[] = [
  { words: 'press', takes: 'nothing', kind: 'press' },
  { words: 'release', takes: 'nothing', kind: 'release' },
  { words: 'held', takes: 'nothing', kind: 'held' },
  { words: 'hold', takes: 'T', kind: 'hold' },
  { words: 'tap under', takes: 'T', kind: 'tap' },
  { words: 'double tap within', takes: 'T', kind: 'double tap' },
  { words: 'repeat every', takes: 'T', kind: 'repeat' },
  { words: 'at', takes: 'P', kind: 'at' },
  { words: 'flip to', takes: 'P', kind: 'flip to' },
  { words: 'flip', takes: 'nothing', kind: 'flip' },
  { words: 'turn', takes: 'nothing', kind: 'turn' },
];

export const written = ({ words, takes }: Form): string =>
  takes === 'nothing' ? words : `${words} ${takes}`;

export const WRITTEN = FORMS.map(written);

export const begins = (text: string, words: string): boolean =>
  text === words || text.startsWith(`${words} `);
