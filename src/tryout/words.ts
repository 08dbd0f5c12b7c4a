import type { Phrases } from '../documents/phrase-book.js';
import { PHRASES, type PhraseKey } from '../documents/phrase-keys.js';
import { bindingName } from '../documents/wording/bindings.js';
import { controlLabel, namedContact } from '../documents/wording/controls.js';
import { type Speech, shortGesture } from '../documents/wording/gestures.js';
import { switchWords } from '../documents/wording/machine.js';
import { conditionSentence, effectSentence } from '../documents/wording/rows.js';
import { shortTime } from '../documents/wording/times.js';
import type { Binding } from '../gestures/bindings.js';
import type { Contact } from '../gestures/contacts.js';
import type { Controller, Direction } from '../hardware/controllers.js';
import type { Port } from '../hardware/ports.js';
import type { Condition, Effect, Gesture, Mode, SeatsRow } from '../language/model.js';

const TIMED = {
  tap: 'try tap',
  'double tap': 'try double tap',
  repeat: 'try repeat',
} as const satisfies Readonly<Record<string, PhraseKey>>;

/** As the manual says it, on this television, with what its time means: `tap (let go within 0.4 s)`. */
export function gestureWords(gesture: Gesture, speech: Speech): string {
  const words = shortGesture(gesture, speech);
  if (!('time' in gesture) || gesture.kind === 'hold') return words;
  const time = shortTime(gesture.time, speech.standards, speech.phrases);
  return speech.phrases.say(TIMED[gesture.kind], { gesture: words, time });
}

/** `Key 5 + Button`: the port is told where it is not that of the player. */
export function controlWords({ parts, player }: Binding, phrases: Phrases): string {
  const labels = parts.map(part => {
    const isElsewhere = part.kind === 'control' && !player.startsWith(part.port);
    return controlLabel(namedContact(part, isElsewhere), phrases);
  });
  return labels.join(' + ');
}

const BITS = {
  left: 'try bit left',
  right: 'try bit right',
} as const satisfies Readonly<Record<Port, PhraseKey>>;

/** What hangs on a bit, short: `left: Stick up`. */
export function wireWords(contact: Contact, phrases: Phrases): string {
  if (contact.kind === 'switch') return switchWords(contact.name, phrases);
  return phrases.say(BITS[contact.port], { control: ownLabel(contact, phrases) });
}

/** A line of a keypad, short: `left: row 2, driven`. */
export function keypadLineWords(
  port: Port,
  line: 'row' | 'column',
  number: number,
  { say }: Phrases,
): string {
  return say(BITS[port], { control: say(line === 'row' ? 'try driven' : 'try column', { number }) });
}

/** Of a control, where its port is plain: `Stick up`. */
export function ownLabel({ control }: Extract<Contact, { kind: 'control' }>, phrases: Phrases): string {
  return controlLabel({ kind: 'control', name: control.name, port: null, letter: control.seat }, phrases);
}

const WAYS = {
  up: 'try way up',
  down: 'try way down',
  left: 'try way left',
  right: 'try way right',
} as const satisfies Readonly<Record<Direction, PhraseKey>>;

/** `Steer left (Right player)`: the direction, and the player where it is not anyone. */
export function actionWords(binding: Binding, phrases: Phrases): string {
  const { direction, player } = binding;
  const name = bindingName(binding, phrases);
  const sentence = direction === null ? name : `${name} ${phrases.say(WAYS[direction])}`;
  if (player === 'anyone') return sentence;
  return phrases.say('sentence with note', { sentence, note: phrases.say(`player ${player}`) });
}

/** What must hold, and what happens besides: `Only while Chart is 3. Leads to Quay.`; empty where there is neither. */
export function tailWords(
  mode: Mode,
  conditions: readonly Condition[],
  effects: readonly Effect[],
  speech: Speech,
): string {
  const asked = conditionSentence(conditions, speech);
  return [
    ...(asked === null ? [] : [asked]),
    ...effects.map(effect => effectSentence(effect, mode, speech)),
  ].join(' ');
}

/** `Left port: joystick`. */
export function portWords(port: Port, seats: SeatsRow, { say }: Phrases): string {
  const controller = seats[port];
  return say('try port', {
    port: say(`port ${port}`),
    controller: controller === null ? say('port empty') : controllerName(controller, say),
  });
}

function controllerName({ name, own }: Controller, say: Phrases['say']): string {
  const key = `controller ${name}`;
  return !own && isPhraseKey(key) ? (say as (key: PhraseKey) => string)(key) : name;
}

const isPhraseKey = (key: string): key is PhraseKey => Object.hasOwn(PHRASES, key);

/** Which key has which code, where the code’s own name does not say it. */
const KEY_WORDS: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  Comma: ',',
  Period: '.',
};

/** Codes whose keys have another name in `aria-keyshortcuts` (WAI-ARIA 1.2: the names of `KeyboardEvent.key`). */
const SHORTCUTS: Readonly<Record<string, string>> = { Comma: ',', Period: '.' };

/** As `aria-keyshortcuts` names the key. */
export function shortcutName(code: string, layout: ReadonlyMap<string, string>): string {
  const known = layout.get(code)?.toUpperCase();
  return known ?? SHORTCUTS[code] ?? code.replace(/^(Key|Digit)/, '');
}

/** What is printed on a key, as far as `layout` (by code) knows it; else on a US keyboard. */
export function keyWords(code: string, layout: ReadonlyMap<string, string>, { say }: Phrases): string {
  if (code === 'Space') return say('try key space');
  if (code === 'Enter') return say('try key enter');
  const known = layout.get(code);
  if (known !== undefined) return known.toUpperCase();
  return KEY_WORDS[code] ?? code.replace(/^(Key|Digit)/, '');
}
