import { type Contact, contactType } from '../gestures/contacts.js';
import { PORTS } from '../hardware/ports.js';
import { PADDLE } from '../hardware/turning.js';
import type { Current } from './pointer.js';

/** What of a pad is pressed or pushed: the standard layout of the W3C Gamepad specification. */
interface Pad {
  readonly axes: readonly number[];
  readonly pressed: readonly boolean[];
}

const HALF = 0.5;
/** Centre buttons of the standard layout. */
const SELECT = 8;
const RESET = 9;
/** A stick that is not pushed wobbles this much. */
const WOBBLE = 0.12;
/** A wheel that a stick turns, degrees a frame. */
const WHEEL_A_FRAME = 6;

/** By line of the port: what of a pad engages it. */
const BY_LINE: Readonly<Record<string, (pad: Pad) => boolean>> = {
  up: ({ axes, pressed }) => pressed[12] === true || (axes[1] ?? 0) < -HALF,
  down: ({ axes, pressed }) => pressed[13] === true || (axes[1] ?? 0) > HALF,
  left: ({ axes, pressed }) => pressed[14] === true || (axes[0] ?? 0) < -HALF,
  right: ({ axes, pressed }) => pressed[15] === true || (axes[0] ?? 0) > HALF,
  button: ({ pressed }) => pressed.slice(0, 4).includes(true),
  'pot A': ({ pressed }) => pressed[5] === true,
  'pot B': ({ pressed }) => pressed[4] === true,
};

/** The keys of a keypad, row by row, on all buttons but the two in the centre. */
const BY_KEY: readonly number[] = [0, 1, 2, 3, 4, 5, 6, 7, 10, 11, 12, 13];

/** Asks the pads once a frame; the first one plays the left port, the second the right one. Returns their names. */
export function readGamepads(current: Current): readonly string[] {
  const pads = (navigator.getGamepads?.() ?? []).filter(pad => pad?.connected);
  pads.slice(0, PORTS.length).forEach((pad, number) => {
    if (pad) work(padOf(pad), number, current);
  });
  return pads.flatMap(pad => pad?.id ?? []);
}

const padOf = ({ axes, buttons }: Gamepad): Pad => ({ axes, pressed: buttons.map(({ pressed }) => pressed) });

function work(pad: Pad, number: number, current: Current): void {
  const { hands, play } = current.desk();
  const source = `pad ${number}`;
  play.contacts.forEach(contact => {
    const isOwn = contact.kind === 'switch' || contact.port === PORTS[number];
    if (!isOwn) return;
    if (contactType(contact) === 'turning') turn(contact);
    else if (contactType(contact) === 'momentary') {
      if (isEngaged(contact, pad)) hands.press(contact, source, current.now());
      else hands.release(contact, source, current.now());
    }
  });

  /** A knob follows the stick, a wheel turns while it is pushed. */
  function turn(contact: Contact): void {
    if (contact.kind !== 'control') return;
    const push = pad.axes[contact.control.seat === 'B' ? 2 : 0] ?? 0;
    const isPushed = Math.abs(push) > WOBBLE;
    if (contact.control.wiring.kind === 'gray') {
      if (isPushed) hands.turn(contact, push * WHEEL_A_FRAME);
    } else if (isPushed) hands.turnTo(contact, ((1 - push) / 2) * PADDLE.linesAtFarEnd);
  }
}

function isEngaged(contact: Contact, pad: Pad): boolean {
  if (contact.kind === 'switch') return pad.pressed[contact.name === 'RESET' ? RESET : SELECT] === true;
  const { wiring, seat } = contact.control;
  if (wiring.kind === 'matrix')
    return pad.pressed[BY_KEY[(wiring.row - 1) * 3 + wiring.column - 1] ?? -1] === true;
  if (seat !== '') return pad.pressed[seat === 'A' ? 0 : 1] === true;
  return wiring.kind === 'contact' && BY_LINE[wiring.line]?.(pad) === true;
}
