import { controlContact } from '../../gestures/contacts.js';
import { PORT_LINE_NAMES, PORT_LINES, PORTS, type Port, SUPPLY_PINS } from '../../hardware/ports.js';
import { wireOf } from '../../hardware/wiring.js';
import type { SeatsRow } from '../../language/model.js';

/** One port of the console in one seats row, pin by pin. */
export interface PortView {
  readonly port: Port;
  /** `joystick`, or `nothing plugged in`. */
  readonly controller: string;
  /** Pins 1 to 9 in order. */
  readonly pins: readonly PinView[];
}

export interface PinView {
  readonly pin: number;
  /** `up`, `pot A`, `+5 V`. */
  readonly line: string;
  /** `SWCHA D4`; empty for the supply. */
  readonly bit: string;
  /** What the plugged controller has on it. */
  readonly carries: readonly string[];
}

export function viewPorts(seats: SeatsRow): readonly PortView[] {
  return PORTS.map(port => ({
    port,
    controller: seats[port]?.name ?? 'nothing plugged in',
    pins: viewPins(port, seats),
  }));
}

function viewPins(port: Port, seats: SeatsRow): readonly PinView[] {
  const carried = carriedBy(port, seats);
  const lines = PORT_LINE_NAMES.map(name => {
    const { pin, bits } = PORT_LINES[name];
    const bit = `${bits[port].register} D${bits[port].bit}`;
    return { pin, line: name, bit, carries: carried.get(pin) ?? [] };
  });
  const supply = Object.entries(SUPPLY_PINS).map(([line, pin]) => ({ pin, line, bit: '', carries: [] }));
  return [...lines, ...supply].sort((a, b) => a.pin - b.pin);
}

function carriedBy(port: Port, seats: SeatsRow): ReadonlyMap<number, readonly string[]> {
  const carried = new Map<number, string[]>();
  const add = (pin: number, name: string) => {
    const names = carried.get(pin) ?? [];
    if (!names.includes(name)) carried.set(pin, [...names, name]);
  };
  const controller = seats[port];
  for (const control of controller?.controls ?? []) {
    if (controller === null) continue;
    const wire = wireOf({ kind: 'control', port, control });
    const name = controlContact(port, controller, control).id;
    switch (wire.kind) {
      case 'matrix':
        add(wire.drivePin, `row ${wire.row}`);
        add(wire.pin, `column ${wire.column}`);
        break;
      case 'gray':
        add(wire.highPin, `${name}, high bit`);
        add(wire.lowPin, `${name}, low bit`);
        break;
      case 'line':
      case 'pot':
        if (wire.pin !== null) add(wire.pin, name);
        break;
      case 'two-position':
        break;
      default:
        wire satisfies never;
    }
  }
  return carried;
}
