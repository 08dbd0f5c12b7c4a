import type { Control, Controller } from '../hardware/controllers.js';
import type { Port } from '../hardware/ports.js';
import { isTwoPosition, type SwitchName } from '../hardware/switches.js';

/**
 * One physical control of a console with its controllers plugged in: two controls are on the same line when
 * they are the same contact. Compared by `id`.
 */
export type Contact =
  | {
      readonly kind: 'control';
      /** `left stick up`, `right button`, `left A paddle`, `left key 5`. */
      readonly id: string;
      readonly port: Port;
      readonly controller: Controller;
      readonly control: Control;
    }
  | { readonly kind: 'switch'; readonly id: SwitchName; readonly name: SwitchName };

/** The same object each time for the same control of the same controller in the same port. */
export function controlContact(port: Port, controller: Controller, control: Control): Contact {
  const known = contacts[port].get(control);
  if (known?.kind === 'control' && known.controller === controller) return known;
  const seat = control.seat === '' ? port : `${port} ${control.seat}`;
  const contact: Contact = { kind: 'control', id: `${seat} ${control.name}`, port, controller, control };
  contacts[port].set(control, contact);
  return contact;
}

const contacts = { left: new WeakMap<Control, Contact>(), right: new WeakMap<Control, Contact>() };

export function switchContact(name: SwitchName): Contact {
  return SWITCH_CONTACTS[name];
}

const switchContactOf = (name: SwitchName): Contact => ({ kind: 'switch', id: name, name });

const SWITCH_CONTACTS: Readonly<Record<SwitchName, Contact>> = {
  'TV type': switchContactOf('TV type'),
  'left difficulty': switchContactOf('left difficulty'),
  'right difficulty': switchContactOf('right difficulty'),
  SELECT: switchContactOf('SELECT'),
  RESET: switchContactOf('RESET'),
};

/** How a contact is worked: engaged or not, in one of two positions, or turned. */
export function contactType(contact: Contact): 'momentary' | 'two-position' | 'turning' {
  if (contact.kind === 'switch') return isTwoPosition(contact.name) ? 'two-position' : 'momentary';
  const { kind } = contact.control.wiring;
  return kind === 'pot' || kind === 'gray' ? 'turning' : 'momentary';
}
