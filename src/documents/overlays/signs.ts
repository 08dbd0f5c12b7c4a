import { SWITCH_NAMES, type SwitchName } from '../../hardware/switches.js';
import type { Scheme } from '../../language/model.js';
import { textWidth } from '../figures/text-block.js';

/** A sign on a piece and what it means; told at the foot of each sheet on which it stands. */
export interface Sign {
  readonly mark: string;
  readonly meaning: string;
}

/** Every character is in the text font; none stands on a key of a keypad. */
const GESTURE_MARKS = ['•', '°', '^', '~', '¤'] as const;
const FALLBACK_MARKS = ['†', '§', '¶', '††', '§§'] as const;
/** That of the first switch a fallback does without. */
export const [FALLBACK_MARK] = FALLBACK_MARKS;
export const CHORD_MARK = '+';

/** The widest sign for a gesture: where it has room, each has. */
export const widestMark = (): string =>
  GESTURE_MARKS.reduce((widest, mark) =>
    textWidth(mark, { sizePt: 7, bold: true }) > textWidth(widest, { sizePt: 7, bold: true }) ? mark : widest,
  );

/** A sign for each of the gestures, in words; the signs are doubled when there are no more. */
export function gestureMarks(notes: readonly string[]): ReadonlyMap<string, string> {
  const count = GESTURE_MARKS.length;
  return new Map(
    [...new Set(notes)].map((note, index) => [
      note,
      (GESTURE_MARKS[index % count] ?? '').repeat(1 + Math.floor(index / count)),
    ]),
  );
}

/** A sign for each switch in place of which some fallback has a control. */
export function fallbackMarks({ fallbacks }: Scheme): ReadonlyMap<SwitchName, string> {
  const lacked = SWITCH_NAMES.filter(name =>
    fallbacks.some(({ instead, without }) => instead.kind === 'binding' && without === name),
  );
  return new Map(lacked.map((name, index) => [name, FALLBACK_MARKS[index] ?? '']));
}

/** Each once, in the order in which they are met. */
export function distinctSigns(signs: readonly Sign[]): readonly Sign[] {
  return [...new Map(signs.map(sign => [signLine(sign), sign])).values()];
}

/** `† only if the console lacks: …` */
export const signLine = ({ mark, meaning }: Sign): string => `${mark}\u00a0${meaning}`;
