import type { Contact } from '../../gestures/contacts.js';
import { scanSteps, vblankSetup } from '../../hardware/port-setup.js';
import { type Wire, wireOf } from '../../hardware/wiring.js';
import type { Mode, Scheme, SeatsRow } from '../../language/model.js';
import { bindingsOnAllConsoles } from './mode-view.js';
import { hexByte } from './words.js';

/** What must stand in SWACNT and VBLANK while a mode's inputs are read. */
export interface SetupView {
  readonly mode: string;
  readonly seats: string;
  /** One value, or one for each keypad row in turn. */
  readonly swacnt: readonly string[];
  readonly swacntWhy: string;
  readonly vblankD7: string;
  readonly vblankD6: string;
  /** Registers that the mode reads, in order of address. */
  readonly reads: readonly string[];
}

/** @param keys every key that some mode of the seats row uses */
export function viewSetup(
  scheme: Scheme,
  mode: Mode,
  seats: SeatsRow,
  keys: readonly Contact[] = keysOfSeats(scheme, seats),
): SetupView {
  const contacts = [...contactsOf(scheme, mode, seats), ...keys];
  const wires = contacts.map(contact => wireOf(contact));
  const steps = scanSteps(wires);
  const vblank = vblankSetup(wires, scheme.game.latch.value !== 'off');
  return {
    mode: mode.name,
    seats: seats.name,
    swacnt: steps.length === 0 ? [hexByte(0)] : steps.map(({ swacnt }) => hexByte(swacnt)),
    swacntWhy:
      steps.length === 0
        ? 'all pins input'
        : `keypad row ${steps.map(({ row }) => row).join(', ')} in turn, SWCHA output bits 0; then $00 again`,
    vblankD7: dumpText(vblank.dump, wires),
    vblankD6: vblank.latch === 1 ? latchText(scheme) : '0: buttons read as they are',
    reads: registersRead(wires),
  };
}

/** The contacts that a mode's bindings use in a seats row, each once. */
export function contactsOf(scheme: Scheme, mode: Mode, seats: SeatsRow): readonly Contact[] {
  const contacts = bindingsOnAllConsoles(scheme, mode, seats).flatMap(({ binding }) => binding.parts);
  return [...new Map(contacts.map(contact => [contact.id, contact])).values()];
}

/** Keys that any mode of a seats row uses: each of its modes scans them, so that the next knows what is still down. */
export function keysOfSeats(scheme: Scheme, seats: SeatsRow): readonly Contact[] {
  return scheme.modes
    .filter(mode => mode.seats.includes(seats))
    .flatMap(mode => contactsOf(scheme, mode, seats))
    .filter(contact => wireOf(contact).kind === 'matrix');
}

function dumpText(dump: ReturnType<typeof vblankSetup>['dump'], wires: readonly Wire[]): string {
  switch (dump) {
    case 'toggled': {
      const hasKeys = wires.some(({ kind }) => kind === 'matrix');
      return `1 to dump the pots, 0 to count${hasKeys ? '; 0 while keypad columns are read' : ''}`;
    }
    case 0:
      return '0: INPT0 to INPT3 are read as contacts';
    case 'free':
      return 'free: nothing is read on INPT0 to INPT3';
    default:
      return dump satisfies never;
  }
}

function latchText(scheme: Scheme): string {
  return scheme.game.latch.value === 'cleared on use'
    ? '1; 0 and 1 again when the game has used a press'
    : '1; 0 and 1 again after each read';
}

function registersRead(wires: readonly Wire[]): readonly string[] {
  const bits = wires.map(wire => (wire.kind === 'gray' ? wire.high : wire.bit));
  const byAddress = new Map(bits.map(({ register, address }) => [address, register] as const));
  return [...byAddress].sort(([a], [b]) => a - b).map(([, register]) => register);
}
