import type { Phrases } from '../documents/phrase-book.js';
import { controlLabel } from '../documents/wording/controls.js';
import { type Contact, contactType } from '../gestures/contacts.js';
import type { Play } from '../gestures/play.js';
import { PORTS } from '../hardware/ports.js';
import { isTwoPosition, SWITCHES, type SwitchName } from '../hardware/switches.js';
import { PADDLE } from '../hardware/turning.js';
import { element, setText } from './dom.js';
import type { KeyMap } from './keys.js';
import { isWheel } from './turning.js';
import { keyWords, portWords } from './words.js';

/** A button for each control, with the key that works it: for whoever has no pointer, and to look the keys up. */
export function createKeys({
  play,
  levels,
  keys,
  phrases,
}: {
  play: Play;
  levels: readonly number[];
  keys: KeyMap;
  phrases: Phrases;
}) {
  const { contacts, seats, profile } = play;
  const chips = new Map<Contact, HTMLElement>();
  const labels: { readonly code: string; readonly target: HTMLElement }[] = [];
  for (const port of PORTS) {
    const title = document.querySelector(`[data-title="${port}"]`);
    if (title !== null) setText(title, portWords(port, seats, phrases));
    fill(
      port,
      contacts.filter(contact => contact.kind === 'control' && contact.port === port),
    );
  }
  const isWorked = ({ kind }: { kind: string }) => kind === 'front' || kind === 'rear';
  fill(
    'panel',
    contacts.filter(each => each.kind === 'switch' && isWorked(profile.switches[each.name])),
  );
  const show = (now: readonly number[]) => {
    contacts.forEach((contact, index) => {
      const chip = chips.get(contact);
      if (chip === undefined) return;
      const level = now[index] ?? 0;
      const type = contactType(contact);
      if (type === 'momentary') chip.classList.toggle('on', level === 1);
      else
        setText(
          chip,
          type === 'turning' ? turnWords(contact, level, phrases) : positionWords(contact, level),
        );
    });
  };
  const name = (layout: ReadonlyMap<string, string>) => {
    for (const { code, target } of labels) setText(target, keyWords(code, layout, phrases));
  };
  name(new Map());
  show(levels);
  return { show, name };

  function fill(place: string, own: readonly Contact[]): void {
    const target = document.querySelector(`[data-keys="${place}"]`);
    target?.replaceChildren(...own.map(contact => chipOf(contact, keys.codesOf.get(contact.id) ?? [])));
  }

  function chipOf(contact: Contact, codes: readonly string[]): HTMLElement {
    const words = contact.kind === 'control' ? wordsOf(contact, phrases) : contact.name;
    if (contactType(contact) === 'turning') {
      const readout = element('output', { 'aria-live': 'off' });
      chips.set(contact, readout);
      const [down, up] = [-1, 1].map((way, index) =>
        buttonOf(
          contact,
          phrases.say(way < 0 ? 'try turn left' : 'try turn right', { control: words }),
          codes[index],
          [way < 0 ? '◀' : '▶'],
          way,
        ),
      );
      return element(
        'span',
        { class: 'turner' },
        down ?? '',
        element('span', {}, words, ' ', readout),
        up ?? '',
      );
    }
    if (contactType(contact) === 'two-position') {
      const readout = element('output', { 'aria-live': 'off' });
      chips.set(contact, readout);
      return buttonOf(contact, undefined, codes[0], [words, ': ', readout], 0);
    }
    const chip = buttonOf(contact, undefined, codes[0], [words], 0);
    chips.set(contact, chip);
    return chip;
  }

  function buttonOf(
    { id }: Contact,
    label: string | undefined,
    code: string | undefined,
    words: readonly (Node | string)[],
    way: number,
  ): HTMLElement {
    const key = element('kbd');
    if (code !== undefined) labels.push({ code, target: key });
    return element(
      'button',
      {
        type: 'button',
        class: 'chip',
        'data-contact': id,
        'aria-label': label,
        'data-way': way === 0 ? undefined : `${way}`,
      },
      ...(code === undefined ? [] : [key]),
      element('span', {}, ...words),
    );
  }
}

/** A control under its own port’s title needs no port in its name. */
function wordsOf({ control }: Extract<Contact, { kind: 'control' }>, phrases: Phrases): string {
  return controlLabel({ kind: 'control', name: control.name, port: null, letter: control.seat }, phrases);
}

function positionWords(contact: Contact, level: number): string {
  if (contact.kind !== 'switch' || !isTwoPosition(contact.name)) return '';
  return SWITCHES[contact.name satisfies SwitchName].positions[level]?.name ?? '';
}

function turnWords(contact: Contact, level: number, { say }: Phrases): string {
  return isWheel(contact)
    ? say('try step', { number: level })
    : say('try of lines', { number: level, most: PADDLE.linesAtFarEnd });
}
