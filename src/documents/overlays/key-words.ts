import type { SwitchName } from '../../hardware/switches.js';
import { togetherWith } from '../wording/bindings.js';
import { type Speech, shortGesture } from '../wording/gestures.js';
import { switchWords } from '../wording/machine.js';
import type { FittedKey, LabelWords } from './key-cell.js';
import { type KeyLabel, labelText } from './key-labels.js';
import { CHORD_MARK, type Sign, widestMark } from './signs.js';

/** The marks of a scheme: by what they tell. */
export interface Marks {
  /** By note. */
  readonly gestures: ReadonlyMap<string, string>;
  readonly fallbacks: ReadonlyMap<SwitchName, string>;
}

/** A label as it is printed, its fallback marked. */
export function wordsOf(label: KeyLabel, fallbacks: Marks['fallbacks'], speech: Speech): LabelWords {
  const { gesture, partners, without } = label;
  const notes = [
    gesture === null ? '' : shortGesture(gesture, speech),
    togetherWith(partners, speech.phrases),
  ];
  const mark = without === null ? '' : (fallbacks.get(without) ?? '');
  return { text: `${labelText(label, speech.phrases)}${mark}`, note: notes.filter(Boolean).join(', ') };
}

/** For those who can't see it: `Clear all (hold 1 s)`. */
export function spokenLabel(label: KeyLabel, speech: Speech): string {
  const { phrases } = speech;
  const { note } = wordsOf(label, new Map(), speech);
  const only = label.without === null ? '' : fallbackMeaning(label.without, speech);
  const notes = [note, only].filter(Boolean).join(', ');
  const sentence = labelText(label, phrases);
  return notes === '' ? sentence : phrases.say('sentence with note', { sentence, note: notes });
}

const fallbackMeaning = (without: SwitchName, { phrases }: Speech): string =>
  phrases.say('sign fallback', { switch: switchWords(without, phrases) });

export const fallbackSign = (without: SwitchName, fallbacks: Marks['fallbacks'], speech: Speech): Sign => ({
  mark: fallbacks.get(without) ?? '',
  meaning: fallbackMeaning(without, speech),
});

/** The signs that stand on a key, in the order of its labels. */
export function signsOf(
  labels: readonly KeyLabel[],
  { labels: fitted }: FittedKey,
  { gestures, fallbacks }: Marks,
  speech: Speech,
): readonly Sign[] {
  return labels.flatMap((label, index) => {
    const { note } = wordsOf(label, fallbacks, speech);
    return [
      ...(label.isChord ? [{ mark: CHORD_MARK, meaning: speech.phrases.say('sign chord') }] : []),
      ...(fitted[index]?.note === 'sign' ? [{ mark: gestures.get(note) ?? '', meaning: note }] : []),
      ...(label.without === null ? [] : [fallbackSign(label.without, fallbacks, speech)]),
    ];
  });
}

/** The lines of a label with its mark where room was kept for it. */
export function withMark(lines: readonly string[], mark: string): readonly string[] {
  return lines.map((line, index) =>
    index < lines.length - 1 ? line : `${line.endsWith(widestMark()) ? line.slice(0, -1) : line}${mark}`,
  );
}
