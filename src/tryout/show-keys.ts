import type { Phrases } from '../documents/phrase-book.js';
import type { Contact } from '../gestures/contacts.js';
import type { Play } from '../gestures/play.js';
import { PORTS } from '../hardware/ports.js';
import { createChip } from './chip.js';
import { setAway, setText } from './dom.js';
import type { KeyMap } from './keys.js';
import { keyWords, portWords, shortcutName } from './words.js';

/** Below each drawing a button for each control, with the keys that work it. */
export function createKeys(play: Play, keys: KeyMap, phrases: Phrases) {
  const { contacts } = play;
  const chips = contacts.map(contact => createChip(contact, keys.codesOf.get(contact.id) ?? [], phrases));
  const fill = (place: string, isThere: (contact: Contact) => boolean) => {
    const own = contacts.flatMap((contact, index) => (isThere(contact) ? (chips[index]?.target ?? []) : []));
    document.querySelector(`[data-keys="${place}"]`)?.replaceChildren(...own);
  };
  fill('panel', contact => isMovable(contact, play));
  for (const port of PORTS) {
    fill(port, contact => contact.kind === 'control' && contact.port === port);
    const title = document.querySelector(`[data-title="${port}"]`);
    if (title !== null) setText(title, portWords(port, play.seats, phrases));
  }
  return {
    show(levels: readonly number[]) {
      chips.forEach((chip, index) => {
        chip.show(levels[index] ?? 0);
      });
    },
    /** While something is replayed they do nothing, and look so. */
    setAway(isAway: boolean) {
      for (const { button } of chips.flatMap(chip => chip.keys)) setAway(button, isAway);
    },
    name(layout: ReadonlyMap<string, string>) {
      for (const { code, target, button } of chips.flatMap(chip => chip.keys)) {
        if (code === undefined) continue;
        setText(target, keyWords(code, layout, phrases));
        button.setAttribute('aria-keyshortcuts', shortcutName(code, layout));
      }
    },
  };
}

function isMovable(contact: Contact, { profile }: Play): boolean {
  if (contact.kind !== 'switch') return false;
  const { kind } = profile.switches[contact.name];
  return kind === 'front' || kind === 'rear';
}
