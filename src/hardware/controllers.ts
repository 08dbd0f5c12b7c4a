import { KEYPAD } from './keypad.js';
import type { PortLine } from './ports.js';
import { fromSource, type Source } from './source.js';

/** The seat at a controller: '' where one player holds it, A and B for the two paddles of a pair. */
export type SeatLetter = '' | 'A' | 'B';

/** How a control reaches the machine. */
export type ControlWiring =
  /** A contact on a port line. */
  | { readonly kind: 'contact'; readonly line: PortLine }
  /** A potentiometer on a pot line, read as the time the line takes to charge. */
  | { readonly kind: 'pot'; readonly line: 'pot A' | 'pot B' }
  /** A contact between a row that the game drives and a column; rows 1 to 4, columns 1 to 3. */
  | { readonly kind: 'matrix'; readonly row: number; readonly column: number }
  /** A two-bit Gray code on two port lines. */
  | { readonly kind: 'gray'; readonly high: PortLine; readonly low: PortLine };

/** One control of a controller: a contact that is engaged or not, or something that turns. */
export interface Control {
  /** As the language writes it: `stick up`, `button`, `key 5`, `paddle`. */
  readonly name: string;
  readonly seat: SeatLetter;
  readonly wiring: ControlWiring;
}

/** Several controls under one name; makes one action with a direction for each member. */
export interface ControlGroup {
  readonly name: string;
  readonly members: readonly { readonly control: string; readonly direction: Direction }[];
}

export type Direction = 'up' | 'down' | 'left' | 'right';

export interface Controller {
  readonly name: string;
  readonly seats: readonly SeatLetter[];
  readonly controls: readonly Control[];
  readonly groups: readonly ControlGroup[];
  /** Pairs of controls that can't be engaged together. */
  readonly opposites: readonly (readonly [string, string])[];
  readonly own: boolean;
  readonly sources: readonly Source[];
}

const contact = (name: string, line: PortLine, seat: SeatLetter = ''): Control => ({
  name,
  seat,
  wiring: { kind: 'contact', line },
});

const member = (direction: Direction) => ({ control: `stick ${direction}`, direction });

const JOYSTICK: Controller = {
  name: 'joystick',
  seats: [''],
  controls: [
    contact('stick up', 'up'),
    contact('stick down', 'down'),
    contact('stick left', 'left'),
    contact('stick right', 'right'),
    contact('button', 'button'),
  ],
  groups: [
    { name: 'stick', members: [member('up'), member('down'), member('left'), member('right')] },
    { name: 'stick left/right', members: [member('left'), member('right')] },
    { name: 'stick up/down', members: [member('up'), member('down')] },
  ],
  opposites: [
    ['stick up', 'stick down'],
    ['stick left', 'stick right'],
  ],
  own: false,
  sources: [fromSource('G', 'PIA 5.3')],
};

const PADDLES: Controller = {
  name: 'paddles',
  seats: ['A', 'B'],
  controls: [
    { name: 'paddle', seat: 'A', wiring: { kind: 'pot', line: 'pot A' } },
    contact('paddle button', 'right', 'A'),
    { name: 'paddle', seat: 'B', wiring: { kind: 'pot', line: 'pot B' } },
    contact('paddle button', 'left', 'B'),
  ],
  groups: [],
  opposites: [],
  own: false,
  sources: [fromSource('G', 'PIA 5.4'), fromSource('G', 'TIA 12.1')],
};

const WHEEL: Controller = {
  name: 'wheel',
  seats: [''],
  controls: [
    { name: 'wheel', seat: '', wiring: { kind: 'gray', high: 'down', low: 'up' } },
    contact('button', 'button'),
  ],
  groups: [],
  opposites: [],
  own: false,
  sources: [fromSource('R')],
};

const KEYPAD_CONTROLLER: Controller = {
  name: 'keypad',
  seats: [''],
  controls: KEYPAD.keys.map(({ key, row, column }) => ({
    name: `key ${key}`,
    seat: '',
    wiring: { kind: 'matrix', row, column },
  })),
  groups: [],
  opposites: [],
  own: false,
  sources: [fromSource('G', 'PIA 5.5'), fromSource('P')],
};

export const CONTROLLERS: readonly Controller[] = [JOYSTICK, PADDLES, KEYPAD_CONTROLLER, WHEEL];

/** An own controller: each control is a contact on a port line. */
export function createOwnController(
  name: string,
  controls: readonly { readonly name: string; readonly line: PortLine }[],
): Controller {
  return {
    name,
    seats: [''],
    controls: controls.map(control => contact(control.name, control.line)),
    groups: [],
    opposites: [],
    own: true,
    sources: [],
  };
}
