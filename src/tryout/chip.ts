import type { Phrases } from '../documents/phrase-book.js';
import { switchWords } from '../documents/wording/machine.js';
import { type Contact, contactType } from '../gestures/contacts.js';
import { SWITCHES } from '../hardware/switches.js';
import { PADDLE } from '../hardware/turning.js';
import { element, setText } from './dom.js';
import { isWheel } from './turning.js';
import { ownLabel } from './words.js';

/** What works one control for whoever has no pointer: a button, or two for what turns. */
export interface Chip {
  readonly target: HTMLElement;
  /** Its buttons, and where the names of their keys stand. */
  readonly keys: readonly KeyLabel[];
  show(level: number): void;
}

export interface KeyLabel {
  /** `KeyboardEvent.code`; undefined for none. */
  readonly code: string | undefined;
  readonly target: HTMLElement;
  readonly button: HTMLElement;
}

/** @param codes of the keys that work it */
export function createChip(contact: Contact, codes: readonly string[], phrases: Phrases): Chip {
  const words = contact.kind === 'control' ? ownLabel(contact, phrases) : switchWords(contact.name, phrases);
  switch (contactType(contact)) {
    case 'turning':
      return createTurner(contact, codes, words, phrases);
    case 'two-position': {
      const named = element('span');
      const key = createButton(contact, { code: codes[0], words: named });
      const show = (level: number) =>
        setText(named, phrases.say('name and value', { name: words, value: positionWords(contact, level) }));
      return { target: key.button, keys: [key], show };
    }
    default: {
      const named = element('span', {}, words, unseen(playerNote(contact, phrases)));
      const key = createButton(contact, { code: codes[0], words: named });
      return {
        target: key.button,
        keys: [key],
        show: level => key.button.classList.toggle('on', level === 1),
      };
    }
  }
}

function createTurner(contact: Contact, codes: readonly string[], words: string, phrases: Phrases): Chip {
  const { say } = phrases;
  const control = words + playerNote(contact, phrases);
  // Changes all the time: nothing to be read out.
  const readout = element('output', { 'aria-live': 'off' });
  const left = createButton(contact, {
    code: codes[0],
    words: '◀',
    label: say('try turn left', { control }),
    way: -1,
  });
  const right = createButton(contact, {
    code: codes[1],
    words: '▶',
    label: say('try turn right', { control }),
    way: 1,
  });
  const named = element('span', {}, words, ', ', readout);
  return {
    target: element('span', { class: 'turner' }, left.button, named, right.button),
    keys: [left, right],
    show: level =>
      setText(
        readout,
        isWheel(contact)
          ? say('try step', { number: level })
          : say('try of lines', { number: level, most: PADDLE.linesAtFarEnd }),
      ),
  };
}

interface ButtonParts {
  readonly code: string | undefined;
  readonly words: HTMLElement | string;
  /** For those who can’t see the words. */
  readonly label?: string;
  /** The way it turns: −1 or 1. */
  readonly way?: number;
}

function createButton({ id }: Contact, { code, words, label, way }: ButtonParts): KeyLabel {
  const target = element('kbd', { 'aria-hidden': 'true' });
  const attributes = {
    type: 'button',
    class: 'chip',
    'data-contact': id,
    'aria-label': label,
    'data-way': way?.toString(),
  };
  const button = element(
    'button',
    attributes,
    ...(code === undefined ? [] : [target]),
    element('span', {}, words),
  );
  return { code, target, button };
}

/** Whose control it is; the eye sees that from where it stands. */
const playerNote = (contact: Contact, { say }: Phrases): string =>
  contact.kind === 'control' ? ` (${say(`player ${contact.port}`)})` : '';

const unseen = (text: string): HTMLElement => element('span', { class: 'unseen' }, text);

const positionWords = (contact: Contact, level: number): string =>
  contact.kind === 'switch' ? (SWITCHES[contact.name].positions[level]?.name ?? '') : '';
