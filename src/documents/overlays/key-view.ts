import { alikeConsoles } from '../../checks/coverage/situations.js';
import { type Binding, bindingsOf } from '../../gestures/bindings.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import { KEYPAD } from '../../hardware/keypad.js';
import { PORTS, type Port } from '../../hardware/ports.js';
import type { Mode, Scheme, SeatsRow } from '../../language/model.js';
import { keySign } from '../wording/controls.js';
import { type KeyLabel, keyLabelsOf } from './key-labels.js';

/** A key overlay: what each key of one keypad does in one mode and seats row. */
export interface KeyOverlay {
  readonly mode: Mode;
  readonly seats: SeatsRow;
  readonly port: Port;
  /** The twelve keys, row by row. */
  readonly keys: readonly KeyCell[];
}

export interface KeyCell {
  /** `key 5` */
  readonly name: string;
  /** `5`, `*`, `#` */
  readonly sign: string;
  /** What stands on the key, the quicker gesture first; none for an unused key. */
  readonly labels: readonly KeyLabel[];
}

/** One for each keypad of each seats row and mode in which some key of it does something. */
export function viewKeyOverlays(scheme: Scheme): readonly KeyOverlay[] {
  return scheme.seats.flatMap(seats => scheme.modes.flatMap(mode => viewKeyOverlaysIn(scheme, seats, mode)));
}

/** Those of one mode in one seats row; none where the mode does not list it. */
export function viewKeyOverlaysIn(scheme: Scheme, seats: SeatsRow, mode: Mode): readonly KeyOverlay[] {
  const ports = PORTS.filter(port => isKeypad(seats, port));
  if (ports.length === 0 || !mode.seats.includes(seats)) return [];
  // Fallback keys stand on it too: on a console without the switch they are needed.
  const consoles = alikeConsoles(scheme).flatMap(([first]) => first ?? []);
  const bindings = consoles.flatMap(profile => bindingsOf(scheme, mode, seats, profile));
  return ports
    .map(port => ({ mode, seats, port, keys: viewKeys(bindings, port, consoles) }))
    .filter(({ keys }) => keys.some(({ labels }) => labels.length > 0));
}

const isKeypad = (seats: SeatsRow, port: Port): boolean =>
  seats[port]?.controls.some(({ wiring }) => wiring.kind === 'matrix') ?? false;

function viewKeys(
  bindings: readonly Binding[],
  port: Port,
  consoles: readonly ConsoleProfile[],
): readonly KeyCell[] {
  const byKey = new Map<string, Binding[]>();
  for (const binding of bindings) {
    for (const part of binding.parts) {
      if (part.kind !== 'control' || part.port !== port) continue;
      const onKey = byKey.get(part.control.name);
      if (onKey === undefined) byKey.set(part.control.name, [binding]);
      else onKey.push(binding);
    }
  }
  return KEYPAD.keys.map(({ key }) => {
    const name = `key ${key}`;
    return { name, sign: keySign(name), labels: keyLabelsOf(byKey.get(name) ?? [], port, consoles) };
  });
}
