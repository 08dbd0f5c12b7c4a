import type { Phrases } from '../documents/phrase-book.js';
import { controlLabel } from '../documents/wording/controls.js';
import { switchWords } from '../documents/wording/machine.js';
import { type Contact, contactType } from '../gestures/contacts.js';
import { SWITCHES } from '../hardware/switches.js';
import { PADDLE } from '../hardware/turning.js';
import { element, setText } from './dom.js';
import { isWheel } from './turning.js';

/** What works one control for whoever has no pointer: a button, or two for what turns. */
export interface Chip {
  readonly target: HTMLElement;
  /** Where the names of its keys stand. */
  readonly keys: readonly KeyLabel[];
  show(level: number): void;
}

export interface KeyLabel {
  /** `KeyboardEvent.code` */
  readonly code: string;
  readonly target: HTMLElement;
}

/** @param codes of the keys that work it */
export function createChip(contact: Contact, codes: readonly string[], phrases: Phrases): Chip {
  const words = contact.kind === 'control' ? wordsOf(contact, phrases) : switchWords(contact.name, phrases);
  switch (contactType(contact)) {
    case 'turning':
      return createTurner(contact, codes, words, phrases);
    case 'two-position': {
      const readout = createReadout();
      const named = phrases.say('name and value', { name: words, value: '' });
      const { button, keys } = createButton(contact, { code: codes[0], words: [named, readout] });
      return { target: button, keys, show: level => setText(readout, positionWords(contact, level)) };
    }
    default: {
      const { button, keys } = createButton(contact, { code: codes[0], words: [words] });
      return { target: button, keys, show: level => button.classList.toggle('on', level === 1) };
    }
  }
}

function createTurner(contact: Contact, codes: readonly string[], words: string, { say }: Phrases): Chip {
  const readout = createReadout();
  const left = createButton(contact, {
    code: codes[0],
    words: ['◀'],
    label: say('try turn left', { control: words }),
    way: -1,
  });
  const right = createButton(contact, {
    code: codes[1],
    words: ['▶'],
    label: say('try turn right', { control: words }),
    way: 1,
  });
  const named = element('span', {}, words, ' ', readout);
  return {
    target: element('span', { class: 'turner' }, left.button, named, right.button),
    keys: [...left.keys, ...right.keys],
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
  readonly words: readonly (Node | string)[];
  /** For those who can’t see the words. */
  readonly label?: string;
  /** The way it turns: −1 or 1. */
  readonly way?: number;
}

function createButton({ id }: Contact, { code, words, label, way }: ButtonParts) {
  const key = element('kbd');
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
    ...(code === undefined ? [] : [key]),
    element('span', {}, ...words),
  );
  return { button, keys: code === undefined ? [] : [{ code, target: key }] };
}

/** Changes all the time: nothing to be read out. */
const createReadout = (): HTMLElement => element('output', { 'aria-live': 'off' });

/** A control under its own port’s title needs no port in its name. */
function wordsOf({ control }: Extract<Contact, { kind: 'control' }>, phrases: Phrases): string {
  return controlLabel({ kind: 'control', name: control.name, port: null, letter: control.seat }, phrases);
}

const positionWords = (contact: Contact, level: number): string =>
  contact.kind === 'switch' ? (SWITCHES[contact.name].positions[level]?.name ?? '') : '';
