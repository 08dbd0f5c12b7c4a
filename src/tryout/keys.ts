import { type Contact, contactType } from '../gestures/contacts.js';
import type { Port } from '../hardware/ports.js';
import type { SwitchName } from '../hardware/switches.js';

/**
 * The keys of a keyboard for each control, by `KeyboardEvent.code`: where the key is, whatever is printed on it
 * (W3C, UI Events KeyboardEvent code Values). The left hand plays the left port, the right hand the right one.
 */
export interface KeyMap {
  /** By code: the contact that is engaged, moved (a switch) or turned. */
  readonly byCode: ReadonlyMap<string, KeyUse>;
  /** By contact: its codes; those of a control that turns the one that turns clockwise last. */
  readonly codesOf: ReadonlyMap<string, readonly string[]>;
}

export interface KeyUse {
  readonly contact: Contact;
  /** For what turns: clockwise (1) or the other way (−1); else 0. */
  readonly way: number;
}

const SWITCH_KEYS: Readonly<Record<SwitchName, string>> = {
  'TV type': 'KeyY',
  'left difficulty': 'KeyB',
  'right difficulty': 'KeyN',
  SELECT: 'KeyT',
  RESET: 'KeyR',
};

type ByPort = Readonly<Record<Port, readonly string[]>>;

/** By controller, in the order of its controls; two codes for what turns. */
const CONTROLLER_KEYS: Readonly<Record<string, ByPort>> = {
  joystick: {
    left: ['KeyW', 'KeyS', 'KeyA', 'KeyD', 'Space'],
    right: ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'Enter'],
  },
  paddles: {
    left: ['KeyA', 'KeyD', 'KeyS', 'KeyF', 'KeyH', 'KeyG'],
    right: ['ArrowLeft', 'ArrowRight', 'ArrowDown', 'KeyJ', 'KeyL', 'KeyK'],
  },
  wheel: {
    left: ['KeyA', 'KeyD', 'Space'],
    right: ['ArrowLeft', 'ArrowRight', 'Enter'],
  },
  keypad: {
    left: codes('Digit1 Digit2 Digit3 KeyQ KeyW KeyE KeyA KeyS KeyD KeyZ KeyX KeyC'),
    right: codes('Digit7 Digit8 Digit9 KeyU KeyI KeyO KeyJ KeyK KeyL KeyM Comma Period'),
  },
};

/** For own controllers, by the line that a control is wired to. */
const LINE_KEYS: Readonly<Record<Port, Readonly<Record<string, string>>>> = {
  left: {
    up: 'KeyW',
    down: 'KeyS',
    left: 'KeyA',
    right: 'KeyD',
    button: 'Space',
    'pot A': 'KeyQ',
    'pot B': 'KeyE',
  },
  right: {
    up: 'ArrowUp',
    down: 'ArrowDown',
    left: 'ArrowLeft',
    right: 'ArrowRight',
    button: 'Enter',
    'pot A': 'KeyO',
    'pot B': 'KeyP',
  },
};

/** For more controls on one line. */
const MORE_KEYS: ByPort = {
  left: codes('KeyZ KeyX KeyC KeyV Digit1 Digit2 Digit3 Digit4 Digit5'),
  right: codes('KeyI KeyJ KeyK KeyL KeyM Comma Period Digit7 Digit8 Digit9'),
};

function codes(text: string): readonly string[] {
  return text.split(' ');
}

export function createKeyMap(contacts: readonly Contact[]): KeyMap {
  const free = { left: 0, right: 0 };
  const byCode = new Map<string, KeyUse>();
  const codesOf = new Map<string, readonly string[]>();
  for (const contact of contacts) {
    const isTurning = contactType(contact) === 'turning';
    const own = contact.kind === 'switch' ? [SWITCH_KEYS[contact.name]] : take(contact, isTurning ? 2 : 1);
    codesOf.set(contact.id, own);
    own.forEach((code, index) => {
      byCode.set(code, { contact, way: isTurning ? (index === 0 ? -1 : 1) : 0 });
    });
  }
  return { byCode, codesOf };

  function take(contact: Extract<Contact, { kind: 'control' }>, count: number): readonly string[] {
    const { port, controller, control } = contact;
    if (controller.own) {
      const line = control.wiring.kind === 'contact' ? LINE_KEYS[port][control.wiring.line] : undefined;
      const code = [...(line === undefined ? [] : [line]), ...MORE_KEYS[port]].find(
        each => !byCode.has(each),
      );
      return code === undefined ? [] : [code];
    }
    const from = free[port];
    free[port] += count;
    return (CONTROLLER_KEYS[controller.name]?.[port] ?? []).slice(from, from + count);
  }
}
