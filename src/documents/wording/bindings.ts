import type { Binding } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import type { Phrases } from '../phrase-book.js';
import { controlLabel, namedContact } from './controls.js';

/** What a binding does: the action's name, or that a setting goes on to its next value (a fallback). */
export function bindingName({ action, actionName, origin }: Binding, { say }: Phrases): string {
  if (origin.kind === 'fallback' && origin.row === null && origin.fallback.subject.kind === 'setting')
    return say('next value', { setting: origin.fallback.subject.setting.name });
  return action?.name ?? actionName;
}

/** `with SELECT`: what must be pressed together with something else; empty where there is nothing. */
export function togetherWith(partners: readonly Contact[], phrases: Phrases): string {
  if (partners.length === 0) return '';
  const labels = partners.map(contact => controlLabel(namedContact(contact, false), phrases));
  return phrases.say('with controls', { controls: phrases.and(labels) });
}
