import type { BindingRow, Mode, Scheme } from '../../language/model.js';
import { controlLabel, namedControls } from '../wording/controls.js';
import { type Speech, shortGesture } from '../wording/gestures.js';
import { isForOne, whoWords } from '../wording/who.js';

/** Chapter 9: every control of every mode in as few words as can be. */
export interface QuickView {
  readonly modes: readonly QuickMode[];
}

export interface QuickMode {
  readonly name: string;
  readonly isPlay: boolean;
  readonly lines: readonly QuickLine[];
}

export interface QuickLine {
  /** `Button, tap`; with the player where only one has it. */
  readonly control: string;
  readonly action: string;
}

export function viewQuick(scheme: Scheme, speech: Speech): QuickView {
  return { modes: scheme.modes.flatMap(mode => viewMode(mode, speech)) };
}

function viewMode(mode: Mode, speech: Speech): readonly QuickMode[] {
  const lines = mode.rows.flatMap(row =>
    row.gesture === null ? [] : [{ control: controlWords(row, speech), action: row.action.name }],
  );
  return lines.length === 0 ? [] : [{ name: mode.name, isPlay: mode.kind === 'play', lines }];
}

function controlWords(row: BindingRow, speech: Speech): string {
  const { phrases } = speech;
  const labels = row.alternatives.map(chord =>
    namedControls(chord)
      .map(control => controlLabel(control, phrases))
      .join(' + '),
  );
  const gesture = row.gesture?.value;
  const isPlain = gesture === undefined || PLAIN.includes(gesture.kind) || isStickHeld(row);
  const how = isPlain ? '' : `, ${shortGesture(gesture, speech)}`;
  const said = `${phrases.or([...new Set(labels)])}${how}`;
  return row.who.value.kind === 'player' && !isForOne(row.mode)
    ? phrases.say('sentence with note', { sentence: said, note: whoWords(row, phrases) })
    : said;
}

/** Naming the control is enough. */
const PLAIN = ['press', 'repeat', 'turn'];

/** A stick that is held is simply the stick. */
function isStickHeld(row: BindingRow): boolean {
  const isStick = row.alternatives.every(chord =>
    chord.parts.every(part => part.kind === 'control' && part.name.startsWith('stick')),
  );
  return isStick && row.gesture?.value.kind === 'held';
}
