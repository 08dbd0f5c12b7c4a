import type { TvStandard } from '../../hardware/clocks.js';
import type { Chord, Gesture } from '../../language/model.js';
import type { Phrases } from '../phrase-book.js';
import { controlObject, type NamedControl, namedControls, type Touch, touchOf } from './controls.js';
import { shortTime, timeWords } from './times.js';

/** What every sentence needs: the words, and the televisions that times are told for. */
export interface Speech {
  readonly phrases: Phrases;
  readonly standards: readonly TvStandard[];
}

const PREFIX = { press: '', push: 'push ', together: 'together ' } as const satisfies Record<Touch, string>;

/** What to do with the hand, one sentence without its full stop: `Hold the button for 2 seconds`. */
export function gestureSentence(
  controls: readonly NamedControl[],
  gesture: Gesture,
  { phrases, standards }: Speech,
): string {
  const objects = phrases.and(controls.map(control => controlObject(control, phrases)));
  return phrases.sentence(gestureWords(objects, touchOf(controls), gesture, { phrases, standards }));
}

function gestureWords(
  control: string,
  touch: Touch,
  gesture: Gesture,
  { phrases, standards }: Speech,
): string {
  const prefix = PREFIX[touch];
  switch (gesture.kind) {
    case 'press':
    case 'release':
    case 'held':
      return phrases.say(`${prefix}${gesture.kind}`, { control });
    case 'repeat':
      return phrases.say(`${prefix}repeat`, { control });
    case 'hold':
    case 'tap':
    case 'double tap':
      return phrases.say(`${prefix}${gesture.kind}`, {
        control,
        time: timeWords(gesture.time, standards, phrases),
      });
    case 'at':
    case 'flip to':
      return phrases.say(gesture.kind, { control, position: gesture.position });
    case 'flip':
    case 'turn':
      return phrases.say(gesture.kind, { control });
    default:
      return gesture satisfies never;
  }
}

/** One sentence for each kind of hand movement among the alternatives: those pressed alike share one with `or`. */
export function alternativeSentences(
  alternatives: readonly Chord[],
  gesture: Gesture,
  speech: Speech,
): readonly string[] {
  const { phrases } = speech;
  const chords = alternatives.map(namedControls);
  const sentences: string[] = [];
  for (const touch of ['press', 'push', 'together'] as const) {
    const alike = chords.filter(controls => touchOf(controls) === touch);
    if (alike.length === 0) continue;
    const objects = alike.map(controls =>
      phrases.and(controls.map(control => controlObject(control, phrases))),
    );
    sentences.push(phrases.sentence(gestureWords(phrases.or([...new Set(objects)]), touch, gesture, speech)));
  }
  return sentences;
}

/** `tap`, `hold 2 s`, `to A`. */
export function shortGesture(gesture: Gesture, { phrases, standards }: Speech): string {
  switch (gesture.kind) {
    case 'hold':
      return phrases.say('short hold', { time: shortTime(gesture.time, standards, phrases) });
    case 'at':
    case 'flip to':
      return phrases.say(`short ${gesture.kind}`, { position: gesture.position });
    default:
      return phrases.say(`short ${gesture.kind}`);
  }
}

/** Needs no telling beside a control: pressing a button, holding a stick, turning a knob. */
export function isPlainGesture(gesture: Gesture): boolean {
  return gesture.kind === 'press' || gesture.kind === 'held' || gesture.kind === 'turn';
}
