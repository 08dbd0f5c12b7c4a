import { type Binding, bindingsOf } from '../../gestures/bindings.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { SwitchName } from '../../hardware/switches.js';
import type { Mode, Scheme } from '../../language/model.js';
import { rowsOn, type SwitchCall } from '../manual/console.js';
import { bindingName, togetherWith } from '../wording/bindings.js';
import { type Speech, shortGesture } from '../wording/gestures.js';
import { switchWords } from '../wording/machine.js';

/** What a strip says: a column for each switch in use that the panel has, from left to right. */
export interface StripView {
  /** The consoles it is for: one that has no more than another at the back uses the other's. */
  readonly consoles: readonly ConsoleProfile[];
  readonly front: readonly StripColumn[];
  readonly rear: readonly StripColumn[];
}

export interface StripColumn {
  readonly label: string;
  /** What its positions mean in every mode; empty where they mean nothing. */
  readonly setting: string;
  /** What it does in each mode of the scheme, in their order; empty where it does nothing. */
  readonly modes: readonly string[];
}

/** The order of a panel from left to right. */
const ORDER: readonly SwitchName[] = ['TV type', 'left difficulty', 'right difficulty', 'SELECT', 'RESET'];

/** @param calls the switches that the scheme itself names */
export function viewStrips(
  scheme: Scheme,
  calls: readonly SwitchCall[],
  speech: Speech,
): readonly StripView[] {
  const views = scheme.consoles
    .map(profile => viewStrip(profile, calls, scheme, speech))
    .filter(({ front, rear }) => front.length + rear.length > 0);
  const kept = views.filter((view, index) => !views.some((other, at) => serves(other, view, at < index)));
  return kept.map(view => ({
    ...view,
    consoles: views.filter(other => serves(view, other, true)).flatMap(({ consoles }) => consoles),
  }));
}

/** @param isFirst whether it also serves one that is just like it */
function serves(view: StripView, other: StripView, isFirst: boolean): boolean {
  const rear = view.rear.map(column => JSON.stringify(column));
  const isMore = rear.length > other.rear.length || (isFirst && rear.length === other.rear.length);
  return (
    isMore &&
    JSON.stringify(view.front) === JSON.stringify(other.front) &&
    other.rear.every(column => rear.includes(JSON.stringify(column)))
  );
}

function viewStrip(
  profile: ConsoleProfile,
  calls: readonly SwitchCall[],
  scheme: Scheme,
  speech: Speech,
): StripView {
  const columns = ORDER.map(name => ({
    name,
    label: switchWords(name, speech.phrases),
    setting: settingWords(name, scheme, speech),
    modes: scheme.modes.map(mode => modeWords(name, mode, profile, scheme, speech)),
  })).filter(
    ({ name, modes }) => calls.some(call => call.name === name) || modes.some(words => words !== ''),
  );
  const at = (kind: 'front' | 'rear') =>
    columns
      .filter(({ name }) => profile.switches[name].kind === kind)
      .map(({ label, setting, modes }) => ({ label, setting, modes }));
  return { consoles: [profile], front: at('front'), rear: at('rear') };
}

/** `A: strong, B: gentle`; where no setting hangs on the switch, what the scheme says of its positions. */
function settingWords(name: SwitchName, scheme: Scheme, { phrases }: Speech): string {
  const values = scheme.settings.flatMap(({ setBy }) =>
    setBy.kind === 'switch' && setBy.name === name
      ? [...setBy.values].map(([position, value]) => phrases.say('switch value', { position, value }))
      : [],
  );
  if (values.length > 0) return values.join(', ');
  if (rowsOn(name, scheme).length > 0) return '';
  return scheme.switchWords
    .filter(words => words.name === name && words.words !== '')
    .map(({ position, words }) =>
      position === null ? words : phrases.say('switch position', { position, words }),
    )
    .join(', ');
}

const QUICK_FIRST = ['press', 'tap', 'repeat', 'held', 'double tap', 'hold', 'release'];

/** With what fallbacks of this console make of the switch. */
function modeWords(
  name: SwitchName,
  mode: Mode,
  profile: ConsoleProfile,
  scheme: Scheme,
  speech: Speech,
): string {
  const said = mode.seats
    .flatMap(seats => bindingsOf(scheme, mode, seats, profile))
    .filter(({ parts }) => parts.some(part => part.kind === 'switch' && part.name === name))
    .toSorted((a, b) => QUICK_FIRST.indexOf(a.gesture.kind) - QUICK_FIRST.indexOf(b.gesture.kind))
    .map(binding => useWords(name, binding, speech));
  return [...new Set(said)].join(', ');
}

/** `Go home (hold 1.5 s)`. */
function useWords(name: SwitchName, binding: Binding, speech: Speech): string {
  const { gesture, parts } = binding;
  const { phrases } = speech;
  const isPlain = gesture.kind === 'press' || gesture.kind === 'repeat';
  const partners = parts.filter(part => part.kind !== 'switch' || part.name !== name);
  const note = [isPlain ? '' : shortGesture(gesture, speech), togetherWith(partners, phrases)]
    .filter(Boolean)
    .join(', ');
  const sentence = bindingName(binding, phrases);
  return note === '' ? sentence : phrases.say('sentence with note', { sentence, note });
}
