import { contactType } from '../gestures/contacts.js';
import type { KeyMap, KeyUse } from './keys.js';
import type { Current } from './pointer.js';

/** The keys of the map, and Space and Enter on a control’s own button. */
export function listenToKeyboard(current: Current & { keys(): KeyMap }): void {
  const down = new Set<string>();
  document.addEventListener('keydown', event => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const use = useOf(event, current);
    if (use === null) return;
    event.preventDefault();
    if (event.repeat || down.has(event.code)) return;
    down.add(event.code);
    engage(use, `key ${event.code}`, current);
  });
  document.addEventListener('keyup', event => {
    if (!down.delete(event.code)) return;
    event.preventDefault();
    current.desk().hands.letGo(current.now(), `key ${event.code}`);
  });
  // Keys that are let go elsewhere are never told.
  window.addEventListener('blur', () => {
    down.clear();
    current.desk().hands.letGo(current.now());
  });
}

function engage({ contact, way }: KeyUse, source: string, current: Current): void {
  const { hands } = current.desk();
  const type = contactType(contact);
  if (type === 'two-position') hands.flip(contact);
  else if (type === 'turning') hands.keepTurning(contact, way, source);
  else hands.press(contact, source, current.now());
}

/** What a key does now; null where it is the page’s own: in a list, or Space and Enter on a button of the page. */
function useOf(event: KeyboardEvent, current: Current & { keys(): KeyMap }): KeyUse | null {
  const target = event.target instanceof Element ? event.target : null;
  if (target?.closest('select, input') !== null && target !== null) return null;
  const button = target?.closest('button, a') ?? null;
  if (button !== null && (event.code === 'Space' || event.code === 'Enter')) {
    const id = button.getAttribute('data-contact');
    const contact = current.desk().play.contacts.find(each => each.id === id);
    if (contact === undefined) return null;
    return { contact, way: Number(button.getAttribute('data-way') ?? 0) };
  }
  return current.keys().byCode.get(event.code) ?? null;
}
