import { type Binding, bindingsOf } from '../../gestures/bindings.js';
import { KEYPAD } from '../../hardware/keypad.js';
import { PORTS, type Port } from '../../hardware/ports.js';
import type { Action, Mode, Scheme, SeatsRow } from '../../language/model.js';
import { keySign } from '../wording/controls.js';

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

export interface KeyLabel {
  /** The action's `Short`, or its name; `+` before it where the key is part of a chord. */
  readonly text: string;
  readonly action: Action | null;
}

/** One for each keypad of each seats row and mode in which some key of it does something. */
export function viewKeyOverlays(scheme: Scheme): readonly KeyOverlay[] {
  return scheme.seats.flatMap(seats =>
    scheme.modes
      .filter(mode => mode.seats.includes(seats))
      .flatMap(mode =>
        PORTS.filter(port => isKeypad(seats, port))
          .map(port => viewOverlay(scheme, mode, seats, port))
          .filter(({ keys }) => keys.some(({ labels }) => labels.length > 0)),
      ),
  );
}

const isKeypad = (seats: SeatsRow, port: Port): boolean =>
  seats[port]?.controls.some(({ wiring }) => wiring.kind === 'matrix') ?? false;

function viewOverlay(scheme: Scheme, mode: Mode, seats: SeatsRow, port: Port): KeyOverlay {
  // Fallback keys stand on it too: on a console without the switch they are needed.
  const bindings = scheme.consoles.flatMap(profile => bindingsOf(scheme, mode, seats, profile));
  return {
    mode,
    seats,
    port,
    keys: KEYPAD.keys.map(({ key }) => {
      const name = `key ${key}`;
      return { name, sign: keySign(name), labels: labelsOn(bindings, port, name) };
    }),
  };
}

const QUICK_FIRST = ['press', 'tap', 'held', 'repeat', 'double tap', 'hold', 'release'];

function labelsOn(bindings: readonly Binding[], port: Port, name: string): readonly KeyLabel[] {
  const own = bindings
    .filter(({ parts }) =>
      parts.some(part => part.kind === 'control' && part.port === port && part.control.name === name),
    )
    .toSorted((a, b) => QUICK_FIRST.indexOf(a.gesture.kind) - QUICK_FIRST.indexOf(b.gesture.kind));
  const labels = new Map<string, KeyLabel>();
  for (const { action, actionName, parts } of own) {
    const short = action?.short?.value ?? action?.name ?? actionName;
    const text = parts.length > 1 ? `+${short}` : short;
    if (!labels.has(text)) labels.set(text, { text, action });
  }
  return [...labels.values()];
}
