import type { Binding } from '../../gestures/bindings.js';
import { type Contact, contactType } from '../../gestures/contacts.js';
import { settingSource } from '../../gestures/settings.js';
import { wireOf } from '../../hardware/wiring.js';
import type { Gesture, Mode, Scheme, SeatsRow } from '../../language/model.js';
import { bindingsOnAllConsoles } from './mode-view.js';
import type { UnplacedByte } from './ram-byte.js';
import { countName, keptName, keysName, SWITCHES_KEPT } from './tests-of-bindings.js';

type GestureKind = Gesture['kind'];

/** Gestures that compare with the read before, and those that the release-first rule leaves alone. */
const NEEDS_READ_BEFORE: ReadonlySet<GestureKind> = new Set([
  'press',
  'release',
  'double tap',
  'flip',
  'flip to',
]);
const FREE_ON_ENTRY: ReadonlySet<GestureKind> = new Set(['held', 'at', 'flip', 'flip to', 'turn']);

/** What is needed in every mode: the mode, the settings, and what the registers read last. */
export function sharedBytes(scheme: Scheme): readonly UnplacedByte[] {
  const bindings = scheme.modes.flatMap(mode =>
    mode.seats.flatMap(seats => bindingsOnAllConsoles(scheme, mode, seats).map(({ binding }) => binding)),
  );
  return [
    ...(scheme.modes.length > 1 ? [number('mode', 'the mode’s number')] : []),
    ...settingBytes(scheme),
    ...turningBytes(bindings),
    ...keyBytes(bindings),
    ...keptBytes(bindings),
    ...waitingBytes(bindings),
  ];
}

const number = (name: string, holds: string): UnplacedByte => ({ name, holds, bits: [] });

function settingBytes(scheme: Scheme): readonly UnplacedByte[] {
  const kept = scheme.settings.filter(setting =>
    scheme.consoles.some(profile => settingSource(setting, scheme, profile).kind === 'game'),
  );
  return kept.map((setting, index) => number(`setting_${index}`, `the value of ${setting.name}, from 0`));
}

function turningBytes(bindings: readonly Binding[]): readonly UnplacedByte[] {
  return eachContact(bindings).flatMap(contact => {
    if (contactType(contact) !== 'turning') return [];
    const kept = number(keptName(contact), `${contact.id} at the read before`);
    return wireOf(contact).kind === 'pot'
      ? [number(countName(contact), `${contact.id}: lines until its pot had charged`), kept]
      : [kept];
  });
}

function keyBytes(bindings: readonly Binding[]): readonly UnplacedByte[] {
  const ports = new Set(
    eachContact(bindings).flatMap(contact =>
      contact.kind === 'control' && wireOf(contact).kind === 'matrix' ? [contact.port] : [],
    ),
  );
  return [...ports].flatMap(port => [
    {
      name: keysName(port, 0),
      holds: 'what the scan read, 0 = pressed',
      bits: keyNames(port, [8, 7, 6, 5, 4, 3, 2, 1]),
    },
    {
      name: keysName(port, 8),
      holds: 'what the scan read, 0 = pressed',
      bits: keyNames(port, ['', '', '', '', 'hash', 0, 'star', 9]),
    },
  ]);
}

const keyNames = (port: string, keys: readonly (string | number)[]): readonly string[] =>
  keys.map(key => (key === '' ? '' : `${port} key ${key}`));

/** Bits that keep what was engaged at the read before; the switches' byte is SWCHB as it was. */
function keptBytes(bindings: readonly Binding[]): readonly UnplacedByte[] {
  const wanting = bindings.filter(({ gesture }) => NEEDS_READ_BEFORE.has(gesture.kind));
  const names = eachContact(wanting)
    .filter(({ kind }) => kind === 'control')
    .map(({ id }) => id);
  const hasSwitches = eachContact(wanting).some(({ kind }) => kind === 'switch');
  const switches = hasSwitches ? [number(SWITCHES_KEPT, 'SWCHB at the read before')] : [];
  return [...switches, ...packBits('engaged_was', 'engaged at the read before', names)];
}

/** Bits for the release-first rule: engaged when the mode was entered and not yet let go. */
function waitingBytes(bindings: readonly Binding[]): readonly UnplacedByte[] {
  const names = eachContact(bindings.filter(({ gesture }) => !FREE_ON_ENTRY.has(gesture.kind))).map(
    ({ id }) => id,
  );
  return packBits('let_go_first', 'engaged on entry, not yet let go', names);
}

/** What one mode needs besides: counters, hold-backs, and the fired actions. */
export function modeBytes(scheme: Scheme, mode: Mode, seats: SeatsRow): readonly UnplacedByte[] {
  const bindings = bindingsOnAllConsoles(scheme, mode, seats).map(({ binding }) => binding);
  const heldBack = bindings.flatMap(binding => binding.insteadOf.map(({ name }) => `${who(binding)}${name}`));
  return [
    ...counters(bindings),
    ...packBits('held_back', 'held back until let go', [...new Set(heldBack)]),
    ...packBits('fired', 'fired at this read', [...new Set(bindings.map(firedName))]),
  ];
}

const who = ({ player }: Binding): string => (player === 'anyone' ? '' : `${player}: `);

const firedName = (binding: Binding): string =>
  `${who(binding)}${binding.actionName}${binding.direction === null ? '' : ` ${binding.direction}`}`;

const COUNTS: Readonly<Partial<Record<GestureKind, string>>> = {
  hold: 'reads engaged',
  tap: 'reads engaged',
  'double tap': 'reads since the press',
  repeat: 'reads until it may fire again',
};

/** One byte for each control (or chord) and kind of count; `hold` and `tap` share theirs. */
function counters(bindings: readonly Binding[]): readonly UnplacedByte[] {
  const counted = new Map<string, string>();
  for (const { gesture, parts } of bindings) {
    const what = COUNTS[gesture.kind];
    const control = parts.map(({ id }) => id).join(' + ');
    if (what !== undefined) counted.set(`${control} ${what}`, `${control}: ${what}`);
  }
  return [...counted.values()].map((holds, index) => number(`count_${index}`, holds));
}

function packBits(name: string, holds: string, bits: readonly string[]): readonly UnplacedByte[] {
  const bytes: UnplacedByte[] = [];
  for (let start = 0; start < bits.length; start += 8) {
    const fromD7 = [7, 6, 5, 4, 3, 2, 1, 0].map(bit => bits[start + bit] ?? '');
    bytes.push({ name: `${name}_${start / 8}`, holds, bits: fromD7 });
  }
  return bytes;
}

function eachContact(bindings: readonly Binding[]): readonly Contact[] {
  return [...new Map(bindings.flatMap(({ parts }) => parts).map(part => [part.id, part])).values()];
}
