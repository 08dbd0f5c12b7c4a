import { CONTROLLERS, type Control } from '../../src/hardware/controllers.js';
import type { Port } from '../../src/hardware/ports.js';
import { type Wire, wireOf } from '../../src/hardware/wiring.js';

/** A control of a built-in controller. */
export function controlOf(controller: string, name: string, seat = ''): Control {
  const found = CONTROLLERS.find(built => built.name === controller)?.controls.find(
    control => control.name === name && control.seat === seat,
  );
  if (found === undefined) throw new Error(`the ${controller} has no ${name} ${seat}`);
  return found;
}

export function wireIn(port: Port, controller: string, name: string, seat = ''): Wire {
  return wireOf({ kind: 'control', port, control: controlOf(controller, name, seat) });
}

export function wireOfControl(port: Port, control: Control): Wire {
  return wireOf({ kind: 'control', port, control });
}
