import type { Contact } from '../../gestures/contacts.js';
import type { SeatLetter } from '../../hardware/controllers.js';
import type { Port } from '../../hardware/ports.js';
import type { Chord, ControlName } from '../../language/model.js';
import type { Phrases } from '../phrase-book.js';
import { PHRASES, type PhraseKey } from '../phrase-keys.js';

/** A control as the player is told of it: a row's control, or a contact without its place. */
export type NamedControl =
  | { readonly kind: 'switch'; readonly name: string }
  | {
      readonly kind: 'control';
      readonly name: string;
      readonly port: Port | null;
      readonly letter: SeatLetter;
    };

/** How a hand works it: a stick is pushed, all else is pressed. */
export type Touch = 'press' | 'push' | 'together';

const KEY_SIGNS: Readonly<Record<string, string>> = { star: '*', hash: '#' };

/** The sign printed on a key: `5`, `*`, `#`. */
export function keySign(name: string): string {
  const key = name.slice('key '.length);
  return KEY_SIGNS[key] ?? key;
}

/** `Button`, `Stick left or right`, `Key 5`: to head a line or a call-out. */
export function controlLabel(control: NamedControl, phrases: Phrases): string {
  return nameControl('label', control, phrases);
}

/** `the button`, `the stick left or right`, `key 5`: within a gesture's phrase. */
export function controlObject(control: NamedControl, phrases: Phrases): string {
  return nameControl('the', control, phrases);
}

function nameControl(form: 'label' | 'the', control: NamedControl, phrases: Phrases): string {
  const name = plainName(form, control.name, phrases);
  if (control.kind === 'switch') return name;
  const { letter, port } = control;
  const forms = form === 'label' ? LABEL_FORMS : OBJECT_FORMS;
  const seated = letter === '' ? name : phrases.say(forms.seat, { control: name, letter });
  return port === null ? seated : phrases.say(forms[port], { control: seated });
}

const LABEL_FORMS = {
  seat: 'label of seat',
  left: 'label of port left',
  right: 'label of port right',
} as const satisfies Readonly<Record<string, PhraseKey>>;

const OBJECT_FORMS = {
  seat: 'the control of seat',
  left: 'the control of port left',
  right: 'the control of port right',
} as const satisfies Readonly<Record<string, PhraseKey>>;

function plainName(form: 'label' | 'the', name: string, phrases: Phrases): string {
  if (/^key ([0-9]|star|hash)$/.test(name)) return phrases.say(`${form} key`, { key: keySign(name) });
  const key = `${form} ${name}`;
  return isPlainKey(key) ? phrases.say(key) : phrases.say(`${form} own`, { name });
}

type PlainKey = { [Key in PhraseKey]: (typeof PHRASES)[Key]['length'] extends 0 ? Key : never }[PhraseKey];

function isPlainKey(key: string): key is PlainKey {
  return Object.hasOwn(PHRASES, key) && PHRASES[key as PhraseKey].length === 0;
}

/** The chord's controls, as a row names them. */
export function namedControls(chord: Chord): readonly NamedControl[] {
  return chord.parts.map(nameOf);
}

const nameOf = (part: ControlName): NamedControl =>
  part.kind === 'switch'
    ? { kind: 'switch', name: part.name }
    : { kind: 'control', name: part.name, port: part.port, letter: part.letter };

/** @param withPort whether the port is told: where it is not that of the player the sentence is about */
export function namedContact(contact: Contact, withPort: boolean): NamedControl {
  if (contact.kind === 'switch') return { kind: 'switch', name: contact.name };
  const { control, port } = contact;
  return {
    kind: 'control',
    name: control.name,
    port: withPort ? port : null,
    letter: withPort ? control.seat : '',
  };
}

export function touchOf(controls: readonly NamedControl[]): Touch {
  const [only, ...more] = controls;
  if (more.length > 0 || only === undefined) return 'together';
  return only.kind === 'control' && only.name.startsWith('stick') ? 'push' : 'press';
}
